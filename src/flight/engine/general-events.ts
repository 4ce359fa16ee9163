import type { EmbeddedStepper, RightHandSide } from '../../numerics/embedded-stepper.js';
import { quinticHermite, quinticRoot, quinticSlope } from '../../numerics/quintic-hermite.js';
import { STATES } from '../equations.js';
import type { GroundPlane } from '../ground-plane.js';
import { FURTHEST_ROOT, LEAST_SHARE, ON_GROUND_WITHIN } from './step-decisions.js';

/** Most steps onto one place: a bound, seldom met. */
const MOST_STEPS_ONTO_GROUND = 20;
const MOST_STEPS_ONTO_SUMMIT = 8;
/** Time [s] within which the summit of a ball that stays under the ground is met: rounding of a time of seconds. */
const AT_SUMMIT_WITHIN = 1e-12;

/** The events of a step of the general engine: places within it that it is redone onto, into `event`. @internal */
export interface GeneralEvents {
  /** State at the last place stepped onto, and its derivative. */
  readonly event: Float64Array;
  readonly eventF: Float64Array;
  /** The top last found, as height and horizontal distance. */
  readonly top: { height: number; at: number };
  /** Steps onto the ground, near `guess`; returns the time that took, NaN when the ball is not there. */
  readonly stepOntoGround: (
    rhs: RightHandSide,
    plane: GroundPlane,
    t: number,
    h: number,
    guess: number,
    tolerance: number,
  ) => number;
  /** Steps onto where a ball under the ground is nearest to it, near `guess`; returns the time that took. */
  readonly stepOntoSummit: (
    rhs: RightHandSide,
    plane: GroundPlane,
    t: number,
    h: number,
    guess: number,
  ) => number;
  /**
   * Steps onto the top of a step that may have one before its `end` (a share of it, or negative for the whole).
   */
  readonly findTop: (rhs: RightHandSide, t: number, h: number, end: number) => void;
}

/** Makes the events of steps from a node (`y`, derivative `f`) to an end (`yNew`, `fNew`). @internal */
export function createEvents(
  stepper: EmbeddedStepper,
  y: Float64Array,
  f: Float64Array,
  yNew: Float64Array,
  fNew: Float64Array,
): GeneralEvents {
  const event = new Float64Array(STATES);
  const eventF = new Float64Array(STATES);
  const quintic = new Float64Array(6);
  const top = { height: 0, at: 0 };

  function stepOnto(rhs: RightHandSide, t: number, dt: number): void {
    stepper.step(rhs, t, y, f, dt);
    event.set(stepper.next);
    rhs(t + dt, event, eventF);
  }

  const stepOntoGround: GeneralEvents['stepOntoGround'] = (rhs, plane, t, h, guess, tolerance) => {
    let dt = guess;
    for (let i = 0; i < MOST_STEPS_ONTO_GROUND; i++) {
      stepOnto(rhs, t, dt);
      const climb = plane.climb(event);
      const correction = climb < 0 ? -plane.height(event) / climb : 0;
      if (Math.abs(correction) < ON_GROUND_WITHIN) {
        if (climb >= 0) break;
        drift(event, eventF, correction);
        return dt + correction;
      }
      dt = Math.min(Math.max(dt + correction, LEAST_SHARE * dt), FURTHEST_ROOT * h);
    }
    return Math.abs(plane.height(event)) <= tolerance ? dt : Number.NaN;
  };

  const stepOntoSummit: GeneralEvents['stepOntoSummit'] = (rhs, plane, t, h, guess) => {
    let dt = guess;
    for (let i = 0; i < MOST_STEPS_ONTO_SUMMIT; i++) {
      stepOnto(rhs, t, dt);
      const correction = -plane.climb(event) / plane.climbRate(eventF);
      if (!(Math.abs(correction) > AT_SUMMIT_WITHIN)) break;
      dt = Math.min(Math.max(dt + correction, 0), h);
    }
    return dt;
  };

  const findTop: GeneralEvents['findTop'] = (rhs, t, h, end) => {
    quinticHermite(h, y[1]!, y[4]!, f[4]!, yNew[1]!, yNew[4]!, fNew[4]!, quintic);
    const apex = quinticSlope(quintic, 1) < 0 ? quinticRoot(quintic, true, 0, 1) : 1;
    if (apex >= 1 || (end >= 0 && apex > end)) return;
    stepOnto(rhs, t, apex * h);
    top.height = event[1]! + (event[4]! * event[4]!) / (2 * Math.abs(eventF[4]!));
    top.at = Math.hypot(event[0]!, event[2]!);
  };

  return { event, eventF, top, stepOntoGround, stepOntoSummit, findTop };
}

/** Second-order Taylor step over a time of microseconds. */
function drift(s: Float64Array, d: Float64Array, dt: number): void {
  for (let i = 0; i < 3; i++) {
    s[i] = s[i]! + dt * (s[i + 3]! + 0.5 * dt * d[i + 3]!);
    s[i + 3] = s[i + 3]! + dt * d[i + 3]!;
  }
  s[6] = s[6]! + dt * d[6]!;
}
