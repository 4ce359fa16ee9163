import type { BiberBounce } from '../inputs/turf.js';
import { RADIANS_PER_DEGREE } from '../units/index.js';
import { type BounceLaw, craterDepth } from './bounce-law.js';

/**
 * The bounce of Biber et al. 2023 (Sports Eng. 26, doi 10.1007/s12283-023-00442-4; constants second-hand): a rigid sphere
 * on a wall of one tilt and one restitution. Fitted to 693 bounces on a natural teeing area it erred by 19.2 %, the
 * growing tilt of Penner 2002, fitted to the same bounces, by 21.3 %.
 *
 * Measured at 1.9–38.7 m/s and 16–90° of descent. Outside: the constants are held. Two guards are ours. The tilt fades with
 * the normal speed below 3 m/s, which a ball coming in at 16° has from 11 m/s up. And the wall never turns past the ball: a
 * ball steeper than the wall meets it head on, so that one falling straight down has no side to be thrown to.
 * @internal
 */
export function biberLaw({ tilt, restitution, friction }: BiberBounce): BounceLaw {
  return {
    id: 'biber-2023',
    tilt: (_speed, normalSpeed, descent) => Math.min(tilt * craterDepth(normalSpeed), Math.PI / 2 - descent),
    restitution: () => restitution,
    friction,
    tested: {
      speed: { min: 1.9, max: 38.7 },
      descent: { min: 16 * RADIANS_PER_DEGREE, max: 90 * RADIANS_PER_DEGREE },
    },
    band: 0.25,
  };
}
