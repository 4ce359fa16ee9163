import { STANDARD_GRAVITY } from '../gravity.js';
import { readQuantity } from '../inputs/read.js';
import { greenSpeedField } from '../inputs/turf.js';
import type { Length } from '../units/index.js';

/** Speed at which the ball leaves the notched bar of a stimpmeter: 6.00 ft/s [m/s]. @internal */
export const RELEASE_SPEED = 1.83;

/**
 * Coefficient of rolling resistance of turf on which a stimpmeter ball rolls out to the distance s: 7 v₀²/(10 g s) with
 * v₀ = 1.83 m/s, from the deceleration (5/7) R g of a solid sphere rolling on turf of resistance R.
 *
 * Source: Penner 2002, Can. J. Phys. 80, 83, from memory; his 0.196 at 4 ft and 0.065 at 12 ft follow.
 * @param distance - stimpmeter reading [m], 0.3 to 6 m (1 to 20 ft)
 * @returns rolling resistance, dimensionless, for `Turf.rollingResistance`
 * @throws FairflightError `invalid-input` or `outside-range`
 */
export function rollingResistanceOfGreen(distance: Length): number {
  readQuantity(greenSpeedField, distance, 'distance');
  return (7 * RELEASE_SPEED ** 2) / (10 * STANDARD_GRAVITY * distance);
}
