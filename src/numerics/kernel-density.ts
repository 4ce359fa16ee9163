import { inverseOfSymmetric } from './linear-algebra.js';
import { covariance, requireSample, variance } from './moments.js';

/** Evenly spaced places on a line. */
export interface Axis {
  readonly first: number;
  readonly step: number;
  readonly count: number;
}

/** Smooth densities in the plane, one for each group of points, per unit area. */
export interface KernelDensities {
  /** At the nodes of a grid, row after row of constant y. */
  readonly onGrid: (x: Axis, y: Axis) => Float64Array[];
  /** At the points themselves. */
  readonly atPoints: () => Float64Array[];
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
 * Gaussian kernel densities of groups of points, all smoothed alike. Where a density is above the quantile 1 − p of its
 * values at the points lies the highest-density region that holds a share p of them: it may be bent, or in several pieces,
 * as the points are.
 *
 * Source: Hyndman R J (1996) Computing and graphing highest density regions, Am. Stat. 50, 120–126.
 * @param sizes - how many of the points, in their order, belong to each group
 * @returns undefined when the smoothing has no width in some direction, as where all points lie on a line
 * @throws FairflightError `invalid-input` for fewer than 3 points
 */
export function kernelDensities(
  x: readonly number[],
  y: readonly number[],
  sizes: readonly number[],
  [sxx, sxy, syy]: Smoothing,
): KernelDensities | undefined {
  requireSample('x', x, 3);
  requireSample('y', y, x.length);
  const inverse = inverseOfSymmetric([
    [sxx, sxy],
    [sxy, syy],
  ]);
  if (inverse === undefined) return undefined;
  const [[a = 0, b = 0] = [], [, c = 0] = []] = inverse;
  const front = 1 / (2 * Math.PI * Math.sqrt(sxx * syy - sxy * sxy));
  const groups = sizes.flatMap((size, group) => new Array<number>(size).fill(group));
  const weights = sizes.map((size) => front / size);
  const none = (count: number): Float64Array[] => sizes.map(() => new Float64Array(count));

  /** One point, spread over the nodes near it: along a row each kernel is the one before times a factor that shrinks evenly. */
  const spread = (px: number, py: number, out: Float64Array, gx: Axis, gy: Axis): void => {
    const shrink = Math.exp(-a * gx.step * gx.step);
    const near = Math.sqrt(NEGLIGIBLE * syy);
    const top = Math.min(gy.count - 1, Math.floor((py + near - gy.first) / gy.step));
    for (let row = Math.max(0, Math.ceil((py - near - gy.first) / gy.step)); row <= top; row++) {
      const dy = gy.first + row * gy.step - py;
      // Outward both ways from the node where the row is densest, so that nothing is lost to underflow.
      const densest = Math.round((px - (b / a) * dy - gx.first) / gx.step);
      const middle = Math.min(gx.count - 1, Math.max(0, densest));
      const dx = gx.first + middle * gx.step - px;
      const square = a * dx * dx + 2 * b * dx * dy + c * dy * dy;
      const least = Math.exp(-0.5 * NEGLIGIBLE);
      const value = Math.exp(-0.5 * square);
      for (const way of [1, -1]) {
        let factor = Math.exp(-0.5 * gx.step * (a * gx.step + 2 * way * (a * dx + b * dy)));
        let node = middle;
        let here = value;
        while (here > least && node >= 0 && node < gx.count) {
          if (way > 0 || node !== middle) out[row * gx.count + node]! += here;
          here *= factor;
          factor *= shrink;
          node += way;
        }
      }
    }
  };

  return {
    onGrid: (gx, gy) => {
      const densities = none(gx.count * gy.count);
      x.forEach((px, i) => {
        spread(px, y[i]!, densities[groups[i]!]!, gx, gy);
      });
      densities.forEach((density, group) => {
        for (let k = 0; k < density.length; k++) density[k]! *= weights[group]!;
      });
      return densities;
    },
    atPoints: () => {
      const densities = none(x.length);
      for (let i = 0; i < x.length; i++) {
        const [xi, yi, mine] = [x[i]!, y[i]!, groups[i]!];
        densities[mine]![i]! += 1;
        for (let j = i + 1; j < x.length; j++) {
          const dx = xi - x[j]!;
          const dy = yi - y[j]!;
          const square = a * dx * dx + 2 * b * dx * dy + c * dy * dy;
          if (square >= NEGLIGIBLE) continue;
          // What a point adds at another, that one adds at it.
          const kernel = Math.exp(-0.5 * square);
          densities[groups[j]!]![i]! += kernel;
          densities[mine]![j]! += kernel;
        }
      }
      densities.forEach((density, group) => {
        for (let k = 0; k < density.length; k++) density[k]! *= weights[group]!;
      });
      return densities;
    },
  };
}
