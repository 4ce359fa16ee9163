import { mean, normalQuantile, quantile, standardDeviation } from '../numerics/index.js';
import type { Length } from '../units/index.js';
import { REPLICATES } from './cloud.js';

/** An estimate from a cloud of shots, with its Monte Carlo error: how far another seed would move it. */
export interface MonteCarlo<Q extends number = number> {
  /** Estimate. */
  readonly value: Q;
  /** Standard error that the finite number of shots leaves. */
  readonly standardError: Q;
}

/** A share of shots. */
export interface ShareOfShots {
  /** Share, 0 to 1. */
  readonly share: number;
  /** Monte Carlo standard error. */
  readonly standardError: number;
  /** 95 % interval for the share, by Wilson's formula: also none out of a thousand leaves something open. */
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

/** A statistic of all shots, its error from how it differs between replicates. @internal */
export function estimate<Q extends number = number>(
  parts: readonly (readonly number[])[],
  values: readonly number[],
  statistic: (values: readonly number[]) => number,
): MonteCarlo<Q> {
  const each = parts.map((part) => statistic(pick(values, part)));
  return { value: statistic(values) as Q, standardError: standardErrorOf(each) as Q };
}

/** Error of a mean of replicates. @internal */
export function standardErrorOf(replicates: readonly number[]): number {
  return replicates.length > 1
    ? standardDeviation(replicates) / Math.sqrt(replicates.length)
    : Number.MAX_VALUE;
}

/** The values of one replicate. @internal */
export function pick(values: readonly number[], part: readonly number[]): number[] {
  return part.map((i) => values[i] ?? 0);
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
  const at = (p: number): MonteCarlo<Length> => estimate(parts, values, (v) => quantile(v, p));
  return {
    mean: estimate(parts, values, mean),
    sd: estimate(parts, values, standardDeviation),
    p5: at(0.05),
    p25: at(0.25),
    median: at(0.5),
    p75: at(0.75),
    p95: at(0.95),
  };
}

/** Share of shots for which something holds. @internal */
export function shareOf(parts: readonly (readonly number[])[], hits: readonly boolean[]): ShareOfShots {
  const numbers = hits.map(Number);
  const { value, standardError } = estimate(parts, numbers, mean);
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
