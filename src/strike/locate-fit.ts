import { type LeastSquaresSolution, levenbergMarquardt, type Matrix } from '../numerics/index.js';
import { type LocateProblem, UNKNOWNS } from './locate-model.js';
import { FACE, startsOf } from './locate-starts.js';

/** A minimum of chi-square. @internal */
export interface Fit {
  readonly q: readonly number[];
  readonly chiSquare: number;
  readonly jacobian: Matrix;
  readonly covariance: Matrix;
  /** Square root of the determinant of the covariance of the offsets: the size of the mode. */
  readonly spread: number;
}

function fitFrom(problem: LocateProblem, start: readonly number[], tolerance: number): LeastSquaresSolution {
  const bound = (sign: number): number[] =>
    UNKNOWNS.map((name, i) => {
      const size = name === 'toe' ? FACE.toe : name === 'high' ? FACE.high : Number.POSITIVE_INFINITY;
      return problem.standardised(i, sign * size);
    });
  return levenbergMarquardt(problem.residualsAt, start, {
    jacobian: problem.jacobianAt,
    variance: 'known',
    lower: bound(-1),
    upper: bound(1),
    tolerance,
  });
}

/**
 * Least chi-square of a problem, from the deepest valley alone and to no more digits than a comparison needs.
 * @internal
 */
export function leastChiSquare(problem: LocateProblem): number {
  const [deepest] = startsOf(problem);
  return deepest === undefined ? Number.POSITIVE_INFINITY : fitFrom(problem, deepest, 1e-3).sumOfSquares;
}

/** All distinct minima, best first. @internal */
export function minimaOf(problem: LocateProblem): Fit[] {
  const fits: Fit[] = [];
  for (const start of startsOf(problem)) {
    const fit = fitFrom(problem, start, 1e-7);
    if (fit.covariance === undefined) continue;
    if (fits.some((other) => distance(problem, other.q, fit.x) < 0.001)) continue;
    const [[a = 0, b = 0] = [], [c = 0, d = 0] = []] = fit.covariance;
    fits.push({
      q: fit.x,
      chiSquare: fit.sumOfSquares,
      jacobian: problem.jacobianAt(fit.x),
      covariance: fit.covariance,
      spread: Math.sqrt(Math.max(0, a * d - b * c)),
    });
  }
  return fits.sort((a, b) => a.chiSquare - b.chiSquare);
}

function distance(problem: LocateProblem, a: readonly number[], b: readonly number[]): number {
  const [toeA = 0, highA = 0] = problem.valuesAt(a);
  const [toeB = 0, highB = 0] = problem.valuesAt(b);
  return Math.hypot(toeA - toeB, highA - highB);
}
