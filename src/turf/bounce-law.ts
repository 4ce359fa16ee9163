import type { TurfBounce } from '../inputs/turf.js';
import type { ValidRange } from '../source.js';

/** What a bounce model makes of turf: the wall that a ball meets, and what it takes from the ball. @internal */
export interface BounceLaw {
  /** Id of the model. */
  readonly id: TurfBounce['model'];
  /**
   * Tilt of the wall, toward the ball [rad].
   * @param speed - of the ball [m/s]
   * @param normalSpeed - its component into the plane [m/s]
   * @param descent - angle of approach below the plane [rad]
   */
  readonly tilt: (speed: number, normalSpeed: number, descent: number) => number;
  /** Normal restitution at an approach speed along the wall's normal [m/s]. */
  readonly restitution: (normalSpeed: number) => number;
  /** Coulomb friction coefficient. */
  readonly friction: number;
  /** Bounces that the model was fitted to or tested on: speed [m/s] and descent [rad]. */
  readonly tested: { readonly speed: ValidRange; readonly descent: ValidRange };
  /**
   * Relative half-width of the band of a run: twice the rms of error over run that the comparison with outside runs and
   * totals leaves (docs/validation.md).
   */
  readonly band: number;
}

/** Normal speed below which the wall fades away: a soft touch leaves no crater [m/s]. Assumption. @internal */
export const FADE_SPEED = 3;

/**
 * Share of its full tilt that the wall has: 1 from 3 m/s into the plane, in proportion below. Without it a rolling ball
 * would go on hopping.
 * @internal
 */
export function craterDepth(normalSpeed: number): number {
  return Math.min(1, normalSpeed / FADE_SPEED);
}
