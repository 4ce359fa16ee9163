import { chiSquareQuantile } from './distributions.js';
import { requireSample } from './moments.js';

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

/** Means, variances and covariance of points in the plane. */
export interface PlaneMoments {
  readonly centre: readonly [x: number, y: number];
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** Moments of the points at these places. @throws FairflightError `invalid-input` for fewer than 3 */
export function planeMoments(
  x: readonly number[],
  y: readonly number[],
  places: readonly number[],
): PlaneMoments {
  requireSample('places', places, 3);
  const n = places.length;
  let [mx, my] = [0, 0];
  for (const i of places) {
    mx += x[i]!;
    my += y[i]!;
  }
  mx /= n;
  my /= n;
  let [xx, xy, yy] = [0, 0, 0];
  for (const i of places) {
    const [dx, dy] = [x[i]! - mx, y[i]! - my];
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  return { centre: [mx, my], xx: xx / (n - 1), xy: xy / (n - 1), yy: yy / (n - 1) };
}

/** The ellipse that holds a share `level` of a bivariate normal population with these moments. */
export function covarianceEllipse({ centre, xx, xy, yy }: PlaneMoments, level: number): Ellipse {
  const c = chiSquareQuantile(level, 2);
  const half = 0.5 * (xx + yy);
  const apart = Math.hypot(0.5 * (xx - yy), xy);
  const semiMajor = Math.sqrt(c * (half + apart));
  // The product of the eigenvalues is the determinant; this way the small one keeps its digits.
  const small = half + apart > 0 ? Math.max(0, xx * yy - xy * xy) / (half + apart) : 0;
  const semiMinor = Math.sqrt(c * small);
  return {
    centre,
    semiMajor,
    semiMinor,
    angle: 0.5 * Math.atan2(2 * xy, xx - yy),
    area: Math.PI * semiMajor * semiMinor,
    level,
  };
}
