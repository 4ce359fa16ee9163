import { requireSample } from './moments.js';
import { requireWithin } from './require.js';

/** A sorted copy, smallest first. */
function sorted(values: readonly number[]): number[] {
  return [...values].sort((a, b) => a - b);
}

/**
 * Quantile by linear interpolation of the order statistics at (n − 1)p, the definition most software defaults to.
 * Source: Hyndman R J, Fan Y (1996) Am. Stat. 50, 361–365, definition 7.
 */
export function quantile(values: readonly number[], p: number): number {
  requireSample('values', values, 1);
  return quantileOfSorted(sorted(values), p);
}

/** {@link quantile} of values that are already sorted. */
export function quantileOfSorted(values: ArrayLike<number>, p: number): number {
  requireWithin('p', p, 0, 1, '');
  const position = (values.length - 1) * p;
  const below = Math.floor(position);
  const low = values[below]!;
  const high = values[Math.min(below + 1, values.length - 1)]!;
  return low + (position - below) * (high - low);
}

/** Median. */
export function median(values: readonly number[]): number {
  return quantile(values, 0.5);
}

/** Median absolute deviation from the median, not scaled. */
export function medianAbsoluteDeviation(values: readonly number[]): number {
  const centre = median(values);
  return median(values.map((value) => Math.abs(value - centre)));
}

/** MAD times this estimates the standard deviation of normal data: 1/Φ⁻¹(¾). */
export const ROBUST_SD_FACTOR = 1.482602218505602;
