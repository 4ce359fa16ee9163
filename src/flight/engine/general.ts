import { windFoot } from '../../air/wind-ratio.js';
import { FairflightError } from '../../errors.js';
import { STANDARD_GRAVITY } from '../../gravity.js';
import { createStepper } from '../../numerics/embedded-stepper.js';
import { quinticHermite, quinticRoot, quinticSlope, quinticValue } from '../../numerics/quintic-hermite.js';
import { dormandPrince853 } from '../../numerics/tableaux/dormand-prince-853.js';
import { equationsOfMotion, STATES } from '../equations.js';
import { groundPlane } from '../ground-plane.js';
import type { FlightProblem } from '../problem.js';
import {
  APEX_RESTEP_BELOW,
  FINEST_VELOCITY_TOLERANCE,
  firstStep,
  GENERAL_ENGINE_SHARE,
  VELOCITY_TOLERANCE_PER_METRE,
} from './tolerance.js';

/** How a flight ended, as the engines report it. @internal */
export type Ending = 'landed' | 'time-limit' | 'below-ground' | 'topped';

/** Receives every accepted node of a flight; the arrays are reused, so copy what you keep. @internal */
export type NodeSink = (t: number, y: Float64Array, derivative: Float64Array) => void;

/** Where a flight ended. `state` belongs to the engine and is overwritten by the next flight. @internal */
export interface EngineResult {
  ending: Ending;
  time: number;
  apex: number;
  /** Horizontal distance from the start at the apex. */
  apexAt: number;
  steps: number;
  readonly state: Float64Array;
}

/** An engine with scratch of its own: flights one after another allocate nothing in their steps. @internal */
export interface FlightEngine {
  readonly fly: (
    problem: FlightProblem,
    tolerance: number,
    timeLimit: number,
    sink?: NodeSink,
  ) => EngineResult;
}

const MAX_STEPS = 20_000;
/**
 * The general engine: embedded Runge-Kutta of order 8 with error control, for any coefficient model, wind profile
 * and ground plane. Landing and apex are located on a quintic through the step's ends and then stepped onto again, so
 * that they carry the error of the steps and not of the interpolation.
 * @internal
 */
