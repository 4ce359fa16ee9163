import type { ModelChoice } from '../aerodynamics/index.js';
import type { Air, Wind } from '../air/index.js';
import type { Ball } from '../ball/index.js';
import type { Turf, TurfName } from '../turf/index.js';
import type { Ground } from './ground.js';

/** Where and with what a shot is played. Every field has a default. */
export interface Scene {
  /** Air; default 20 °C, 1013.25 hPa, 50 % humidity (1.1993 kg/m³, CIPM-2007). */
  readonly air?: Air;
  /** Wind; default none. */
  readonly wind?: Wind;
  /** Ground; default the horizontal plane through the ball's start. */
  readonly ground?: Ground;
  /** Turf where the ball lands; default normal. Used by the run only. */
  readonly turf?: Turf | TurfName;
  /** Ball; default the conforming ball. */
  readonly ball?: Ball;
  /**
   * Coefficient model: the id of a built-in one, a model as plain data, or a record of functions, which cannot leave the
   * process; default the fitted modern ball.
   */
  readonly aerodynamics?: ModelChoice;
}
