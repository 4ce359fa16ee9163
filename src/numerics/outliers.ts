import { studentTQuantile } from './distributions.js';
import { mean, requireSample, standardDeviation } from './moments.js';
import { median } from './order-statistics.js';

/** Modified z-scores beyond this are taken for outliers (Iglewicz and Hoaglin 1993). */
export const MODIFIED_Z_LIMIT = 3.5;

/**
 * Modified z-scores 0.6745 (x − median)/MAD; where more than half of the values agree to within rounding,
 * (x − median)/(1.253314 × mean absolute deviation); 0 for all when no value differs.
 *
 * Source: Iglewicz B, Hoaglin D C (1993) How to Detect and Handle Outliers, ASQC Basic References in Quality
 * Control 16.
 */
export function modifiedZScores(values: readonly number[]): number[] {
  return modifiedZScoresWithin([values])[0]!;
}

/**
 * {@link modifiedZScores} within several groups: each value against the median of its own group, all against one MAD
 * of the deviations together, which small groups need because a MAD of five values is a poor guess.
 */
export function modifiedZScoresWithin(groups: readonly (readonly number[])[]): number[][] {
  const deviations = groups.map((group) => {
    requireSample('values', group, 1);
    const centre = median(group);
    return group.map((value) => value - centre);
  });
  const sizes = deviations.flat().map(Math.abs);
  const mad = median(sizes);
  // A MAD within the rounding of the values says that more than half of them agree.
  const rounding = Number.EPSILON * Math.max(...groups.flat().map(Math.abs));
  const scale = mad > rounding ? mad / 0.6745 : 1.253314 * mean(sizes);
  return deviations.map((group) => group.map((deviation) => (scale > 0 ? deviation / scale : 0)));
}

/** Result of Grubbs's test. */
export interface GrubbsResult {
  /** Place of the value furthest from the mean. */
  readonly index: number;
  /** Its distance from the mean in standard deviations. */
  readonly statistic: number;
  /** The statistic that is exceeded with probability alpha when all values are normal. */
  readonly critical: number;
  /** Whether the statistic exceeds the critical value. */
  readonly outlier: boolean;
}

/** Critical value of Grubbs's statistic for `n` values; two-sided by default. */
export function grubbsCritical(n: number, alpha = 0.05, sides: 1 | 2 = 2): number {
  const t = studentTQuantile(1 - alpha / (sides * n), n - 2);
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t));
}

/**
 * Grubbs's two-sided test for one outlier among normal values.
 * Source: Grubbs F E (1969) Procedures for detecting outlying observations in samples, Technometrics 11, 1–21.
 * @throws FairflightError `invalid-input` for fewer than 3 values
 */
export function grubbsTest(values: readonly number[], alpha = 0.05): GrubbsResult {
  requireSample('values', values, 3);
  const centre = mean(values);
  const sd = standardDeviation(values);
  let index = 0;
  for (let i = 1; i < values.length; i++) {
    if (Math.abs(values[i]! - centre) > Math.abs(values[index]! - centre)) index = i;
  }
  const statistic = sd > 0 ? Math.abs(values[index]! - centre) / sd : 0;
  const critical = grubbsCritical(values.length, alpha);
  return { index, statistic, critical, outlier: statistic > critical };
}
