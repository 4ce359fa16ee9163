import { type Interval, mean, meanInterval, standardDeviation, studentTQuantile } from '../numerics/index.js';
import type { QuantityName } from './quantities.js';

/** Quantities that a mishit makes smaller, never larger. */
const LOWERED: readonly QuantityName[] = ['ballSpeed', 'smashFactor', 'carry', 'total'];

/** Standard deviations by which the shot added lies below the mean, and the share of a shot that it counts for. */
const BELOW = 3;
const WEIGHT = 0.5;

/**
 * Interval for the mean of one quantity when every shot counts, the mishits too. Few shots rarely hold as many mishits
 * as the player makes, and then Student's interval lies too high and is too narrow. So where a mishit makes the
 * quantity smaller, the lower end is that of the shots with half a shot more, three standard deviations below their
 * mean; the upper end, and both ends of the other quantities, are Student's.
 *
 * Adding shots to a small sample is the device of Agresti A, Coull B A (1998) Am. Stat. 52, 119–126 (from memory); the
 * half and the three are chosen by trial: see docs/statistics.md. Needs two values.
 * @internal
 */
export function meanIntervalWithMishits(
  values: readonly number[],
  name: QuantityName,
  level: number,
): Interval {
  const plain = meanInterval(values, level);
  if (!LOWERED.includes(name)) return plain;
  const n = values.length;
  const [centre, sd] = [mean(values), standardDeviation(values)];
  const size = n + WEIGHT;
  const shift = (BELOW * sd * WEIGHT) / size;
  const square = (n - 1) * sd ** 2 + n * shift ** 2 + WEIGHT * (BELOW * sd - shift) ** 2;
  const reach = studentTQuantile(0.5 + level / 2, n - 1) * Math.sqrt(square / (size - 1) / size);
  return { ...plain, low: Math.min(plain.low, centre - shift - reach) };
}