export function createFlightEngine(): FlightEngine {
  const stepper = createStepper(dormandPrince853, STATES);
  const y = new Float64Array(STATES);
  const f = new Float64Array(STATES);
  const yNew = new Float64Array(STATES);
  const fNew = new Float64Array(STATES);
  const event = new Float64Array(STATES);
  const eventF = new Float64Array(STATES);
  const quintic = new Float64Array(6);
  const state = new Float64Array(STATES);
  const result: EngineResult = { ending: 'landed', time: 0, apex: 0, apexAt: 0, steps: 0, state };

  /** Quintic of one position component over the last step. */
  function pathQuintic(h: number, component: number): void {
    const v = component + 3;
    quinticHermite(h, y[component]!, y[v]!, f[v]!, yNew[component]!, yNew[v]!, fNew[v]!, quintic);
  }

  function noteApex(height: number, x: number, z: number): void {
    if (height <= result.apex) return;
    result.apex = height;
    result.apexAt = Math.hypot(x, z);
  }

  function finish(
    ending: Ending,
    time: number,
    last: Float64Array,
    derivative: Float64Array,
    sink?: NodeSink,
  ): EngineResult {
    result.ending = ending;
    result.time = time;
    state.set(last);
    noteApex(last[1]!, last[0]!, last[2]!);
    sink?.(time, last, derivative);
    return result;
  }

  function fly(problem: FlightProblem, tolerance: number, timeLimit: number, sink?: NodeSink): EngineResult {
    const rhs = equationsOfMotion(problem);
    const plane = groundPlane(problem);
    const velocityTolerance = Math.max(
      tolerance * VELOCITY_TOLERANCE_PER_METRE * GENERAL_ENGINE_SHARE,
      FINEST_VELOCITY_TOLERANCE,
    );
    const { profile } = problem;
    const foot = profile === undefined ? 0 : windFoot(profile);
    const start = startState(problem, y);
    rhs(0, y, f);
    requireFinite(f, problem);
    result.apex = 0;
    result.apexAt = 0;
    result.steps = 0;

    const stepOnto = (time: number, dt: number): void => {
      stepper.step(rhs, time, y, f, dt);
      event.set(stepper.next);
      rhs(time + dt, event, eventF);
    };
    /** Steps onto the ground, near `guess`, into `event`; returns the time that took, NaN when the ball is not there. */
    const stepOntoGround = (time: number, guess: number, h: number): number => {
      let dt = guess;
      for (let i = 0; i < 20; i++) {
        stepOnto(time, dt);
        const climb = plane.climb(event);
        const correction = climb < 0 ? -plane.height(event) / climb : 0;
        if (Math.abs(correction) < 1e-4) {
          if (climb >= 0) break;
          drift(event, eventF, correction);
          return dt + correction;
        }
        dt = Math.min(Math.max(dt + correction, 0.1 * dt), 1.5 * h);
      }
      return Math.abs(plane.height(event)) <= tolerance ? dt : Number.NaN;
    };

    let height = plane.height(y);
    let above = height > 0;
    if (height === 0) {
      const climb = plane.climb(y);
      above = climb > 0 || (climb === 0 && plane.climbRate(f) > 0);
      if (!above) return finish('topped', 0, y, f, sink);
    }
    if (!above && plane.climb(y) <= 0) return finish('below-ground', 0, y, f, sink);
    let t = 0;
    // Half a step: a law may have a corner near the fastest speeds, and the first estimate has nothing to be held against.
    let h = 0.5 * firstStep(velocityTolerance, start);
    let previousError = 1e-2;
    let lastError = 0;
    for (; result.steps < MAX_STEPS; result.steps++) {
      if (t + h > timeLimit) h = timeLimit - t;
      if (profile !== undefined) h = Math.min(h, longestStep(height - foot, plane.climb(y)));
      // A ball that is lifted out of its fall must be seen rising, or its apex goes unnoticed within one step.
      if (y[4]! <= 0 && f[4]! > 0) h = Math.min(h, Math.max((-1.5 * y[4]!) / f[4]!, 0.1 * h));
      stepper.step(rhs, t, y, f, h);
      const error = stepper.error(h, 3, 3, velocityTolerance);
      lastError = error;
      if (!(error <= 1)) {
        h *= Number.isFinite(error) ? Math.max(0.2, 0.9 * error ** -0.125) : 0.2;
        if (h < 1e-12) break;
        continue;
      }
      yNew.set(stepper.next);
      rhs(t + h, yNew, fNew);

      const newHeight = plane.height(yNew);
      const landing = plane.landing(above, h, height, newHeight, y, f, yNew, fNew);
      const summit = above || landing >= 0 ? -1 : plane.summit(h, height, newHeight, y, f, yNew, fNew);
      const end = landing >= 0 ? landing : summit;
      let top = 0;
      let topX = 0;
      let topZ = 0;
      if (y[4]! > 0 && (yNew[4]! <= 0 || end >= 0)) {
        pathQuintic(h, 1);
        const apex = quinticSlope(quintic, 1) < 0 ? quinticRoot(quintic, true, 0, 1) : 1;
        if (apex < 1 && (end < 0 || apex <= end)) {
          if (tolerance < APEX_RESTEP_BELOW) {
            stepOnto(t, apex * h);
            top = event[1]! + (event[4]! * event[4]!) / (2 * Math.abs(eventF[4]!));
            topX = event[0]!;
            topZ = event[2]!;
          } else {
            top = quinticValue(quintic, apex);
            pathQuintic(h, 0);
            topX = quinticValue(quintic, apex);
            pathQuintic(h, 2);
            topZ = quinticValue(quintic, apex);
          }
        }
      }
      const toGround = landing >= 0 ? stepOntoGround(t, landing * h, h) : 0;
      if (Number.isNaN(toGround)) {
        // The step was too coarse for its quintic: the ball it brings to the ground is still in the air.
        h *= 0.5;
        if (h < 1e-12) break;
        continue;
      }
      sink?.(t, y, f);
      noteApex(top, topX, topZ);
      // A drop of less than a rounding error must not end before it began.
      if (landing >= 0) return finish('landed', Math.max(0, t + toGround), event, eventF, sink);

      if (summit >= 0) {
        let dt = summit * h;
        for (let i = 0; i < 8; i++) {
          stepOnto(t, dt);
          const correction = -plane.climb(event) / plane.climbRate(eventF);
          if (!(Math.abs(correction) > 1e-12)) break;
          dt = Math.min(Math.max(dt + correction, 0), h);
        }
        return finish('below-ground', t + dt, event, eventF, sink);
      }

      t += h;
      y.set(yNew);
      f.set(fNew);
      height = newHeight;
      if (t >= timeLimit) return finish('time-limit', timeLimit, y, f, sink);
      if (!above && height > 0) above = true;
      // Step size control with memory: Hairer & Wanner, Solving Ordinary Differential Equations II, section IV.2.
      const factor = 0.9 * Math.max(error, 1e-10) ** -0.1125 * previousError ** 0.04;
      h *= Math.min(4, Math.max(0.333, factor));
      previousError = Math.max(error, 1e-4);
    }
    // The last accepted step came before whatever is not finite; the one proposed runs into it.
    if (!Number.isFinite(lastError)) rhs(t, stepper.next, fNew);
    requireFinite(fNew, problem);
    throw new FairflightError(
      'not-converged',
      `the flight needed more than ${MAX_STEPS} steps, or steps too small, for a tolerance of ${tolerance} m; loosen options.tolerance, or smooth the coefficient model ${problem.model.id} if it is your own`,
      { field: 'options.tolerance', value: tolerance, unit: 'm' },
    );
  }

  return { fly };
}

/** Writes the initial state and returns the ball speed. */
function startState(problem: FlightProblem, y: Float64Array): number {
  y.fill(0);
  y[3] = problem.vx;
  y[4] = problem.vy;
  y[5] = problem.vz;
  y[6] = problem.spin;
  return Math.hypot(problem.vx, problem.vy, problem.vz);
}

/**
 * Longest step where the wind changes with height: one over which the height above the foot of the profile changes by
 * half, or by 2 cm there. The profiles rise from nothing with a kink that the error estimate of a longer step does not see.
 */
function longestStep(height: number, climb: number): number {
  const room = Math.max(0.5 * Math.abs(height), 0.02);
  return room / (Math.abs(climb) + Math.sqrt(2 * STANDARD_GRAVITY * 0.02));
}

/** Second-order Taylor step over a time of microseconds. */
function drift(s: Float64Array, d: Float64Array, dt: number): void {
  for (let i = 0; i < 3; i++) {
    s[i] = s[i]! + dt * (s[i + 3]! + 0.5 * dt * d[i + 3]!);
    s[i + 3] = s[i + 3]! + dt * d[i + 3]!;
  }
  s[6] = s[6]! + dt * d[6]!;
}

function requireFinite(derivative: Float64Array, problem: FlightProblem): void {
  for (const value of derivative) {
    if (!Number.isFinite(value)) {
      throw new FairflightError(
        'invalid-input',
        `the coefficient model ${problem.model.id} gave a value that is not finite`,
        { field: 'scene.aerodynamics', value: problem.model.id },
      );
    }
  }
}
