import { requireWithin } from '../errors.js';
import { chiSquareQuantile, fQuantile } from './distributions.js';
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
 * What the ellipse is about. `known`: the share of a bivariate normal population whose covariance is taken as known
 * (chi-square, 2 degrees of freedom). `next`: the next point, with mean and covariance estimated from n points
 * (Hotelling). `mean`: the true mean, estimated from n points (Hotelling).
 */
export type EllipseKind = 'known' | 'next' | 'mean';

/**
 * Squared radius of the ellipse in units of the covariance. For `next` 2 (n−1)(n+1)/(n (n−2)) F(p; 2, n−2), for
 * `mean` 2 (n−1)/(n (n−2)) F(p; 2, n−2).
 * Source: Johnson R A, Wichern D W (2007) Applied Multivariate Statistical Analysis, 6th ed., sec. 5.4 and 5.5.
 * @throws FairflightError `outside-range` for `next` and `mean` with fewer than 3 points
 */
export function ellipseFactor(level: number, kind: EllipseKind, n = 0): number {
  if (kind === 'known') return chiSquareQuantile(level, 2);
  requireWithin('points', n, 3, Number.MAX_SAFE_INTEGER, '');
  const f = fQuantile(level, 2, n - 2);
  return kind === 'next' ? (2 * (n - 1) * (n + 1) * f) / (n * (n - 2)) : (2 * (n - 1) * f) / (n * (n - 2));
}

/** The ellipse of points (x, y). @throws FairflightError for fewer than 3 points */
export function covarianceEllipse(
  x: readonly number[],
  y: readonly number[],
  level: number,
  kind: EllipseKind = 'known',
): Ellipse {
  requireSample('x', x, 3);
  requireSample('y', y, x.length);
  const sxx = variance(x);
  const syy = variance(y);
  const sxy = covariance(x, y);
  const c = ellipseFactor(level, kind, x.length);
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
