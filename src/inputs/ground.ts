import type { Angle, Length } from '../units/index.js';
import { DEGREES, METRES } from '../units/unit.js';
import { type Declared, optional, quantity } from './field.js';
import { frozen } from './frozen.js';

/**
 * The ground as a plane: y = elevation + tan(slope) x + tan(crossSlope) z. The ball starts at the origin, which lies
 * above the plane when `elevation` is negative (a raised tee).
 */
export interface Ground {
  /** Height of the plane under the ball's start [m], −1,000 to 1,000; default 0. Negative: the tee stands above it. */
  readonly elevation?: Length;
  /** Slope down the target line [rad], + uphill, −0.6 to 0.6; default 0. */
  readonly slope?: Angle;
  /** Slope across the target line [rad], + rising to the right, −0.6 to 0.6; default 0. */
  readonly crossSlope?: Angle;
}

/** Declaration of {@link Ground}. @internal */
export const groundFields: Declared<Ground> = /* @__PURE__ */ frozen(() => ({
  elevation: optional(quantity(METRES, -1000, 1000, -3, 'elevation of the ground')),
  slope: optional(quantity(DEGREES, -0.6, 0.6, 0.02, 'slope of the ground')),
  crossSlope: optional(quantity(DEGREES, -0.6, 0.6, 0.02, 'cross slope of the ground')),
}));
