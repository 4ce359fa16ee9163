import type { FlightOptions } from '../inputs/flight-options.js';
import { type Launch, readLaunch } from '../inputs/launch.js';
import { integrateWithOdex } from '../numerics/odex-adapter.js';
import { brent } from '../numerics/roots.js';
import { resolveScene, type Scene } from '../scene/scene.js';
import type { EngineResult, NodeSink } from './engine/general.js';
import { equationsOfMotion, STATES } from './equations.js';
import type { Flight } from './flight.js';
import { recordedFlight, resolveFlightOptions } from './fly.js';
import { groundPlane } from './ground-plane.js';
import { type FlightProblem, flightProblem } from './problem.js';

/** Tolerance handed to the extrapolation code: as tight as double precision lets it go. */
const ODEX_TOLERANCE = 1e-13;
/** Longest stretch over which the ball is taken to turn once at most [s]. */
const LONGEST_SEGMENT = 0.05;

/**
 * The same flight as `fly`, from the same equations of motion, by an independent integrator: odex (Gragg,
 * Bulirsch and Stoer's extrapolation) at 1e-13. Some 50 times slower; the judge of the engine, for tests and for
 * whoever wants a second opinion. Needs the entry `fairflight/reference`.
 * @param options - only `timeLimit` is used
 * @throws `FairflightError` as `fly`
 */
export function flyReference(launch: Launch, scene: Scene = {}, options: FlightOptions = {}): Flight {
  const { timeLimit } = resolveFlightOptions(options);
  const read = readLaunch(launch);
  const problem = flightProblem(read, resolveScene(scene));
  return recordedFlight(read, problem, (sink) => integrateReference(problem, timeLimit, sink));
}

/** Integrates one problem with odex. @internal */
export function integrateReference(
  problem: FlightProblem,
  timeLimit: number,
  sink: NodeSink = () => {},
): Pick<EngineResult, 'ending' | 'time' | 'apex' | 'apexAt' | 'state'> {
  const rhs = equationsOfMotion(problem);
  const plane = groundPlane(problem);
  const derivative = new Float64Array(STATES);
  const y0 = [0, 0, 0, problem.vx, problem.vy, problem.vz, problem.spin];
  const result = {
    ending: 'time-limit' as EngineResult['ending'],
    time: 0,
    apex: 0,
    apexAt: 0,
    state: Float64Array.from(y0),
  };

  const report = (t: number, y: ArrayLike<number>): void => {
    const state = Float64Array.from(y);
    rhs(t, state, derivative);
    sink(t, state, derivative);
    result.time = t;
    result.state = state;
    noteApex(state);
  };
  const noteApex = (y: ArrayLike<number>): void => {
    const [x, height, z] = Array.from(y) as [number, number, number];
    if (height <= result.apex) return;
    result.apex = height;
    result.apexAt = Math.hypot(x, z);
  };

  rhs(0, result.state, derivative);
  const height0 = plane.height(y0);
  const climb0 = plane.climb(y0);
  let above =
    height0 > 0 || (height0 === 0 && (climb0 > 0 || (climb0 === 0 && plane.climbRate(derivative) > 0)));
  report(0, y0);
  if (height0 === 0 && !above) {
    result.ending = 'topped';
    return result;
  }
  if (!above && climb0 <= 0) {
    result.ending = 'below-ground';
    return result;
  }

  integrateWithOdex(rhs, y0, timeLimit, ODEX_TOLERANCE, ({ from, to, at }) => {
    const pieces = Math.ceil((to - from) / LONGEST_SEGMENT);
    const stateAt = (t: number): number[] => Array.from({ length: STATES }, (_, i) => at(i, t));
    for (let piece = 0; piece < pieces; piece++) {
      const t0 = from + ((to - from) * piece) / pieces;
      const t1 = from + ((to - from) * (piece + 1)) / pieces;
      const y = stateAt(t0);
      const next = stateAt(t1);
      let landing = Number.POSITIVE_INFINITY;
      const height = (t: number): number => plane.height(stateAt(t));
      const climb = (t: number): number => plane.climb(stateAt(t));
      let summit = Number.POSITIVE_INFINITY;
      if (!above && climb(t0) > 0 && climb(t1) <= 0 && height(t1) <= 0) {
        // The ball may come above a plane that starts over it for less than this stretch.
        summit = brent(climb, t0, t1, { tolerance: 1e-14 }).x;
        if (height(summit) > 0) {
          landing = brent(height, summit, t1, { tolerance: 1e-14 }).x;
          summit = Number.POSITIVE_INFINITY;
        }
      }
      if (above && height(t1) >= 0 && climb(t0) < 0 && climb(t1) > 0) {
        // Sloping ground may be met, and left again, within this stretch.
        const low = brent(climb, t0, t1, { tolerance: 1e-14 }).x;
        if (height(low) < 0) landing = brent(height, t0, low, { tolerance: 1e-14 }).x;
      }
      if (above && height(t1) < 0) {
        // From the start itself the bracket begins where the ball is first seen above the plane.
        const samples = Array.from({ length: 200 }, (_, i) => t0 + ((t1 - t0) * i) / 200);
        const start = samples.find((t) => height(t) > 0) ?? t0;
        landing = height(start) <= 0 ? start : brent(height, start, t1, { tolerance: 1e-14 }).x;
      }
      if ((y[4] as number) > 0 && (next[4] as number) <= 0) {
        const top = brent((t) => at(4, t), t0, t1, { tolerance: 1e-14 }).x;
        if (top <= Math.min(landing, summit)) noteApex(stateAt(top));
      }
      if (landing < Number.POSITIVE_INFINITY) {
        report(landing, stateAt(landing));
        result.ending = 'landed';
        return false;
      }
      if (summit < Number.POSITIVE_INFINITY) {
        report(summit, stateAt(summit));
        result.ending = 'below-ground';
        return false;
      }
      if (!above && plane.height(next) > 0) above = true;
      report(t1, next);
    }
    return true;
  });
  return result;
}
