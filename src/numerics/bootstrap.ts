import { FairflightError } from '../errors.js';
import { normalQuantile, studentTQuantile } from './distributions.js';
import { type Interval, standardDeviation } from './moments.js';
import { quantileOfSorted } from './order-statistics.js';
import { requireWithin } from './require.js';
import { stream } from './stream.js';

/** An estimate with its bootstrap interval. */
export interface BootstrapInterval extends Interval {
  /** The statistic of the data as they are. */
  readonly estimate: number;
  /** Standard deviation of the statistic over the resamples. */
  readonly standardError: number;
  /**
   * How many times wider the interval should be for the few entries of the groups; with `jackknife` only. Resamples of n
   * scatter by √((n − 1)/n) too little, and follow the normal instead of Student's distribution, here with the degrees
   * of freedom of Welch and Satterthwaite. 1 where nothing scatters.
   *
   * Source: Hesterberg T C (2015) What Teachers Should Know About the Bootstrap, Am. Stat. 69, 371–386; Welch B L (1938)
   * Biometrika 29, 350–362 (both from memory).
   */
  readonly stretch?: number;
  /** Standard error that the entries of each group leave by themselves, by the jackknife; with `jackknife` only; 0 for one entry. */
  readonly groupErrors?: readonly number[];
}

/** Options of {@link bootstrap}. */
export interface BootstrapOptions {
  /** Resamples, 100 and more; default 2,000. */
  readonly resamples?: number;
  /** Coverage; default 0.95. */
  readonly level?: number;
  /** Whether `stretch` and `groupErrors` are wanted, at the price of one jackknife; default not. */
  readonly jackknife?: boolean;
  /** Seed, a whole number; default 0. Resample number r uses stream r of it. */
  readonly seed?: number;
}

/**
 * Percentile bootstrap intervals of a statistic with one or several values, computed from one or several groups. Each
 * group is resampled with replacement on its own. Corrections for bias and skewness (BCa) were tried and held less: from a
 * handful of entries they are mostly noise (docs/statistics.md).
 *
 * Source: Efron B, Tibshirani R J (1993) An Introduction to the Bootstrap, ch. 13.
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
  const influences = options.jackknife ? influencesOf(groups, statistic, estimates.length) : undefined;
  return estimates.map((estimate, k) => {
    const values = draws[k]!.sort((a, b) => a - b);
    const tail = 0.5 - level / 2;
    return {
      estimate,
      standardError: standardDeviation(values),
      low: quantileOfSorted(values, tail),
      high: quantileOfSorted(values, 1 - tail),
      level,
      ...(influences !== undefined && {
        stretch: stretchOf(influences[k] ?? [], level),
        groupErrors: (influences[k] ?? []).map((own) => Math.sqrt(varianceOf(own))),
      }),
    };
  });
}

/** What leaving out one entry of a group does to a value: sum of squares over the group. */
interface Influence {
  readonly count: number;
  readonly squares: number;
}

/** Influences by value, then by group. */
function influencesOf<T>(
  groups: readonly (readonly T[])[],
  statistic: (groups: readonly (readonly T[])[]) => readonly number[],
  size: number,
): Influence[][] {
  const all = Array.from({ length: size }, (): Influence[] => []);
  groups.forEach((group, g) => {
    const count = group.length;
    if (count < 2) {
      for (const own of all) own.push({ count, squares: 0 });
      return;
    }
    const left = group.map((_, i) =>
      statistic(groups.map((other, h) => (h === g ? other.filter((__, j) => j !== i) : other))),
    );
    all.forEach((own, k) => {
      const finite = left.map((values) => values[k]!).filter(Number.isFinite);
      const centre = finite.reduce((sum, value) => sum + value, 0) / finite.length;
      const influences = finite.map((value) => ((count - 1) * (centre - value)) / count);
      own.push({ count, squares: influences.reduce((sum, value) => sum + value * value, 0) });
    });
  });
  return all;
}

/** Variance free of the resamples' bias, which is (n − 1)/n. */
function varianceOf({ count, squares }: Influence): number {
  return squares > 0 ? (squares * count) / (count - 1) : 0;
}

function stretchOf(groups: readonly Influence[], level: number): number {
  const resampled = groups.reduce((sum, { squares }) => sum + squares, 0);
  if (!(resampled > 0)) return 1;
  // Σ v² over degrees of freedom is Welch's denominator.
  const parts = groups
    .filter(({ squares }) => squares > 0)
    .map((group) => ({ dof: group.count - 1, v: varianceOf(group) / resampled }));
  const variance = parts.reduce((sum, { v }) => sum + v, 0);
  const dof = variance ** 2 / parts.reduce((sum, { v, dof }) => sum + v ** 2 / dof, 0);
  const p = 0.5 + level / 2;
  return (Math.sqrt(variance) * studentTQuantile(p, dof)) / normalQuantile(p);
}
