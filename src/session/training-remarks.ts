import { type Speed, toMph, toYards } from '../units/index.js';
import type { TrainingReport } from './training-report.js';

/** What a reader of a training report should know, in words. @internal */
export function remarksOn(report: Omit<TrainingReport, 'remarks'>, unused: number): string[] {
  const remarks: string[] = [];
  const show = (value: Speed): string => toMph(value).toFixed(1);
  if (unused > 0)
    remarks.push(`${unused} shots have no club speed, or neither session nor date, and are in no figure.`);
  if (report.change === undefined || report.detectable === undefined) {
    remarks.push(
      `${report.sessions.length} sessions are too few: how much a session differs from day to day is not known, so no change can be called real. Four is the least.`,
    );
  } else {
    const { value, low, high } = report.change;
    const range = `${show(low)} to ${show(high)} mph at ${Math.round(100 * report.level)} %`;
    if (report.carryOver?.verdict === 'carries-over') {
      remarks.push(
        `Neighbouring sessions resemble each other (correlation ${report.carryOver.autocorrelation.toFixed(1)}): form lasts for several, or the gain came in steps. Figures below allow for it, but sessions further apart would tell more.`,
      );
    }
    const limit = `the ${show(report.detectable)} mph that days alone can make`;
    remarks.push(
      report.verdict === 'not-shown'
        ? `Change ${show(value)} mph (${range}): within ${limit}, so not shown to be real.`
        : `Change ${show(value)} mph (${range}): more than ${limit}.`,
    );
  }
  if (report.worth !== undefined) {
    const { value, low, high } = report.worth;
    remarks.push(
      `At the player's own strike that is ${toYards(value).toFixed(0)} yd of carry (${toYards(low).toFixed(0)} to ${toYards(high).toFixed(0)}).`,
    );
  }
  const wider = report.scatter.launchDirection;
  if (wider !== undefined) {
    const range = `${wider.interval.low.toFixed(2)} to ${wider.interval.high.toFixed(2)}`;
    remarks.push(
      wider.verdict === 'not-shown'
        ? `Direction scatter is ${wider.ratio.toFixed(2)} times what it was (${range}): no change shown.`
        : `Direction scatter ${wider.verdict}: ${wider.ratio.toFixed(2)} times what it was (${range}).`,
    );
  }
  if (report.next !== undefined) {
    remarks.push(`Next target ${show(report.next.clubSpeed)} mph, ${show(report.next.step)} mph more.`);
  }
  return remarks;
}
