import { FairflightError } from '../errors.js';
import { leastSquares, type Matrix } from './linear-algebra.js';
import { mean, requireSample } from './moments.js';

/** Result of {@link linearRegression}. */
export interface LinearRegression {
  /** Intercept first, then one coefficient a column. */
  readonly coefficients: readonly number[];
  /** Standard errors of the coefficients. */
  readonly standardErrors: readonly number[];
  /** Residual standard deviation. */
  readonly residualSd: number;
  /** Degrees of freedom of the residuals. */
  readonly dof: number;
  /** Share of the variance explained. */
  readonly rSquared: number;
  /** Covariance of the coefficients. */
  readonly covariance: Matrix;
}

/**
 * Ordinary least squares with an intercept. Columns are centred first and solved by Householder reflections, so that
 * ill-conditioned tables keep their digits.
 * @param rows - one row an observation, one column a predictor
 * @throws FairflightError `invalid-input` for too few rows or linearly dependent columns
 */
export function linearRegression(rows: Matrix, y: readonly number[]): LinearRegression {
  const p = rows[0]?.length ?? 0;
  const dof = rows.length - p - 1;
  requireSample('y', y, p + 2);
  const means = Array.from({ length: p }, (_, j) => mean(rows.map((row) => row[j]!)));
  const yMean = mean(y);
  const centred = rows.map((row) => row.map((value, j) => value - means[j]!));
  const target = y.map((value) => value - yMean);
  const fit = leastSquares(centred, target);
  if (fit === undefined) {
    throw new FairflightError(
      'invalid-input',
      'the predictors are linearly dependent, so no coefficient is determined',
      {
        field: 'rows',
      },
    );
  }
  const variance = fit.sumOfSquares / dof;
  const slopes = fit.x;
  const intercept = yMean - slopes.reduce((sum, b, j) => sum + b * means[j]!, 0);
  const slopeCovariance = fit.inverseNormal.map((row) => row.map((value) => variance * value));
  // Cov(intercept, slopes) = −C m; Var(intercept) = s²/n + mᵀ C m.
  const cross = slopeCovariance.map((row) => -row.reduce((sum, value, j) => sum + value * means[j]!, 0));
  const first = variance / rows.length - cross.reduce((sum, value, j) => sum + value * means[j]!, 0);
  const covariance = [[first, ...cross], ...slopeCovariance.map((row, i) => [cross[i]!, ...row])];
  const total = target.reduce((sum, value) => sum + value * value, 0);
  return {
    coefficients: [intercept, ...slopes],
    standardErrors: covariance.map((row, i) => Math.sqrt(row[i]!)),
    residualSd: Math.sqrt(variance),
    dof,
    rSquared: total > 0 ? 1 - fit.sumOfSquares / total : 1,
    covariance,
  };
}
