import type { Clubhead } from '../clubhead/index.js';
import type { FlightOptions } from '../flight/index.js';
import type { Launch, Scene } from '../scene/index.js';
import type { Delivery } from '../strike/index.js';
import type { ListRow } from './design.js';
import type { OutputName } from './outputs.js';

/** What stays the same in every row of a sweep, and what is computed. */
export interface SweepSetup {
  /**
   * The delivery or the launch around which the factors vary. Not needed when the factors and `fixed` give club speed,
   * attack angle and dynamic loft, or ball speed, launch angle and spin rate.
   */
  readonly from?: Delivery | Launch;
  /** Values of factors that do not vary. */
  readonly fixed?: ListRow;
  /** Clubhead; default the generic driver. */
  readonly clubhead?: Clubhead;
  /** Scene; default as its fields say. */
  readonly scene?: Scene;
  /** Integration options. */
  readonly flight?: FlightOptions;
  /** Outputs; default the carry, side, curve, apex, hang time, descent, total and side at rest, and the launch of a delivery. */
  readonly outputs?: readonly OutputName[];
}
