import type { Matrix } from '../numerics/index.js';
import type { Fit } from './locate-fit.js';
import type { LocateProblem } from './locate-model.js';
import { FACE, profiledOut } from './locate-starts.js';

/** A minimum with the uncertainty of its place on the face. @internal */
export interface Placed extends Fit {
  /** Mean squares and product of toe and high about the minimum, in units of their priors. */
  readonly offsets: Matrix;
  /** Evidence for it against the others. */
  readonly evidence: number;
}

/** Standard deviation above which a place is integrated over the face [m]: beyond it the readings bend too much. */
const WIDE = 0.005;
/** Points of the face that are summed, 3 mm apart; even numbers, so that none lies half-way between mirrored places. */
const COLUMNS = 36;
const ROWS = 26;

/**
 * The uncertainty of each minimum. Where the readings hold the strike within a few millimetres it is the curvature at the
 * minimum (Laplace's approximation). Where they don't, places that explain them bend round the face, and the curvature
 * at one point of the bend says too little: there the probability is summed over a grid of the face, the delivery
 * integrated out in linear approximation, each point counted to the nearest minimum.
 *
 * Source: Gelman et al. 2013, Bayesian Data Analysis, 3rd ed., sec. 10.1 (sums over a grid) and 4.1.
 * @param fits - the minima, best first
 * @internal
 */
export function placed(problem: LocateProblem, fits: readonly Fit[]): readonly Placed[] {
  const best = fits[0];
  if (best === undefined) return [];
  const laplace = fits.map((fit): Placed => {
    const [[a = 0, b = 0] = [], [, d = 0] = []] = fit.covariance;
    return {
      ...fit,
      offsets: [
        [a, b],
        [b, d],
      ],
      evidence: Math.exp((best.chiSquare - fit.chiSquare) / 2) * fit.spread,
    };
  });
  const sd = (i: 0 | 1): number => problem.priors[i]?.standardDeviation ?? 0;
  const wide = laplace.some(({ offsets: [[a = 0] = [], [, d = 0] = []] }) =>
    [Math.sqrt(a) * sd(0), Math.sqrt(d) * sd(1)].some((size) => size > WIDE),
  );
  if (!wide) return laplace;
  const points = chiSquares(problem, best);
  if (points === undefined) return laplace;
  const sums = laplace.map(() => ({ weight: 0, aa: 0, ab: 0, bb: 0 }));
  for (const { q, chiSquare } of points) {
    const weight = Math.exp((best.chiSquare - chiSquare) / 2);
    const from = laplace.map(({ q: [toe = 0, high = 0] }) => [q[0] - toe, q[1] - high] as const);
    const far = from.map(([x, y], k) => mahalanobis(laplace[k]?.offsets ?? [], x, y));
    const nearest = far.indexOf(Math.min(...far));
    const sum = sums[nearest];
    const [x, y] = from[nearest] ?? [0, 0];
    if (sum === undefined) continue;
    sum.weight += weight;
    sum.aa += weight * x * x;
    sum.ab += weight * x * y;
    sum.bb += weight * y * y;
  }
  return laplace.map((fit, k) => {
    const { weight = 0, aa = 0, ab = 0, bb = 0 } = sums[k] ?? {};
    if (!(weight > 0) || !(aa * bb > ab * ab)) return fit;
    return {
      ...fit,
      offsets: [
        [aa / weight, ab / weight],
        [ab / weight, bb / weight],
      ],
      evidence: weight,
    };
  });
}

function mahalanobis([[a = 1, b = 0] = [], [, d = 1] = []]: Matrix, x: number, y: number): number {
  return (d * x * x - 2 * b * x * y + a * y * y) / Math.max(1e-300, a * d - b * b);
}

/** Chi-square over the face with the delivery profiled out, which is linear about the best minimum. */
function chiSquares(
  problem: LocateProblem,
  best: Fit,
): readonly { readonly q: readonly [number, number]; readonly chiSquare: number }[] | undefined {
  const { delivery, inverse } = profiledOut(problem, best.jacobian);
  const rest = best.q.slice(2);
  if (inverse === undefined) return undefined;
  const atBest = delivery.map((row) => row.reduce((sum, x, k) => sum + x * (rest[k] ?? 0), 0));
  return Array.from({ length: COLUMNS * ROWS }, (_, index) => {
    const toe = FACE.toe * ((2 * (index % COLUMNS)) / (COLUMNS - 1) - 1);
    const high = FACE.high * ((2 * Math.floor(index / COLUMNS)) / (ROWS - 1) - 1);
    const q = [problem.standardised(0, toe), problem.standardised(1, high)] as const;
    const r = problem.residualsAt([...q, ...rest]);
    const centred = atBest.map((value, k) => (r[k] ?? 0) - value);
    const squares = centred.reduce(
      (sum, x, i) => sum + x * centred.reduce((inner, y, j) => inner + (inverse[i]?.[j] ?? 0) * y, 0),
      q[0] ** 2 + q[1] ** 2,
    );
    return { q, chiSquare: Number.isFinite(squares) ? squares : Number.POSITIVE_INFINITY };
  });
}
