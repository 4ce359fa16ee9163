import { FairflightError } from '../errors.js';
import { normalQuantile } from './distributions.js';
import { type Interval, requireSample } from './moments.js';
import { median, quantileOfSorted } from './order-statistics.js';

/** A straight line through points, with an interval for its slope. */
export interface TheilSenLine {
  /** Median of the slopes of all pairs of points. */
  readonly slope: number;
  /** Median y less slope times median x. */
  readonly intercept: number;
  /** Interval for the slope. */
  readonly interval: Interval;
  /** Points used. */
  readonly count: number;
}

/**
 * The Theil–Sen line, which up to 29 % of wild points leave standing, with Sen's interval for the slope.
 * Source: Sen P K (1968) Estimates of the regression coefficient based on Kendall's tau, J. Am. Stat. Assoc. 63,
 * 1379–1389; ties corrected as in his eq. 2.6; intercept by the convention of Conover, median y − slope × median x.
 * @throws FairflightError `invalid-input` for fewer than 2 points, or when all x agree
 */
export function theilSen(x: readonly number[], y: readonly number[], level = 0.95): TheilSenLine {
  requireSample('x', x, 2);
  requireSample('y', y, x.length);
  const n = x.length;
  const slopes: number[] = [];
  for (let i = 0; i < n; i++) {
    for (let j = i + 1; j < n; j++) {
      const run = x[j]! - x[i]!;
      if (run !== 0) slopes.push((y[j]! - y[i]!) / run);
    }
  }
  if (slopes.length === 0) {
    throw new FairflightError('invalid-input', 'a slope needs points at two different x', {
      field: 'x',
      value: x,
    });
  }
  slopes.sort((a, b) => a - b);
  const slope = quantileOfSorted(slopes, 0.5);
  const pairs = (k: number): number => k * (k - 1) * (2 * k + 5);
  const ties = (values: readonly number[]): number => {
    const counts = new Map<number, number>();
    for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
    return [...counts.values()].reduce((sum, k) => sum + pairs(k), 0);
  };
  const sigma = Math.sqrt(Math.max(0, pairs(n) - ties(x) - ties(y)) / 18);
  const reach = normalQuantile(0.5 + level / 2) * sigma;
  const high = Math.min(roundHalfToEven((slopes.length + reach) / 2), slopes.length - 1);
  const low = Math.max(roundHalfToEven((slopes.length - reach) / 2) - 1, 0);
  return {
    slope,
    intercept: median(y.slice(0, n)) - slope * median(x),
    interval: { low: slopes[low]!, high: slopes[high]!, level },
    count: n,
  };
}

function roundHalfToEven(value: number): number {
  const rounded = Math.round(value);
  return Math.abs(value % 1) === 0.5 && rounded % 2 !== 0 ? rounded - 1 : rounded;
}
