import { type MeasuredShot, type OddShot, summariseSession } from 'fairflight/session';
import type { Display } from './display.js';
import { inWords, quantityNamed } from './shot-quantities.js';

/** Rule by which shots are called odd. */
export const ODD_RULE =
  'Rule: a modified z-score beyond 3.5 in its band (Iglewicz and Hoaglin 1993); far apart if chance does that in fewer than 1 % of such sessions, otherwise unusual, and kept.';

/** How far a shot stands apart. */
export const ODD_WORDS: Readonly<Record<OddShot['verdict'], string>> = {
  outlier: 'far apart',
  straggler: 'unusual',
};

/** The readings of a shot that stand apart, the oddest first. */
export function oddReadings(odd: OddShot, display: Display): string {
  return [...odd.readings]
    .sort((a, b) => Math.abs(b.score) - Math.abs(a.score))
    .map(({ quantity, value, median }) => {
      const named = quantityNamed(quantity);
      const against = inWords(named, median, display);
      return `${named.label} ${inWords(named, value, display)} against ${against}`;
    })
    .join('; ');
}

/** Shots with the outliers of their group set apart. */
export interface Sifted {
  readonly used: readonly MeasuredShot[];
  readonly odd: readonly OddShot[];
}

/** Looks for shots that stand apart from their group; outliers are left out unless they are to be kept. */
export function sift(
  shots: readonly MeasuredShot[],
  groupOf: (shot: MeasuredShot) => string,
  keepOutliers: boolean,
): Sifted {
  const grouped = shots.map((shot) => ({ ...shot, label: groupOf(shot) }));
  const odd = summariseSession(grouped, { bands: 'labels' }).oddShots;
  const out = new Set(odd.flatMap(({ shot, verdict }) => (verdict === 'outlier' ? [shot] : [])));
  return { used: keepOutliers ? shots : shots.filter((_, i) => !out.has(i)), odd };
}

/** What became of the odd shots, for a list. */
export function oddLines({ odd }: Sifted, display: Display): readonly string[] {
  return odd.map((each) => {
    const where = each.line === undefined ? `shot ${each.shot + 1}` : `line ${each.line}`;
    return `${ODD_WORDS[each.verdict]}, ${where} (${each.band}): ${oddReadings(each, display)}.`;
  });
}
