import { chiSquareQuantile } from './distributions.js';
import { covariance, mean, requireSample, variance } from './moments.js';

/** An ellipse in the plane of x and y. */
export interface Ellipse {
  /** Centre. */
  readonly centre: readonly [x: number, y: number];
  /** Longer semi-axis. */
  readonly semiMajor: number;
  /** Shorter semi-axis. */
  readonly semiMinor: number;
  /** Direction of the longer axis from the x axis toward the y axis [rad], −π/2 < angle ≤ π/2. */
  readonly angle: number;
  /** Area. */
  readonly area: number;
  /** Share of cases it is meant to hold. */
  readonly level: number;
}

/**
 * The ellipse that holds a share `level` of a bivariate normal population whose covariance is that of the points.
 * @throws FairflightError `invalid-input` for fewer than 3 points
 */
export function covarianceEllipse(x: readonly number[], y: readonly number[], level: number): Ellipse {
  requireSample('x', x, 3);
  requireSample('y', y, x.length);
  const sxx = variance(x);
  const syy = variance(y);
  const sxy = covariance(x, y);
  const c = chiSquareQuantile(level, 2);
  const half = 0.5 * (sxx + syy);
  const apart = Math.hypot(0.5 * (sxx - syy), sxy);
  const semiMajor = Math.sqrt(c * (half + apart));
  // The product of the eigenvalues is the determinant; this way the small one keeps its digits.
  const small = half + apart > 0 ? Math.max(0, sxx * syy - sxy * sxy) / (half + apart) : 0;
  const semiMinor = Math.sqrt(c * small);
  return {
    centre: [mean(x), mean(y)],
    semiMajor,
    semiMinor,
    angle: 0.5 * Math.atan2(2 * sxy, sxx - syy),
    area: Math.PI * semiMajor * semiMinor,
    level,
  };
}
