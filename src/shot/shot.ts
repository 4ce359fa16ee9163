import type { Flight } from '../flight/index.js';
import type { Launch } from '../inputs/launch.js';
import type { Strike } from '../strike/index.js';
import type { Run } from '../turf/index.js';
import type { Length } from '../units/index.js';
import type { ModelWarning } from '../warnings/index.js';

/** One shot, from impact or launch to rest. */
export interface Shot {
  /** Present when the shot started from a delivery. */
  readonly strike?: Strike;
  /** How the ball left. */
  readonly launch: Launch;
  /** The flight. */
  readonly flight: Flight;
  /** The run; absent when the ball did not land: above all, a topped shot has none, since no bounce model was made for it. */
  readonly run?: Run;
  /** Carry [m]. */
  readonly carry: Length;
  /** Horizontal distance from the start to where the ball rests [m]; equals the carry when there is no run. */
  readonly total: Length;
  /** Sideways position where the ball rests [m], + right of the target line. */
  readonly side: Length;
  /** All warnings of strike, flight and run. */
  readonly warnings: readonly ModelWarning[];
}
