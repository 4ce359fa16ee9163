import { FairflightError } from '../errors.js';
import { normalQuantile } from './distributions.js';
import { type Interval, requireSample } from './moments.js';
import { median } from './order-statistics.js';
import { pairSlopes } from './slope-selection.js';

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
 * Fewest points whose slopes can bound one at a level: of n! equally likely orders one puts all slopes below the true one,
 * and one all above, so that even the whole range of slopes misses it twice in n!. Five at 95 %.
 * Source: Kendall's exact distribution, on which Sen (1968) rests.
 */
export function fewestForSlope(level: number): number {
  let n = 2;
  for (let orders = 2; 2 / orders > 1 - level; orders *= ++n);
  return n;
}

/**
 * The Theil–Sen line, which holds while fewer than 29 % of the points run wild, with Sen's interval for the slope.
 * Source: Sen P K (1968) Estimates of the regression coefficient based on Kendall's tau, J. Am. Stat. Assoc. 63,
 * 1379–1389; ties corrected as in his eq. 2.6; intercept by the convention of Conover, median y − slope × median x.
 * @throws FairflightError `invalid-input` for fewer than 2 points, lists of unequal length, or when all x agree
 */
export function theilSen(x: readonly number[], y: readonly number[], level = 0.95): TheilSenLine {
  requireSample('x', x, 2);
  const n = x.length;
  requireSample('y', y, n);
  if (y.length !== n) {
    throw new FairflightError('invalid-input', `y needs as many values as x, ${n}, got ${y.length}`, {
      field: 'y',
      value: y.length,
    });
  }
  const slopes = pairSlopes(x, y);
  if (slopes.count === 0) {
    throw new FairflightError('invalid-input', 'a slope needs points at two different x', {
      field: 'x',
      value: x,
    });
  }
  const middle = (slopes.count - 1) / 2;
  const lower = slopes.atRank(Math.floor(middle));
  const slope = lower + (middle % 1) * (slopes.atRank(Math.ceil(middle)) - lower);
  const pairs = (k: number): number => k * (k - 1) * (2 * k + 5);
  const ties = (values: readonly number[]): number => {
    const counts = new Map<number, number>();
    for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
    return [...counts.values()].reduce((sum, k) => sum + pairs(k), 0);
  };
  const sigma = Math.sqrt(Math.max(0, pairs(n) - ties(x) - ties(y)) / 18);
  const reach = normalQuantile(0.5 + level / 2) * sigma;
  const high = Math.min(Math.round((slopes.count + reach) / 2), slopes.count - 1);
  const low = Math.max(Math.round((slopes.count - reach) / 2) - 1, 0);
  return {
    slope,
    intercept: median(y) - slope * median(x),
    interval: { low: slopes.atRank(low), high: slopes.atRank(high), level },
    count: n,
  };
}
