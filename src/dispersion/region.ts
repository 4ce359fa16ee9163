import {
  covarianceEllipse,
  type Ellipse,
  kernelDensities,
  planeMoments,
  quantileOfSorted,
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
  const all = x.map((_, i) => i);
  const moments = planeMoments(x, z, all);
  const rests = withoutEach(parts).filter((rest) => rest.length >= 3);
  const without = rests.map((rest) => ({ rest, moments: planeMoments(x, z, rest) }));
  return levels.map((level) => {
    const e = covarianceEllipse(moments, level);
    const each = without.map(({ rest, moments }) => {
      const ellipse = covarianceEllipse(moments, level);
      return { ...ellipse, holds: shareInside(ellipse, x, z, rest) };
    });
    const error = (of: (ellipse: (typeof each)[number]) => number): number => standardErrorOf(each.map(of));
    return {
      level,
      holds: shareInside(e, x, z, all),
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
  { centre: [cx, cz], angle, semiMajor, semiMinor }: Ellipse,
  x: readonly number[],
  z: readonly number[],
  places: readonly number[],
): number {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  let inside = 0;
  for (const i of places) {
    const [dx, dz] = [(x[i] as number) - cx, (z[i] as number) - cz];
    const [along, across] = [(dx * c + dz * s) / semiMajor, (dz * c - dx * s) / semiMinor];
    if (along * along + across * across <= 1) inside++;
  }
  return inside / places.length;
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
  const sizes = used.map((part) => part.length);
  const kernels = kernelDensities(px, pz, sizes, smoothing);
  if (kernels === undefined) return undefined;
  const weights = sizes.map((size) => size / all.length);
  const [gx, gz] = [axis(px, Math.sqrt(smoothing[0])), axis(pz, Math.sqrt(smoothing[2]))];
  const coarse = kernels.onGrid(gx, gz);
  const grid = joined(
    coarse.map((density) => refinedGrid(density, GRID, HALVED)),
    weights,
  );
  const points = joined(kernels.atPoints(), weights);
  const cell = (gx.step * gz.step) / 4 ** HALVED;
  const areaAbove = (density: Float64Array, threshold: number): number => {
    let cells = 0;
    for (const value of density) if (value >= threshold) cells++;
    return cells * cell;
  };
  const sortedAtPoints = points.all.slice().sort();
  const without = withoutEach(placesOf(used)).map((rest, k) => {
    const own = points.without[k] as Float64Array;
    return Float64Array.from(rest, (i) => own[i] as number).sort();
  });
  return {
    regions: levels.map((level) => {
      const threshold = quantileOfSorted(sortedAtPoints, 1 - level);
      const thresholds = without.map((own) => quantileOfSorted(own, 1 - level));
      return {
        level,
        threshold,
        area: areaAbove(grid.all, threshold),
        standardErrors: {
          threshold: standardErrorOf(thresholds),
          area: standardErrorOf(thresholds.map((own, k) => areaAbove(grid.without[k] as Float64Array, own))),
        },
      };
    }),
    grid: { x: gx, z: gz, density: [...joined(coarse, weights).all] },
  };
}

/** Densities of all points, and of all but each part, from those of the parts: all are smoothed alike. */
function joined(
  each: readonly Float64Array[],
  weights: readonly number[],
): { readonly all: Float64Array; readonly without: readonly Float64Array[] } {
  const all = new Float64Array(each[0]?.length ?? 0);
  each.forEach((own, k) => {
    const weight = weights[k] as number;
    for (let i = 0; i < all.length; i++) all[i] = (all[i] as number) + weight * (own[i] as number);
  });
  const without = each.map((own, k) => {
    const weight = weights[k] as number;
    return all.map((value, i) => (value - weight * (own[i] as number)) / (1 - weight));
  });
  return { all, without };
}

function axis(values: readonly number[], width: number): DensityGrid['x'] {
  const first = Math.min(...values) - 2 * width;
  return { first, step: (Math.max(...values) + 2 * width - first) / (GRID - 1), count: GRID };
}
