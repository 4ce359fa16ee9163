import type { StrikeReading } from '../inputs/readings.js';
import type { EstimateBasis, InconsistentStrike } from './estimate.js';

/** Leaving out another reading must raise chi-square by this much before it is cleared (two standard deviations). */
const SUSPECT = 4;

/**
 * Names the misread by leaving out one reading at a time: the set that then agrees best lacked the wrong one. Residuals
 * at the solution would blame whichever reading bent most.
 * @param without - Least chi-square of the readings but one.
 * @internal
 */
export function inconsistent(
  common: EstimateBasis,
  without: (reading: StrikeReading) => number,
): InconsistentStrike {
  const ranked = common.residuals
    .map(({ reading }) => ({ reading, chiSquare: without(reading) }))
    .sort((a, b) => a.chiSquare - b.chiSquare);
  const best = ranked[0] as (typeof ranked)[number];
  const suspects = ranked.filter((r) => r.chiSquare - best.chiSquare < SUSPECT);
  const told = suspects.map((r) => `${r.reading} (without it ${r.chiSquare.toFixed(1)})`).join(' or ');
  return {
    outcome: 'inconsistent',
    ...common,
    suspects: [best.reading, ...suspects.slice(1).map((r) => r.reading)],
    message:
      `No strike on this head explains the readings: chi-square ${common.chiSquare.toFixed(1)} where ` +
      `${common.degreesOfFreedom} is usual. Most likely misread: ${told}.`,
  };
}
