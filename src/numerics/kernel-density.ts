import { inverseOfSymmetric } from './linear-algebra.js';
import { covariance, requireSample, variance } from './moments.js';
import { quantile } from './order-statistics.js';
import { requireWithin } from './require.js';

/** A smooth density in the plane, estimated from points. */
export interface KernelDensity {
  /** Density at a point, per unit area. */
  readonly at: (x: number, y: number) => number;
  /** Density on the border of the smallest region that holds a share `level` of the points. */
  readonly threshold: (level: number) => number;
  /** Standard deviations of the kernel along x and y. */
  readonly bandwidth: readonly [x: number, y: number];
}

/** Covariance of a Gaussian kernel. */
export type Smoothing = readonly [xx: number, xy: number, yy: number];

/** Beyond this squared distance, in units of the kernel, a point adds less than e⁻⁴⁰ of what it adds where it lies. */
const NEGLIGIBLE = 80;

/**
 * Covariance of the points times Scott's factor n^(−1/3).
 * Source: Scott D W (1992) Multivariate Density Estimation, eq. 6.42.
 */
export function scottSmoothing(x: readonly number[], y: readonly number[]): Smoothing {
  requireSample('x', x, 3);
  requireSample('y', y, x.length);
  const factor = x.length ** (-1 / 3);
  return [factor * variance(x), factor * covariance(x, y), factor * variance(y)];
}

/**
 * Gaussian kernel density. The region where the density is above {@link KernelDensity.threshold} is the
 * highest-density region of its level: it may be bent, or in several pieces, as the points are.
 *
 * Source: Hyndman R J (1996) Computing and graphing highest density regions, Am. Stat. 50, 120–126.
 * @param smoothing - covariance of the kernel; default {@link scottSmoothing}
 * @returns undefined when the smoothing has no width in some direction, as where all points lie on a line
 * @throws FairflightError `invalid-input` for fewer than 3 points
 */
export function kernelDensity(
  x: readonly number[],
  y: readonly number[],
  smoothing: Smoothing = scottSmoothing(x, y),
): KernelDensity | undefined {
  requireSample('x', x, 3);
  requireSample('y', y, x.length);
  const n = x.length;
  const [sxx, sxy, syy] = smoothing;
  const inverse = inverseOfSymmetric([
    [sxx, sxy],
    [sxy, syy],
  ]);
  if (inverse === undefined) return undefined;
  const [[a = 0, b = 0] = [], [, c = 0] = []] = inverse;
  const front = 1 / (2 * Math.PI * n * Math.sqrt(sxx * syy - sxy * sxy));
  const at = (px: number, py: number): number => {
    let sum = 0;
    for (let i = 0; i < n; i++) {
      const dx = px - x[i]!;
      const dy = py - y[i]!;
      const square = a * dx * dx + 2 * b * dx * dy + c * dy * dy;
      if (square < NEGLIGIBLE) sum += Math.exp(-0.5 * square);
    }
    return front * sum;
  };
  let densities: number[] | undefined;
  return {
    at,
    threshold: (level) => {
      requireWithin('level', level, 0, 1, '');
      densities ??= x.map((px, i) => at(px, y[i]!));
      return quantile(densities, 1 - level);
    },
    bandwidth: [Math.sqrt(sxx), Math.sqrt(syy)],
  };
}
