import type { Clubhead } from '../clubhead/index.js';
import type { Flight, FlightOptions } from '../flight/index.js';
import type { Launch, Scene } from '../scene/index.js';
import type { ModelWarning } from '../source.js';
import type { Strike } from '../strike/index.js';
import type { Run } from '../turf/index.js';
import type { Length } from '../units/index.js';

/** With what and where a shot is played. */
export interface ShotSetup {
  /** Clubhead; default the generic driver. Used when the shot starts from a delivery. */
  readonly clubhead?: Clubhead;
  /** Scene; default as its fields say. */
  readonly scene?: Scene;
  /** Integration options. */
  readonly flight?: FlightOptions;
}

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
