import { FairflightError } from '../errors.js';
import { columnNorm, leastSquares, type Matrix } from './linear-algebra.js';

/** How {@link levenbergMarquardt} searches and when it stops. */
export interface LeastSquaresOptions {
  /** Derivatives, a row for each residual and a column for each parameter; central differences when left out. */
  readonly jacobian?: (x: readonly number[]) => Matrix;
  /** Lower bounds; `-Infinity` for none. */
  readonly lower?: readonly number[];
  /** Upper bounds; `Infinity` for none. */
  readonly upper?: readonly number[];
  /** Relative change of the parameters and of the sum of squares at which to stop; default 1e-10. */
  readonly tolerance?: number;
  /** Cap on accepted and refused steps together; default 200. */
  readonly maxIterations?: number;
  /**
   * `estimated` (default): the residuals' common variance is estimated from them, covariance = s² (JᵀJ)⁻¹ with
   * s² = SSR/(m − n). `known`: residuals are already divided by their standard deviations, covariance = (JᵀJ)⁻¹.
   */
  readonly variance?: 'estimated' | 'known';
}

/** What a least-squares fit found. */
export interface LeastSquaresSolution {
  /** Estimate. */
  readonly x: readonly number[];
  /** Sum of squared residuals there. */
  readonly sumOfSquares: number;
  /** Residuals at the estimate. */
  readonly residuals: readonly number[];
  /** Covariance of the estimate; absent when the data do not determine it. Bounds are not taken into account. */
  readonly covariance: Matrix | undefined;
  /** Which parameters ended on a bound. */
  readonly atBound: readonly boolean[];
  /** Steps tried. */
  readonly iterations: number;
  /** False when the iteration cap stopped the fit before the tolerance was met. */
  readonly converged: boolean;
}

/**
 * The parameters that make a sum of squared residuals least. To weight a residual, divide it by its standard deviation;
 * to add a prior, add the residual (x − mean)/sd.
 *
 * Source: Marquardt D W (1963) J. SIAM 11, 431–441; scaling by column norms: Moré J J (1978) Lect. Notes Math. 630,
 * 105–116, sec. 6; damping update: Nielsen H B (1999) report IMM-REP-1999-05, Technical University of Denmark,
 * eq. 2.4. Bounds: parameters pushed against a bound are held there, trial points are projected.
 * @param start - within the bounds, which have an entry for each of its own
 * @throws `FairflightError` `invalid-input` when the residuals are not finite at the start
 */
