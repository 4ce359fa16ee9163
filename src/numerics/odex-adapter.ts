import { FairflightError } from '../errors.js';
import { Solver } from '../vendor/odex.js';
import type { RightHandSide } from './embedded-stepper.js';

/** One accepted step of the extrapolation code with its interpolant. */
export interface OdexSegment {
  readonly from: number;
  readonly to: number;
  readonly y: readonly number[];
  /** Component `i` at a time within the segment. */
  readonly at: (i: number, t: number) => number;
}

/**
 * Integrates y' = f with odex (Gragg-Bulirsch-Stoer extrapolation; Hairer, Norsett & Wanner 1993, section II.9),
 * calling `onSegment` for each accepted step until it returns false or `end` is reached.
 * @throws `FairflightError` `not-converged` when odex gives up
 */
export function integrateWithOdex(
  f: RightHandSide,
  y0: readonly number[],
  end: number,
  tolerance: number,
  onSegment: (segment: OdexSegment) => boolean,
): void {
  const dimension = y0.length;
  const solver = new Solver(dimension);
  solver.denseOutput = true;
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.initialStepSize = 0.01;
  const state = new Float64Array(dimension);
  const derivative = new Float64Array(dimension);
  let stopped = false;
  const outcome = solver.solve(
    (t, y) => {
      state.set(y);
      f(t, state, derivative);
      return derivative;
    },
    0,
    [...y0],
    end,
    (_n, from, to, y, at) => {
      // odex has no interpolant on its first call, which only reports the start.
      if (at === undefined || to === from) return undefined;
      if (onSegment({ from, to, y, at })) return undefined;
      stopped = true;
      return false;
    },
  );
  if (!stopped && outcome.outcome !== 0) {
    throw new FairflightError(
      'not-converged',
      `odex stopped with outcome ${outcome.outcome} after ${outcome.nStep} steps`,
    );
  }
}
