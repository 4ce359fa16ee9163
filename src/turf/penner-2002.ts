import type { PennerBounce } from '../inputs/turf.js';
import { RADIANS_PER_DEGREE } from '../units/index.js';
import { type BounceLaw, craterDepth } from './bounce-law.js';

/**
 * Tilt of the crater wall [°] at one speed [m/s] and approach from the normal [°], to both of which it is proportional
 * (Penner 2002, Can. J. Phys. 80, 931; numbers from memory, linearity also in Biber et al. 2023, Sports Eng. 26).
 * @internal
 */
export const CRATER = { tilt: 15.4, speed: 18.6, fromNormal: 44.4 } as const;
const CRATER_TILT = CRATER.tilt / CRATER.fromNormal / CRATER.speed;

/** Constants of {@link pennerRestitution}. @internal */
export const RESTITUTION = { still: 0.51, fall: 0.0375, rise: 0.000903, fastest: 20, beyond: 0.12 } as const;

/**
 * Normal restitution of ball on turf, e = 0.510 − 0.0375 v + 0.000903 v² up to 20 m/s and 0.120 above
 * (Penner 2002, Can. J. Phys. 80, 931, from memory; the branches join to 0.001).
 * @param normalSpeed - approach speed along the normal of the crater wall [m/s]
 * @internal
 */
export function pennerRestitution(normalSpeed: number): number {
  const { still, fall, rise, fastest, beyond } = RESTITUTION;
  return normalSpeed <= fastest ? still - fall * normalSpeed + rise * normalSpeed * normalSpeed : beyond;
}

/**
 * The bounce of Penner 2002: the ball meets a crater wall tilted by 15.4° (v / 18.6 m/s) (φ / 44.4°), φ from the normal of
 * the turf (the other reading, φ from the horizontal, gives drives that run 118 yd). Two guards that are ours keep grazing
 * balls sane: the tilt fades with the normal speed below 3 m/s and is capped.
 *
 * Tested on greens at 15–30 m/s and 35–60° of descent. Outside: the tilt grows on to its cap, which every grazing ball
 * meets, and the restitution stays at 0.120 above 20 m/s.
 * @internal
 */
export function pennerLaw({ tiltScale, tiltCap, restitutionScale, friction }: PennerBounce): BounceLaw {
  const tiltPer = tiltScale * CRATER_TILT;
  return {
    id: 'penner-2002',
    tilt: (speed, normalSpeed, descent) =>
      Math.min(tiltCap, tiltPer * speed * (Math.PI / 2 - descent) * craterDepth(normalSpeed)),
    restitution: (normalSpeed) => restitutionScale * pennerRestitution(normalSpeed),
    friction,
    tested: {
      speed: { min: 15, max: 30 },
      descent: { min: 35 * RADIANS_PER_DEGREE, max: 60 * RADIANS_PER_DEGREE },
    },
    band: 0.65,
  };
}
