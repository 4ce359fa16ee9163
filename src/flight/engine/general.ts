import { windFoot } from '../../air/wind-ratio.js';
import type { FairflightError } from '../../errors.js';
import { STANDARD_GRAVITY } from '../../gravity.js';
import { refusal } from '../../inputs/refuse.js';
import { createStepper } from '../../numerics/embedded-stepper.js';
import { dormandPrince853 } from '../../numerics/tableaux/dormand-prince-853.js';
import { equationsOfMotion, STATES } from '../equations.js';
import { type GroundPlane, groundPlane } from '../ground-plane.js';
import type { FlightProblem } from '../problem.js';
import { createEvents } from './general-events.js';
import { FIRST_ERROR, nextFactor, refusedFactor, remember } from './step-control.js';
import { MOST_ATTEMPTS, passesTop, SHORTEST_STEP, seenRising, withinTime } from './step-decisions.js';
import {
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

/** Share of the first step that is taken: a law may have a corner near the fastest speeds, and no step came before. */
const FIRST_SHARE = 0.5;
/** Share of a step that is left when its quintic was too coarse for the landing. */
const TOO_COARSE_SHARE = 0.5;

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
  const { event, eventF, top, findTop, stepOntoGround, stepOntoSummit } = createEvents(
    stepper,
    y,
    f,
    yNew,
    fNew,
  );
  const state = new Float64Array(STATES);
  const result: EngineResult = { ending: 'landed', time: 0, apex: 0, apexAt: 0, steps: 0, state };

  function fly(problem: FlightProblem, tolerance: number, timeLimit: number, sink?: NodeSink): EngineResult {
    const rhs = equationsOfMotion(problem);
    const plane = groundPlane(problem);
    const velocityTolerance = velocityToleranceFor(tolerance);
    const { profile } = problem;
    const foot = profile === undefined ? 0 : windFoot(profile);
    const start = startState(problem, y);
    rhs(0, y, f);
    requireFinite(f, problem);
    result.apex = 0;
    result.apexAt = 0;
    result.steps = 0;

    let height = plane.height(y);
    let above = startsAbove(plane, height, y, f);
    if (!above && height === 0) return finish(result, 'topped', 0, y, f, sink);
    if (!above && plane.climb(y) <= 0) return finish(result, 'below-ground', 0, y, f, sink);
    let t = 0;
    let h = FIRST_SHARE * firstStep(velocityTolerance, start);
    let lastError = 0;
    let remembered = FIRST_ERROR;
    for (; result.steps < MOST_ATTEMPTS; result.steps++) {
      h = withinTime(h, t, timeLimit);
      if (profile !== undefined) h = Math.min(h, longestStep(height - foot, plane.climb(y)));
      h = seenRising(h, y[4]!, f[4]!);
      stepper.step(rhs, t, y, f, h);
      lastError = stepper.error(h, 3, 3, velocityTolerance);
      if (!(lastError <= 1)) {
        h *= refusedFactor(lastError);
        if (h < SHORTEST_STEP) break;
        continue;
      }
      yNew.set(stepper.next);
      rhs(t + h, yNew, fNew);

      const newHeight = plane.height(yNew);
      const landing = plane.landing(above, h, height, newHeight, y, f, yNew, fNew);
      const summit = above || landing >= 0 ? -1 : plane.summit(h, height, newHeight, y, f, yNew, fNew);
      const end = landing >= 0 ? landing : summit;
      top.height = 0;
      if (passesTop(y[4]!, yNew[4]!) || (y[4]! > 0 && end >= 0)) {
        findTop(rhs, t, h, end);
      }
      const toGround = landing >= 0 ? stepOntoGround(rhs, plane, t, h, landing * h, tolerance) : 0;
      if (Number.isNaN(toGround)) {
        // The ball that the quintic brings to the ground is still in the air.
        h *= TOO_COARSE_SHARE;
        if (h < SHORTEST_STEP) break;
        continue;
      }
      sink?.(t, y, f);
      noteTop(result, top.height, top.at);
      // A drop of less than a rounding error must not end before it began.
      if (landing >= 0) return finish(result, 'landed', Math.max(0, t + toGround), event, eventF, sink);
      if (summit >= 0) {
        const dt = stepOntoSummit(rhs, plane, t, h, summit * h);
        return finish(result, 'below-ground', t + dt, event, eventF, sink);
      }

      t += h;
      y.set(yNew);
      f.set(fNew);
      height = newHeight;
      if (t >= timeLimit) return finish(result, 'time-limit', timeLimit, y, f, sink);
      if (!above && height > 0) above = true;
      h *= nextFactor(lastError, remembered);
      remembered = remember(lastError);
    }
    // The last accepted step came before whatever is not finite; the one proposed runs into it.
    if (!Number.isFinite(lastError)) rhs(t, stepper.next, fNew);
    requireFinite(fNew, problem);
    throw notConverged(problem, tolerance);
  }

  return { fly };
}

/** Notes a height as the apex where it is the greatest so far. */
function noteTop(result: EngineResult, height: number, at: number): void {
  if (height <= result.apex) return;
  result.apex = height;
  result.apexAt = at;
}

/** Ends a flight in a state, whose derivative the sink is owed. */
function finish(
  result: EngineResult,
  ending: Ending,
  time: number,
  last: Float64Array,
  derivative: Float64Array,
  sink: NodeSink | undefined,
): EngineResult {
  result.ending = ending;
  result.time = time;
  result.state.set(last);
  noteTop(result, last[1]!, Math.hypot(last[0]!, last[2]!));
  sink?.(time, last, derivative);
  return result;
}

/** Velocity error [m/s] a step may make. */
function velocityToleranceFor(tolerance: number): number {
  const asked = tolerance * VELOCITY_TOLERANCE_PER_METRE * GENERAL_ENGINE_SHARE;
  return Math.max(asked, FINEST_VELOCITY_TOLERANCE);
}

/** Whether the ball starts above the ground plane, or on it and leaving. */
function startsAbove(plane: GroundPlane, height: number, y: Float64Array, f: Float64Array): boolean {
  if (height !== 0) return height > 0;
  const climb = plane.climb(y);
  return climb > 0 || (climb === 0 && plane.climbRate(f) > 0);
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

/** Share of the height above the foot of a wind profile that one step may pass, and the least such height [m]. */
const SHARE_OF_HEIGHT = 0.5;
const LEAST_HEIGHT = 0.02;

/**
 * Longest step where the wind changes with height: one over which the height above the foot of the profile changes by
 * half, or by 2 cm there. The profiles rise from nothing with a kink that the error estimate of a longer step does not see.
 */
function longestStep(height: number, climb: number): number {
  const room = Math.max(SHARE_OF_HEIGHT * Math.abs(height), LEAST_HEIGHT);
  return room / (Math.abs(climb) + Math.sqrt(2 * STANDARD_GRAVITY * LEAST_HEIGHT));
}

function notConverged(problem: FlightProblem, tolerance: number): FairflightError {
  return refusal(
    'options.tolerance',
    `a tolerance of ${tolerance} m takes too many steps; loosen options.tolerance, or smooth the coefficient model ${problem.model.id} if it is your own`,
    { value: tolerance, unit: 'm' },
    'not-converged',
  );
}

function requireFinite(derivative: Float64Array, problem: FlightProblem): void {
  for (const value of derivative) {
    if (!Number.isFinite(value)) {
      throw refusal(
        'scene.aerodynamics',
        `the coefficient model ${problem.model.id} gave a value that is not finite`,
        { value: problem.model.id },
      );
    }
  }
}
