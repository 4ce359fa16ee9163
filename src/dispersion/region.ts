import {
  covarianceEllipse,
  type Ellipse,
  kernelDensity,
  quantile,
  refinedGrid,
  scottSmoothing,
} from '../numerics/index.js';
import { type Angle, type Length, si } from '../units/index.js';
import { pick, placesOf, standardErrorOf, withoutEach } from './monte-carlo.js';
import type { GroundPoint } from './polygon.js';

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
  /** Monte Carlo standard errors of the figures above, in their units. */
  readonly standardErrors: {
    readonly holds: number;
    readonly centre: GroundPoint;
    readonly semiMajor: Length;
    readonly semiMinor: Length;
    /** Means little where the ellipse is nearly a circle. */
    readonly direction: Angle;
    readonly area: number;
  };
}

/** The smallest region that holds a share of the shots, whatever its shape. */
export interface GroundRegion {
  /** Share of shots it is made to hold. */
  readonly level: number;
  /** Density on its border [1/m²]: the region is where {@link DensityGrid.density} is above this. */
  readonly threshold: number;
  /** Area [m²]. */
  readonly area: number;
  /** Monte Carlo standard errors of threshold and area, in their units. */
  readonly standardErrors: { readonly threshold: number; readonly area: number };
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
/** How often the grid's steps are halved for areas: a few wild shots make its cells as wide as the region is. */
const HALVED = 2;
/** Points the density is made from: more would cost time and change nothing to see. */
const MOST = 1024;

type Parts = readonly (readonly number[])[];

/** Ellipses of points, x along the target line and z to the right. @internal */
export function groundEllipses(
  parts: Parts,
  x: readonly number[],
  z: readonly number[],
  levels: readonly number[],
): GroundEllipse[] {
  return levels.map((level) => {
    const e = covarianceEllipse(x, z, level);
    const each = withoutEach(parts)
      .filter((rest) => rest.length >= 3)
      .map((rest) => {
        const [rx, rz] = [pick(x, rest), pick(z, rest)];
        const ellipse = covarianceEllipse(rx, rz, level);
        return { ...ellipse, holds: shareInside(ellipse, rx, rz) };
      });
    const error = (of: (ellipse: (typeof each)[number]) => number): number => standardErrorOf(each.map(of));
    return {
      level,
      holds: shareInside(e, x, z),
      centre: { x: e.centre[0], z: e.centre[1] },
      semiMajor: si(e.semiMajor),
      semiMinor: si(e.semiMinor),
      direction: si(e.angle),
      area: e.area,
      standardErrors: {
        holds: error(({ holds }) => holds),
        centre: { x: error(({ centre }) => centre[0]), z: error(({ centre }) => centre[1]) },
        semiMajor: si(error(({ semiMajor }) => semiMajor)),
        semiMinor: si(error(({ semiMinor }) => semiMinor)),
        // An axis turned by half a turn is the same axis.
        direction: si(error(({ angle }) => angle - Math.PI * Math.round((angle - e.angle) / Math.PI))),
        area: error(({ area }) => area),
      },
    };
  });
}

function shareInside(
  { centre, angle, semiMajor, semiMinor }: Ellipse,
  x: readonly number[],
  z: readonly number[],
): number {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const inside = x.filter((xi, i) => {
    const [dx, dz] = [xi - centre[0], (z[i] ?? 0) - centre[1]];
    return Math.hypot((dx * c + dz * s) / semiMajor, (dz * c - dx * s) / semiMinor) <= 1;
  });
  return inside.length / x.length;
}

/**
 * Highest-density regions of points by a Gaussian kernel; unlike an ellipse they follow a bent or lopsided cloud and
 * are not stretched by a few wild shots. Undefined when the points lie on a line.
 * @internal
 */
export function landingRegion(
  parts: Parts,
  x: readonly number[],
  z: readonly number[],
  levels: readonly number[],
): LandingRegion | undefined {
  const used = parts.map((part) => part.slice(0, MOST / parts.length)).filter((part) => part.length >= 3);
  const all = used.flat();
  const [px, pz] = [pick(x, all), pick(z, all)];
  const smoothing = scottSmoothing(px, pz);
  // Every part is smoothed alike, so that the density of all points is the mean of theirs.
  const kernels = used.flatMap((part) => kernelDensity(pick(x, part), pick(z, part), smoothing) ?? []);
  if (kernels.length === 0) return undefined;
  const weights = used.map((part) => part.length / all.length);
  const densities = (x: readonly number[], z: readonly number[]): Densities => {
    const each = kernels.map((kernel) => x.map((xi, i) => kernel.at(xi, z[i] ?? 0)));
    const mean = x.map((_, i) => each.reduce((sum, own, k) => sum + (weights[k] ?? 0) * (own[i] ?? 0), 0));
    const without = each.map((own, k) => {
      const weight = weights[k] ?? 0;
      return mean.map((all, i) => (all - weight * (own[i] ?? 0)) / (1 - weight));
    });
    return { mean, without };
  };
  const [gx, gz] = [axis(px, Math.sqrt(smoothing[0])), axis(pz, Math.sqrt(smoothing[2]))];
  const nodes = Array.from({ length: GRID * GRID }, (_, k) => k);
  const grid = densities(
    nodes.map((k) => gx.first + (k % GRID) * gx.step),
    nodes.map((k) => gz.first + Math.floor(k / GRID) * gz.step),
  );
  const points = densities(px, pz);
  const [fine, ...fineWithout] = [grid.mean, ...grid.without].map((density) =>
    refinedGrid(density, GRID, HALVED),
  );
  const cell = (gx.step * gz.step) / 4 ** HALVED;
  const areaAbove = (density: readonly number[] = [], threshold: number): number =>
    density.filter((value) => value >= threshold).length * cell;
  const rests = withoutEach(placesOf(used));
  return {
    regions: levels.map((level) => {
      const threshold = quantile(points.mean, 1 - level);
      const thresholds = points.without.map((own, k) => quantile(pick(own, rests[k] ?? []), 1 - level));
      return {
        level,
        threshold,
        area: areaAbove(fine, threshold),
        standardErrors: {
          threshold: standardErrorOf(thresholds),
          area: standardErrorOf(thresholds.map((own, k) => areaAbove(fineWithout[k], own))),
        },
      };
    }),
    grid: { x: gx, z: gz, density: grid.mean },
  };
}

/** Densities at a row of points: of all shots, and of all but each part. */
interface Densities {
  readonly mean: readonly number[];
  readonly without: readonly (readonly number[])[];
}

function axis(values: readonly number[], width: number): DensityGrid['x'] {
  const first = Math.min(...values) - 2 * width;
  return { first, step: (Math.max(...values) + 2 * width - first) / (GRID - 1), count: GRID };
}
