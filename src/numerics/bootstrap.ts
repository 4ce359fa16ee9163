import { FairflightError } from '../errors.js';
import { normalCdf, normalQuantile, studentTQuantile } from './distributions.js';
import { type Interval, standardDeviation } from './moments.js';
import { quantileOfSorted } from './order-statistics.js';
import { requireOneOf, requireWithin } from './require.js';
import { stream } from './stream.js';

/** An estimate with its bootstrap interval. */
export interface BootstrapInterval extends Interval {
  /** The statistic of the data as they are. */
  readonly estimate: number;
  /** Standard deviation of the statistic over the resamples. */
  readonly standardError: number;
}

/** Options of {@link bootstrap}. */
export interface BootstrapOptions {
  /** Resamples, 100 and more; default 2,000. */
  readonly resamples?: number;
  /** Coverage; default 0.95. */
  readonly level?: number;
  /** `bca` (default) corrects the percentile interval for bias and skewness, at the price of one jackknife. */
  readonly method?: 'bca' | 'percentile';
  /** Seed, a whole number; default 0. Resample number r uses stream r of it. */
  readonly seed?: number;
}

/**
 * Bootstrap intervals of a statistic with one or several values, computed from one or several groups. Each group is
 * resampled with replacement on its own.
 *
 * Source: Efron B, Tibshirani R J (1993) An Introduction to the Bootstrap, ch. 13 (percentile) and sec. 14.3 (BCa);
 * acceleration over several groups: Davison A C, Hinkley D V (1997) Bootstrap Methods and Their Application, eq. 5.25.
 * @param groups - the data, each group with at least one entry
 * @param statistic - makes the values from the groups, always the same number of them; a resample with a value that is
 * not finite is left out
 * @throws FairflightError `invalid-input` for an empty group, or when over half of the resamples gave no finite value
 */
export function bootstrap<T>(
  groups: readonly (readonly T[])[],
  statistic: (groups: readonly (readonly T[])[]) => readonly number[],
  options: BootstrapOptions = {},
): BootstrapInterval[] {
  const resamples = requireWithin('resamples', options.resamples ?? 2000, 100, 1e7, '');
  const level = requireWithin('level', options.level ?? 0.95, 0.01, 0.9999, '');
  const method = requireOneOf('method', options.method ?? 'bca', ['bca', 'percentile'] as const);
  if (groups.some((group) => group.length === 0)) {
    throw new FairflightError('invalid-input', 'a bootstrap needs at least one entry in every group', {
      field: 'groups',
    });
  }
  const estimates = statistic(groups);
  const draws: number[][] = estimates.map(() => []);
  for (let r = 0; r < resamples; r++) {
    const random = stream(options.seed ?? 0, r);
    const values = statistic(groups.map((group) => group.map(() => group[random.integer(group.length)]!)));
    if (!values.every(Number.isFinite)) continue;
    for (let k = 0; k < draws.length; k++) draws[k]!.push(values[k]!);
  }
  if ((draws[0]?.length ?? resamples) < resamples / 2) {
    throw new FairflightError(
      'invalid-input',
      'the statistic was not finite in more than half of the resamples',
      {
        field: 'statistic',
      },
    );
  }
  const accelerations = method === 'bca' ? accelerationOf(groups, statistic, estimates.length) : [];
  return estimates.map((estimate, k) => {
    const values = draws[k]!.sort((a, b) => a - b);
    const tail = 0.5 - level / 2;
    const at = (z: number): number => {
      if (method === 'percentile') return normalCdf(z);
      const shift = biasOf(values, estimate);
      return normalCdf(shift + (shift + z) / (1 - accelerations[k]! * (shift + z)));
    };
    return {
      estimate,
      standardError: standardDeviation(values),
      low: quantileOfSorted(values, at(normalQuantile(tail))),
      high: quantileOfSorted(values, at(normalQuantile(1 - tail))),
      level,
    };
  });
}

/**
 * How many times wider than resampling says the interval of a mean of few values is: √(n/(n − 1)) t(n − 1)/z. Resamples
 * scatter by √((n − 1)/n) too little, and follow the normal instead of Student's distribution. It is 1 for a single
 * value, whose scatter is not known.
 *
 * Source: Hesterberg T C (2015) What Teachers Should Know About the Bootstrap, Am. Stat. 69, 371–386 (from memory).
 * @param count - values the mean is taken over
 * @param level - coverage of the interval, between 0 and 1, for example 0.95
 * @throws FairflightError `outside-range` for a level outside these
 */
export function fewValuesStretch(count: number, level: number): number {
  if (count < 2) return 1;
  const p = 0.5 + level / 2;
  return (Math.sqrt(count / (count - 1)) * studentTQuantile(p, count - 1)) / normalQuantile(p);
}

/** Normal quantile of the share of resamples below the estimate; ties count half. */
function biasOf(sorted: readonly number[], estimate: number): number {
  let below = 0;
  for (const value of sorted) below += value < estimate ? 1 : value === estimate ? 0.5 : 0;
  const share = Math.min(sorted.length - 0.5, Math.max(0.5, below)) / sorted.length;
  return normalQuantile(share);
}

function accelerationOf<T>(
  groups: readonly (readonly T[])[],
  statistic: (groups: readonly (readonly T[])[]) => readonly number[],
  size: number,
): number[] {
  const squares = new Array<number>(size).fill(0);
  const cubes = new Array<number>(size).fill(0);
  groups.forEach((group, g) => {
    const n = group.length;
    if (n < 2) return;
    const left = group.map((_, i) =>
      statistic(groups.map((other, h) => (h === g ? other.filter((__, j) => j !== i) : other))),
    );
    for (let k = 0; k < size; k++) {
      const finite = left.map((values) => values[k]!).filter(Number.isFinite);
      const centre = finite.reduce((sum, value) => sum + value, 0) / finite.length;
      for (const value of finite) {
        const influence = ((n - 1) * (centre - value)) / n;
        squares[k]! += influence ** 2;
        cubes[k]! += influence ** 3;
      }
    }
  });
  return squares.map((square, k) => (square > 0 ? cubes[k]! / (6 * square ** 1.5) : 0));
}
