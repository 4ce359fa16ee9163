import { covarianceEllipse, kernelDensity } from '../numerics/index.js';
import { type Angle, type Length, si } from '../units/index.js';
import type { GroundPoint } from './hole.js';

/** An ellipse on the ground. */
export interface GroundEllipse {
  /** Share of shots it would hold if they were normal. */
  readonly level: number;
  /** Share of the shots it does hold. */
  readonly holds: number;
  /** Centre [m]. */
  readonly centre: GroundPoint;
  /** Longer semi-axis [m]. */
  readonly semiMajor: Length;
  /** Shorter semi-axis [m]. */
  readonly semiMinor: Length;
  /** Direction of the longer axis from the target line [rad], + to the right. */
  readonly direction: Angle;
  /** Area [m²]. */
  readonly area: number;
}

/** The smallest region that holds a share of the shots, whatever its shape. */
export interface GroundRegion {
  /** Share of shots it is made to hold. */
  readonly level: number;
  /** Density on its border [1/m²]: the region is where {@link DensityGrid.density} is above this. */
  readonly threshold: number;
  /** Area [m²]. */
  readonly area: number;
}

/** Density of shots on a grid of points, for drawing. */
export interface DensityGrid {
  /** Along the target line of the first column [m], step and number of columns. */
  readonly x: { readonly first: number; readonly step: number; readonly count: number };
  /** To the right of the first row [m], step and number of rows. */
  readonly z: { readonly first: number; readonly step: number; readonly count: number };
  /** Density [1/m²], row after row of constant z. */
  readonly density: readonly number[];
}

/** Highest-density regions of the shots; see `landingRegion`. */
export interface LandingRegion {
  /** One region a level. */
  readonly regions: readonly GroundRegion[];
  /** The density they are cut from. */
  readonly grid: DensityGrid;
}

const GRID = 48;
/** Points the density is made from: more would cost time and change nothing to see. */
const MOST = 1024;

/** Ellipses of points, x along the target line and z to the right. @internal */
export function groundEllipses(
  x: readonly number[],
  z: readonly number[],
  levels: readonly number[],
): GroundEllipse[] {
  return levels.map((level) => {
    const e = covarianceEllipse(x, z, level);
    const [c, s] = [Math.cos(e.angle), Math.sin(e.angle)];
    const inside = x.filter((xi, i) => {
      const dx = xi - e.centre[0];
      const dz = (z[i] ?? 0) - e.centre[1];
      const u = (dx * c + dz * s) / e.semiMajor;
      const v = (dz * c - dx * s) / e.semiMinor;
      return u * u + v * v <= 1;
    }).length;
    return {
      level,
      holds: inside / x.length,
      centre: { x: e.centre[0], z: e.centre[1] },
      semiMajor: si(e.semiMajor),
      semiMinor: si(e.semiMinor),
      direction: si(e.angle),
      area: e.area,
    };
  });
}

/**
 * Highest-density regions of points by a Gaussian kernel; unlike an ellipse they follow a bent or lopsided cloud and
 * are not stretched by a few wild shots. Undefined when the points lie on a line.
 * @internal
 */
export function landingRegion(
  x: readonly number[],
  z: readonly number[],
  levels: readonly number[],
): LandingRegion | undefined {
  const stride = Math.ceil(x.length / MOST);
  const pick = (values: readonly number[]): number[] => values.filter((_, i) => i % stride === 0);
  const [px, pz] = [pick(x), pick(z)];
  const kernel = kernelDensity(px, pz);
  if (kernel === undefined) return undefined;
  const [bx, bz] = kernel.bandwidth;
  const axis = (values: readonly number[], width: number): { first: number; step: number; count: number } => {
    const first = Math.min(...values) - 2 * width;
    return { first, step: (Math.max(...values) + 2 * width - first) / (GRID - 1), count: GRID };
  };
  const [gx, gz] = [axis(px, bx), axis(pz, bz)];
  const density = Array.from({ length: GRID * GRID }, (_, k) =>
    kernel.at(gx.first + (k % GRID) * gx.step, gz.first + Math.floor(k / GRID) * gz.step),
  );
  return {
    regions: levels.map((level) => {
      const threshold = kernel.threshold(level);
      return {
        level,
        threshold,
        area: density.filter((value) => value >= threshold).length * gx.step * gz.step,
      };
    }),
    grid: { x: gx, z: gz, density },
  };
}
