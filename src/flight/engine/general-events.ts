import type { EmbeddedStepper, RightHandSide } from '../../numerics/embedded-stepper.js';
import { createStepper } from '../../numerics/embedded-stepper.js';
import { quinticHermite, quinticRoot, quinticSlope, quinticValue } from '../../numerics/quintic-hermite.js';
import { dormandPrince853 } from '../../numerics/tableaux/dormand-prince-853.js';
import { STATES } from '../equations.js';
import type { GroundPlane } from '../ground-plane.js';
import { FURTHEST_ROOT, LEAST_SHARE, ON_GROUND_WITHIN } from './step-decisions.js';

/** Most steps onto one place: a bound, seldom met. */
const MOST_STEPS_ONTO_GROUND = 20;
const MOST_STEPS_ONTO_SUMMIT = 8;
/** Time [s] within which the summit of a ball that stays under the ground is met: rounding of a time of seconds. */
const AT_SUMMIT_WITHIN = 1e-12;

/** A step of the general engine: its two ends, a place within that it may be redone onto, and the derivative at each. */
export interface GeneralStep {
  readonly stepper: EmbeddedStepper;
  readonly y: Float64Array;
  readonly f: Float64Array;
  readonly yNew: Float64Array;
  readonly fNew: Float64Array;
  readonly event: Float64Array;
  readonly eventF: Float64Array;
  /** The top within the step, as height and horizontal position; height 0 for none. */
  readonly top: { height: number; x: number; z: number };
  /** Scratch of {@link findTop}. */
  readonly quintic: Float64Array;
}

/** Room for a step. @internal */
export function generalStep(): GeneralStep {
  const state = (): Float64Array => new Float64Array(STATES);
  return {
    stepper: createStepper(dormandPrince853, STATES),
    y: state(),
    f: state(),
    yNew: state(),
    fNew: state(),
    event: state(),
    eventF: state(),
    top: { height: 0, x: 0, z: 0 },
    quintic: new Float64Array(6),
  };
}

/** Steps from the node for `dt`, into `event`. */
function stepOnto(step: GeneralStep, rhs: RightHandSide, t: number, dt: number): void {
  const { stepper, y, f, event, eventF } = step;
  stepper.step(rhs, t, y, f, dt);
  event.set(stepper.next);
  rhs(t + dt, event, eventF);
}

/** Steps onto the ground, near `guess`, into `event`; returns the time that took, NaN when the ball is not there. @internal */
export function stepOntoGround(
  step: GeneralStep,
  rhs: RightHandSide,
  plane: GroundPlane,
  t: number,
  h: number,
  guess: number,
  tolerance: number,
): number {
  const { event, eventF } = step;
  let dt = guess;
  for (let i = 0; i < MOST_STEPS_ONTO_GROUND; i++) {
    stepOnto(step, rhs, t, dt);
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
}

/** Steps onto where a ball under the ground is nearest to it, near `guess`, into `event`; returns the time that took. @internal */
export function stepOntoSummit(
  step: GeneralStep,
  rhs: RightHandSide,
  plane: GroundPlane,
  t: number,
  h: number,
  guess: number,
): number {
  let dt = guess;
  for (let i = 0; i < MOST_STEPS_ONTO_SUMMIT; i++) {
    stepOnto(step, rhs, t, dt);
    const correction = -plane.climb(step.event) / plane.climbRate(step.eventF);
    if (!(Math.abs(correction) > AT_SUMMIT_WITHIN)) break;
    dt = Math.min(Math.max(dt + correction, 0), h);
  }
  return dt;
}

/** Sets the quintic of one position component over the step. */
function setQuintic({ y, f, yNew, fNew, quintic }: GeneralStep, h: number, component: number): void {
  const v = component + 3;
  quinticHermite(h, y[component]!, y[v]!, f[v]!, yNew[component]!, yNew[v]!, fNew[v]!, quintic);
}

/**
 * Finds the top of a step that may have one before its `end` (a share of it, or negative for the whole), on its quintic
 * or, where `exact`, by stepping onto it. @internal
 */
export function findTop(
  step: GeneralStep,
  rhs: RightHandSide,
  t: number,
  h: number,
  end: number,
  exact: boolean,
): void {
  const { top, event, eventF, quintic } = step;
  setQuintic(step, h, 1);
  const apex = quinticSlope(quintic, 1) < 0 ? quinticRoot(quintic, true, 0, 1) : 1;
  if (apex >= 1 || (end >= 0 && apex > end)) return;
  if (exact) {
    stepOnto(step, rhs, t, apex * h);
    top.height = event[1]! + (event[4]! * event[4]!) / (2 * Math.abs(eventF[4]!));
    top.x = event[0]!;
    top.z = event[2]!;
    return;
  }
  top.height = quinticValue(quintic, apex);
  setQuintic(step, h, 0);
  top.x = quinticValue(quintic, apex);
  setQuintic(step, h, 2);
  top.z = quinticValue(quintic, apex);
}

/** Second-order Taylor step over a time of microseconds. */
function drift(s: Float64Array, d: Float64Array, dt: number): void {
  for (let i = 0; i < 3; i++) {
    s[i] = s[i]! + dt * (s[i + 3]! + 0.5 * dt * d[i + 3]!);
    s[i + 3] = s[i + 3]! + dt * d[i + 3]!;
  }
  s[6] = s[6]! + dt * d[6]!;
}
