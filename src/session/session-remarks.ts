import type { OddShot } from './odd-shots.js';
import { inWords, QUANTITY_WORDS } from './quantities.js';
import type { BandSummary, SessionSummary } from './session-summary.js';

/** What a reader should know before leaning on a summary. @internal */
export function remarksOn(
  bands: readonly BandSummary[],
  odd: readonly OddShot[],
  trends: SessionSummary['trends'],
  level: number,
): string[] {
  const remarks: string[] = [];
  const percent = `${Math.round(100 * level)} %`;
  for (const band of bands) {
    const name = (['carry', 'total', 'ballSpeed', 'clubSpeed'] as const).find(
      (key) => band.quantities[key] !== undefined,
    );
    const estimate = name === undefined ? undefined : band.quantities[name];
    if (name === undefined || estimate === undefined || estimate.count >= 10) continue;
    const { label } = QUANTITY_WORDS[name];
    if (estimate.interval === undefined) {
      remarks.push(`${band.name}: one shot only, so nothing can be said about its scatter.`);
      continue;
    }
    const { low, high } = estimate.interval;
    remarks.push(
      `${band.name}: with ${estimate.count} shots the mean ${label} is known only to lie from ${inWords(name, low)} to ${inWords(name, high)} (${percent}); smaller differences are noise.`,
    );
  }
  const outliers = odd.filter((entry) => entry.verdict === 'outlier').length;
  const stragglers = odd.length - outliers;
  if (outliers > 0) {
    remarks.push(
      `${outliers === 1 ? '1 shot stands' : `${outliers} shots stand`} far apart and ${outliers === 1 ? 'is' : 'are'} left out of the figures marked so, not of the others: check whether it was a misread or a mishit.`,
    );
  }
  if (stragglers > 0) {
    remarks.push(
      `${stragglers === 1 ? '1 shot looks' : `${stragglers} shots look`} unusual, but no more than chance makes in bands this small: kept everywhere.`,
    );
  }
  const line = trends.carry?.yardsPerMph;
  if (line !== undefined && trends.carry !== undefined) {
    const range = `${line.low.toFixed(1)} to ${line.high.toFixed(1)} yd a mph`;
    remarks.push(
      trends.carry.unclear
        ? `Carry against club speed: ${range} (${percent}), which holds no gain at all; these shots show no trend.`
        : `Carry against club speed: ${line.value.toFixed(1)} yd a mph, ${range} (${percent}).`,
    );
  }
  return remarks;
}
