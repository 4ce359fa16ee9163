import { mean, normalCdf, stream } from '../numerics/index.js';

/** Whether shots scatter with wilder tails than the normal distribution, as with a wild shot now and then. */
export interface Tails {
  /** Kurtosis of the shots about the means of their bands or sessions; 3 for many normal shots. */
  readonly kurtosis: number;
  /** Chance of a kurtosis as large among normal shots. */
  readonly probability: number;
  /** `wild` when the chance is below 10 %: the interval may then hold less than it says. `not-shown` proves nothing. */
  readonly verdict: 'wild' | 'not-shown';
}

const LIMIT = 0.1;
const TRIALS = 400;
/** From here on the kurtosis of normal shots is normal, closely enough for the limit. */
const MANY = 2000;

/** Groups of values with means of their own and one standard deviation. */
type Pool = readonly (readonly number[])[];

/** Judges the tails by trial against normal shots in as many groups, always with the same numbers. @internal */
export function tailsOf(pools: readonly Pool[]): Tails {
  const count = pools.flat(2).length;
  const kurtosis = kurtosisOf(pools);
  const probability =
    count > MANY ? normalCdf((3 - kurtosis) / Math.sqrt(24 / count)) : byTrial(pools, kurtosis);
  return { kurtosis, probability, verdict: probability < LIMIT ? 'wild' : 'not-shown' };
}

/**
 * How many times larger the variance of ln s is than for normal shots, (κ − 1)/2; never below 1. Source: Layard M W J
 * (1973) Robust large-sample tests for homogeneity of variances, J. Am. Stat. Assoc. 68, 195–198 (from memory).
 * @internal
 */
export function tailFactor({ kurtosis }: Tails): number {
  return Math.max(1, (kurtosis - 1) / 2);
}

/** Sums of squares and of fourth powers about the means of groups. */
interface Powers {
  readonly count: number;
  readonly squares: number;
  readonly fourths: number;
}

function kurtosisOf(pools: readonly Pool[]): number {
  return together(
    pools.map((pool) => {
      const deviations = pool.flatMap((values) => {
        const centre = mean(values);
        return values.map((value) => value - centre);
      });
      const power = (exponent: number): number =>
        deviations.reduce((sum, value) => sum + value ** exponent, 0);
      return { count: deviations.length, squares: power(2), fourths: power(4) };
    }),
  );
}

/** Kurtosis of pools, each in its own standard deviation. */
function together(pools: readonly Powers[]): number {
  const sum = (of: (pool: Powers) => number): number => pools.reduce((total, pool) => total + of(pool), 0);
  return sum(({ count, squares, fourths }) => fourths * (count / squares) ** 2) / sum(({ count }) => count);
}

function byTrial(pools: readonly Pool[], kurtosis: number): number {
  const { normal } = stream(0, pools.length);
  const sizes = pools.map((pool) => pool.map(({ length }) => length));
  let larger = 0;
  for (let trial = 0; trial < TRIALS; trial++) {
    larger += Number(together(sizes.map((groups) => normalPowers(groups, normal))) >= kurtosis);
  }
  return larger / TRIALS;
}

/** Of normal values in groups of these sizes, from their plain sums: nothing is stored. */
function normalPowers(groups: readonly number[], normal: () => number): Powers {
  let [count, squares, fourths] = [0, 0, 0];
  for (const size of groups) {
    let [one, two, three, four] = [0, 0, 0, 0];
    for (let i = 0; i < size; i++) {
      const value = normal();
      const square = value * value;
      one += value;
      two += square;
      three += square * value;
      four += square * square;
    }
    const centre = one / size;
    count += size;
    squares += two - size * centre ** 2;
    fourths += four - 4 * centre * three + 6 * centre ** 2 * two - 3 * size * centre ** 4;
  }
  return { count, squares, fourths };
}