export function levenbergMarquardt(
  residualsOf: (x: readonly number[]) => readonly number[],
  start: readonly number[],
  options: LeastSquaresOptions = {},
): LeastSquaresSolution {
  const lower = options.lower ?? start.map(() => Number.NEGATIVE_INFINITY);
  const upper = options.upper ?? start.map(() => Number.POSITIVE_INFINITY);
  const scales = start.map((x) => Math.abs(x) || 1);
  const tolerance = options.tolerance ?? 1e-10;
  const maxIterations = options.maxIterations ?? 200;
  let x = [...start];
  let residuals = [...residualsOf(x)];
  let cost = sumOfSquares(residuals);
  if (!Number.isFinite(cost)) {
    throw new FairflightError('invalid-input', `residuals must be finite at the start ${start.join(', ')}`, {
      field: 'residuals',
      value: residuals,
    });
  }
  const differentiate = (at: readonly number[], value: readonly number[]): Matrix =>
    options.jacobian?.(at) ?? centralDifferences(residualsOf, at, value, scales, lower, upper);

  let jacobian = differentiate(x, residuals);
  let columnNorms = start.map(() => 0);
  let damping = 1e-3;
  let growth = 2;
  let iterations = 0;
  let converged = false;
  while (!converged && iterations < maxIterations) {
    iterations++;
    columnNorms = columnNorms.map((norm, j) => Math.max(norm, columnNorm(jacobian, j)));
    const gradient = x.map((_, j) => jacobian.reduce((sum, row, i) => sum + row[j]! * residuals[i]!, 0));
    const free = x
      .map((_, j) => j)
      .filter((j) => !(x[j]! <= lower[j]! && gradient[j]! > 0) && !(x[j]! >= upper[j]! && gradient[j]! < 0))
      .filter((j) => columnNorms[j]! > 0);
    const flat = free.every(
      (j) => Math.abs(gradient[j]!) <= Number.EPSILON * columnNorms[j]! * Math.sqrt(cost) || cost === 0,
    );
    if (flat) {
      converged = true;
      break;
    }
    const step = dampedStep(jacobian, residuals, free, columnNorms, damping);
    const trial = x.map((xi, j) => Math.min(upper[j]!, Math.max(lower[j]!, xi + step[j]!)));
    const moved = trial.map((t, j) => t - x[j]!);
    const trialResiduals = [...residualsOf(trial)];
    const trialCost = sumOfSquares(trialResiduals);
    const linear = residuals.map((r, i) => r + moved.reduce((sum, d, j) => sum + jacobian[i]![j]! * d, 0));
    const predicted = cost - sumOfSquares(linear);
    const actual = cost - trialCost;
    const small = moved.every(
      (d, j) => Math.abs(d) <= tolerance * (Math.abs(x[j]!) + tolerance * scales[j]!),
    );
    if (Number.isFinite(trialCost) && actual >= 0 && predicted > 0) {
      converged = small || (actual <= tolerance * cost && predicted <= tolerance * cost);
      const ratio = actual / predicted;
      damping *= Math.max(1 / 3, 1 - (2 * ratio - 1) ** 3);
      growth = 2;
      x = trial;
      residuals = trialResiduals;
      cost = trialCost;
      jacobian = differentiate(x, residuals);
    } else {
      converged = small;
      damping *= growth;
      growth *= 2;
    }
  }
  return {
    x,
    sumOfSquares: cost,
    residuals,
    covariance: covarianceOf(jacobian, cost, options.variance ?? 'estimated'),
    atBound: x.map((xi, j) => xi <= lower[j]! || xi >= upper[j]!),
    iterations,
    converged,
  };
}

/** Solves |J h + r|² + damping |D h|² for the free parameters; the others stay. */
function dampedStep(
  jacobian: Matrix,
  residuals: readonly number[],
  free: readonly number[],
  columnNorms: readonly number[],
  damping: number,
): number[] {
  const root = Math.sqrt(Math.max(damping, 1e-14));
  const rows = jacobian.map((row) => free.map((j) => row[j]!));
  const ridge = free.map((j) => free.map((k) => (j === k ? root * columnNorms[j]! : 0)));
  const solved = leastSquares([...rows, ...ridge], [...residuals.map((r) => -r), ...free.map(() => 0)]);
  const step = columnNorms.map(() => 0);
  free.forEach((j, k) => {
    step[j] = solved?.x[k] ?? 0;
  });
  return step;
}

/** Derivatives by differences to both sides, or to one side at a bound. Steps go by |x| or, near 0, by the scale. */
function centralDifferences(
  residualsOf: (x: readonly number[]) => readonly number[],
  x: readonly number[],
  value: readonly number[],
  scales: readonly number[],
  lower: readonly number[],
  upper: readonly number[],
): Matrix {
  const columns = x.map((xj, j) => {
    const h = Math.cbrt(Number.EPSILON) * Math.max(Math.abs(xj), 1e-2 * scales[j]!);
    const above = xj + h <= upper[j]! ? xj + h : xj;
    const below = xj - h >= lower[j]! ? xj - h : xj;
    const at = (t: number): readonly number[] =>
      t === xj ? value : residualsOf(x.map((xi, i) => (i === j ? t : xi)));
    const high = at(above);
    const low = at(below);
    return value.map((_, i) => (above === below ? 0 : (high[i]! - low[i]!) / (above - below)));
  });
  return value.map((_, i) => columns.map((column) => column[i]!));
}

function covarianceOf(jacobian: Matrix, cost: number, variance: 'estimated' | 'known'): Matrix | undefined {
  const m = jacobian.length;
  const n = jacobian[0]?.length ?? 0;
  if (m < n || (variance === 'estimated' && m === n)) return undefined;
  const inverse = leastSquares(
    jacobian,
    jacobian.map(() => 0),
  )?.inverseNormal;
  const factor = variance === 'known' ? 1 : cost / (m - n);
  return inverse?.map((row) => row.map((value) => factor * value));
}

function sumOfSquares(values: readonly number[]): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}
