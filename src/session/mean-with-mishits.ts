import { type Interval, mean, meanInterval, standardDeviation, studentTQuantile } from '../numerics/index.js';
import type { QuantityName } from './quantities.js';

/** Quantities that a mishit makes smaller, never larger. */
const LOWERED: readonly QuantityName[] = ['ballSpeed', 'smashFactor', 'carry', 'total'];

/** Standard deviations by which the shot added lies below the mean, and the share of a shot that it counts for. */
const BELOW = 3.2;
const WEIGHT = 0.5;

/**
 * What mishits not yet seen add to the square of the reach below a mean of few shots. Few shots rarely hold as many mishits
 * as the player makes, and then Student's interval lies too high and is too narrow. The reach below is that of the shots with
 * half a shot more, 3.2 standard deviations below their mean.
 *
 * Adding shots to a small sample is the device of Agresti A, Coull B A (1998) Am. Stat. 52, 119–126 (from memory); the
 * half and the 3.2 are chosen by trial: see docs/statistics.md.
 * @param count - shots; with fewer than two the scatter is not known, and nothing is added
 * @param sd - their standard deviation
 * @internal
 */
export function roomForMishits(count: number, sd: number, level: number): number {
  if (count < 2) return 0;
  const size = count + WEIGHT;
  const shift = (BELOW * sd * WEIGHT) / size;
  const square = (count - 1) * sd ** 2 + count * shift ** 2 + WEIGHT * (BELOW * sd - shift) ** 2;
  const t = studentTQuantile(0.5 + level / 2, count - 1);
  const below = shift + t * Math.sqrt(square / (size - 1) / size);
  return Math.max(0, below ** 2 - (t ** 2 * sd ** 2) / count);
}

/**
 * Interval for the mean of one quantity when every shot counts, the mishits too: where a mishit makes the quantity smaller,
 * the lower end leaves {@link roomForMishits}; the upper end, and both ends of the other quantities, are Student's. Needs
 * two values.
 * @internal
 */
export function meanIntervalWithMishits(
  values: readonly number[],
  name: QuantityName,
  level: number,
): Interval {
  const plain = meanInterval(values, level);
  if (!LOWERED.includes(name)) return plain;
  const centre = mean(values);
  const room = roomForMishits(values.length, standardDeviation(values), level);
  return { ...plain, low: centre - Math.sqrt((centre - plain.low) ** 2 + room) };
}
