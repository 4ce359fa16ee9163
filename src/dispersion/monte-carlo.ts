import { mean, normalQuantile, quantileOfSorted, standardDeviation } from '../numerics/index.js';
import { type Length, si } from '../units/index.js';
import { REPLICATES } from './cloud.js';

/** An estimate from a cloud of shots, with its Monte Carlo error: how far another seed would move it. */
export interface MonteCarlo<Q extends number = number> {
  /** Estimate. */
  readonly value: Q;
  /** Standard error that the finite number of shots leaves, from eight replicates: 95 % is ±2.36 of it. */
  readonly standardError: Q;
}

/** A share of shots. */
export interface ShareOfShots {
  /** Share, 0 to 1. */
  readonly share: number;
  /** Monte Carlo standard error. */
  readonly standardError: number;
  /** 95 % interval for the share, by Wilson's formula for independent shots: also none out of a thousand leaves something open. Wide for evenly spread ones. */
  readonly interval: { readonly low: number; readonly high: number };
}

/** How a distance is distributed. */
export interface DistanceDistribution {
  /** Mean [m]. */
  readonly mean: MonteCarlo<Length>;
  /** Standard deviation from shot to shot [m]. */
  readonly sd: MonteCarlo<Length>;
  /** 5 % of shots fall short of this [m]. */
  readonly p5: MonteCarlo<Length>;
  /** Lower quartile [m]. */
  readonly p25: MonteCarlo<Length>;
  /** Median [m]. */
  readonly median: MonteCarlo<Length>;
  /** Upper quartile [m]. */
  readonly p75: MonteCarlo<Length>;
  /** 5 % of shots go beyond this [m]. */
  readonly p95: MonteCarlo<Length>;
}

/** The replicates a cloud is made of, as lists of places in its columns. @internal */
export function replicatesOf(shots: readonly number[]): number[][] {
  const parts = Array.from({ length: REPLICATES }, (): number[] => []);
  shots.forEach((shot, i) => {
    parts[shot % REPLICATES]?.push(i);
  });
  return parts.filter((part) => part.length > 1);
}

/** The places of all shots but those of one replicate, for each. @internal */
export function withoutEach(parts: readonly (readonly number[])[]): number[][] {
  return parts.map((left) => parts.flatMap((part) => (part === left ? [] : part)));
}

/** Number, mean and sum of squared deviations of some values. */
interface Moments {
  readonly count: number;
  readonly mean: number;
  readonly squares: number;
}

/** Moments of all values but those of one replicate, for each, from sums of deviations from `about`. */
function momentsWithoutEach(
  parts: readonly (readonly number[])[],
  values: readonly number[],
  about: number,
): Moments[] {
  const sums = parts.map((part) => {
    let first = 0;
    let second = 0;
    for (const i of part) {
      const apart = (values[i] as number) - about;
      first += apart;
      second += apart * apart;
    }
    return { count: part.length, first, second };
  });
  const total = (of: (sum: (typeof sums)[number]) => number): number =>
    sums.reduce((t, sum) => t + of(sum), 0);
  const [count, first, second] = [total((s) => s.count), total((s) => s.first), total((s) => s.second)];
  return sums.map((left) => {
    const n = count - left.count;
    const shift = (first - left.first) / n;
    return { count: n, mean: about + shift, squares: second - left.second - n * shift * shift };
  });
}

/** Mean of all shots, its error from what each replicate changes in it. @internal */
export function meanOf<Q extends number = number>(
  parts: readonly (readonly number[])[],
  values: readonly number[],
): MonteCarlo<Q> {
  const value = mean(values);
  const each = momentsWithoutEach(parts, values, value).map((moments) => moments.mean);
  return { value: value as Q, standardError: standardErrorOf(each) as Q };
}

function sdOf(parts: readonly (readonly number[])[], values: readonly number[]): MonteCarlo<Length> {
  const each = momentsWithoutEach(parts, values, mean(values)).map(({ squares, count }) =>
    Math.sqrt(Math.max(0, squares) / (count - 1)),
  );
  return { value: si(standardDeviation(values)), standardError: si(standardErrorOf(each)) };
}

/**
 * Error of a statistic from its values without each replicate: the jackknife by groups, √((g − 1)/g Σ (θ₋ₖ − θ̄)²). Of a
 * mean it is that of independent replicates; of a quantile or an area too it is right, which hardly changes its bias by
 * losing an eighth of the shots.
 *
 * Source: Owen A B (1997) Monte Carlo variance of scrambled net quadrature, SIAM J. Numer. Anal. 34, 1884–1910, for
 * replicates; Shao J, Wu C F J (1989) A general theory for jackknife variance estimation, Ann. Stat. 17, 1176–1197 (both from
 * memory).
 * @internal
 */
export function standardErrorOf(each: readonly number[]): number {
  const g = each.length;
  return g > 1 ? (standardDeviation(each) * (g - 1)) / Math.sqrt(g) : Number.MAX_VALUE;
}

/** The values at these places. @internal */
export function pick(values: readonly number[], part: readonly number[]): number[] {
  return part.map((i) => values[i] as number);
}

/** Where the shots of each replicate stand once the replicates are put one after the other. @internal */
export function placesOf(parts: readonly (readonly number[])[]): number[][] {
  let start = 0;
  return parts.map((part) => part.map(() => start++));
}

/** @internal */
export function distributionOf(
  parts: readonly (readonly number[])[],
  values: readonly number[],
): DistanceDistribution {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (p: number): MonteCarlo<Length> => quantileAt(parts, values, sorted, p);
  return {
    mean: meanOf(parts, values),
    sd: sdOf(parts, values),
    p5: at(0.05),
    p25: at(0.25),
    median: at(0.5),
    p75: at(0.75),
    p95: at(0.95),
  };
}

/** Student's t of seven degrees of freedom at 95 %, which eight replicates leave. */
const T = 2.365;

/**
 * A quantile, its error from how the share below it differs between replicates: the quantiles t errors of that share, and
 * half a shot, to either side. Source: Woodruff R S (1952) Confidence intervals for medians and other position measures, J. Am.
 * Stat. Assoc. 47, 635–646 (from memory).
 */
function quantileAt(
  parts: readonly (readonly number[])[],
  values: readonly number[],
  sorted: readonly number[],
  p: number,
): MonteCarlo<Length> {
  const value = quantileOfSorted(sorted, p);
  const { standardError } = meanOf(
    parts,
    values.map((each) => Number(each <= value)),
  );
  const reach = T * standardError + 0.5 / sorted.length;
  const [low, high] = [Math.max(0, p - reach), Math.min(1, p + reach)];
  const width = quantileOfSorted(sorted, high) - quantileOfSorted(sorted, low);
  return { value: si(value), standardError: si(width / (2 * T)) };
}

/** Share of shots for which something holds. @internal */
export function shareOf(parts: readonly (readonly number[])[], hits: readonly boolean[]): ShareOfShots {
  const numbers = hits.map(Number);
  const { value, standardError } = meanOf(parts, numbers);
  return { share: value, standardError, interval: wilson(value, hits.length) };
}

/** Wilson E B (1927) J. Am. Stat. Assoc. 22, 209–212. */
function wilson(share: number, n: number): { low: number; high: number } {
  const z = normalQuantile(0.975);
  const centre = share + (z * z) / (2 * n);
  const half = z * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n));
  const scale = 1 + (z * z) / n;
  return { low: Math.max(0, (centre - half) / scale), high: Math.min(1, (centre + half) / scale) };
}
