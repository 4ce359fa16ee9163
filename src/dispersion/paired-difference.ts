import { normalQuantile } from '../numerics/index.js';

/** A difference between two ways of playing the same shots: known far better than either. */
export interface PairedDifference {
  /** Estimate; strokes, negative for fewer. */
  readonly value: number;
  /** Standard error that the finite number of shots leaves. */
  readonly standardError: number;
  /** 95 % interval. */
  readonly interval: { readonly low: number; readonly high: number };
}

/** Half-width of a 95 % interval in standard errors. */
const HALF_WIDTH = normalQuantile(0.975);

/**
 * Mean of one column less that of another, over as many shots as both have; NaN marks a shot that could not be played.
 * The error is taken shot by shot, as if shots were independent; evenly spread points make it smaller, if anything.
 * @internal
 */
export function pairedDifference(one: Float64Array, other: Float64Array): PairedDifference {
  const count = Math.min(one.length, other.length);
  const [a, b] = [meanOf(one, count), meanOf(other, count)];
  const value = a.mean - b.mean;
  let squares = 0;
  for (let i = 0; i < count; i++) {
    // What the shot moves each mean by; one that could not be played moves none.
    const left = (one[i] as number) - a.mean;
    const right = (other[i] as number) - b.mean;
    const moves = (Number.isNaN(left) ? 0 : left / a.share) - (Number.isNaN(right) ? 0 : right / b.share);
    squares += moves * moves;
  }
  const standardError = Math.sqrt(squares / (count - 1) / count);
  const half = HALF_WIDTH * standardError;
  return { value, standardError, interval: { low: value - half, high: value + half } };
}

function meanOf(column: Float64Array, count: number): { mean: number; share: number } {
  let sum = 0;
  let played = 0;
  for (let i = 0; i < count; i++) {
    const value = column[i] as number;
    if (!Number.isNaN(value)) {
      sum += value;
      played++;
    }
  }
  return { mean: sum / played, share: played / count };
}

/** 1 where strokes are clearly more by the interval, −1 where clearly fewer, 0 where neither shows. @internal */
export function clearSign({ interval: { low, high } }: PairedDifference): -1 | 0 | 1 {
  return low > 0 ? 1 : high < 0 ? -1 : 0;
}

/** Standard errors beyond which one of so many differences is clear, all of them together at 95 % (Bonferroni). @internal */
export function clearOfMany(comparisons: number): number {
  return normalQuantile(1 - 0.05 / Math.max(1, comparisons));
}
