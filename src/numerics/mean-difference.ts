import { studentTQuantile } from './distributions.js';
import { type Interval, mean, requireSample, standardDeviation } from './moments.js';
import { noncentralTCdf } from './noncentral-t.js';
import { requireWithin } from './require.js';

/** Student's t interval for the mean of normal values: mean ± t s/√n. @throws FairflightError for fewer than 2 values */
export function meanInterval(values: readonly number[], level = 0.95): Interval {
  requireSample('values', values, 2);
  const centre = mean(values);
  const half =
    (studentTQuantile(0.5 + level / 2, values.length - 1) * standardDeviation(values)) /
    Math.sqrt(values.length);
  return { low: centre - half, high: centre + half, level };
}

/**
 * Power of the two-sided t test for a difference of two means, `n` values in each group of standard deviation `sd`.
 *
 * Where `sd` is an estimate with `sdDof` degrees of freedom, the power is the average over the deviations it may stand
 * for, which is less than at `sd` itself. Source: Julious S A, Owen R J (2006) Sample size calculations for clinical
 * studies allowing for uncertainty about the variance, Pharm. Stat. 5, 29–37 (from memory), with Student's t for the
 * normal limit of the test.
 */
export function powerOfMeanDifference(
  n: number,
  difference: number,
  sd: number,
  level = 0.95,
  sdDof: number = Number.POSITIVE_INFINITY,
): number {
  const dof = 2 * n - 2;
  const critical = studentTQuantile(0.5 + level / 2, dof);
  const shift = (Math.abs(difference) / sd) * Math.sqrt(n / 2);
  if (sdDof === Number.POSITIVE_INFINITY) {
    return 1 - noncentralTCdf(critical, dof, shift) + noncentralTCdf(-critical, dof, shift);
  }
  return noncentralTCdf(shift, sdDof, critical);
}

/**
 * Values needed in each of two groups to find a difference of means with the two-sided t test.
 * Source: Cohen J (1988) Statistical Power Analysis for the Behavioral Sciences, 2nd ed., ch. 2; power by
 * {@link powerOfMeanDifference}.
 * @param difference - smallest difference worth finding, not 0
 * @param sd - standard deviation within a group, ≥ 0
 * @param power - chance to find it, default 0.8
 * @param level - confidence level of the test, default 0.95
 * @param sdDof - degrees of freedom with which `sd` was estimated; default: it is known
 */
export function sampleSizeForMeanDifference(
  difference: number,
  sd: number,
  power = 0.8,
  level = 0.95,
  sdDof: number = Number.POSITIVE_INFINITY,
): number {
  requireWithin('sd', sd, 0, Number.MAX_VALUE, '');
  requireWithin('|difference|', Math.abs(difference), Number.MIN_VALUE, Number.MAX_VALUE, '');
  requireWithin('power', power, 0.05, 0.999, '');
  const powerOf = (n: number): number => powerOfMeanDifference(n, difference, sd, level, sdDof);
  if (sd === 0 || powerOf(2) >= power) return 2;
  let low = 2;
  let high = 4;
  while (powerOf(high) < power) {
    low = high;
    high *= 2;
    if (high > 2 ** 30) return Number.POSITIVE_INFINITY;
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (powerOf(middle) < power) low = middle;
    else high = middle;
  }
  return high;
}
