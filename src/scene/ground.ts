import type { Angle, Length } from '../units/index.js';

/**
 * The ground as a plane: y = elevation + tan(slope) x + tan(crossSlope) z. The ball starts at the origin, which lies
 * above the plane when `elevation` is negative (a raised tee).
 */
export interface Ground {
  /** Height of the plane under the ball's start [m]; default 0. Negative: the tee stands above the plane. */
  readonly elevation?: Length;
  /** Slope down the target line [rad], + uphill; default 0. */
  readonly slope?: Angle;
  /** Slope across the target line [rad], + rising to the right; default 0. */
  readonly crossSlope?: Angle;
}
