import { createFlightEngine } from '../../flight/engine/general.js';
import { flightProblem } from '../../flight/problem.js';
import type { Air } from '../../inputs/air.js';
import type { Launch } from '../../inputs/launch.js';
import { levenbergMarquardt } from '../../numerics/index.js';
import { resolveScene } from '../../scene/scene.js';
import { si, toDegrees, toYards } from '../../units/index.js';
import {
  type FittedModernConstants,
  fittedDrag,
  fittedLift,
  fittedModern,
  fittedModernConstants,
} from '../fitted-modern.js';
import {
  type CoefficientRow,
  coefficientRows,
  type FitSource,
  type FlightFigure,
  type FlightRow,
  flightRows,
} from './fit-rows.js';

/** Constants fitted to measured coefficients alone. */
export const FITTED: readonly (keyof FittedModernConstants)[] = [
  'liftOnset',
  'liftRise',
  'liftScale',
  'dragFloor',
  'dragRise',
  'dragScale',
];

/** The one of them that then stands: no flight says anything about so little spin. */
export const STANDS: keyof FittedModernConstants = 'liftOnset';

/** Drag or lift coefficient by a law, less the row's. */
export function missOf(constants: FittedModernConstants, row: CoefficientRow): number {
  const law = row.coefficient === 'drag' ? fittedDrag : fittedLift;
  return law(constants, row.reynolds, row.spinRatio) - row.expected;
}

// Tight, so that differences between neighbouring constants are those of the model.
const TOLERANCE = 1e-7;

/** Flies one launch by a law: carry and apex in yards, descent in degrees, hang time in seconds. */
export function flyBy(
  constants: FittedModernConstants,
  launch: Launch,
  air: Air,
): Readonly<Record<FlightFigure, number>> {
  const aerodynamics = {
    ...fittedModern,
    id: 'refit',
    dragCoefficient: (re: number, s: number) => fittedDrag(constants, re, s),
    liftCoefficient: (re: number, s: number) => fittedLift(constants, re, s),
  };
  const problem = flightProblem(launch, resolveScene({ air, aerodynamics }));
  const { state, apex, time } = createFlightEngine().fly(problem, TOLERANCE, 60);
  const [x = 0, , z = 0, vx = 0, vy = 0, vz = 0] = state;
  return {
    carry: toYards(si(Math.hypot(x, z))),
    apex: toYards(si(apex)),
    descent: toDegrees(si(Math.atan2(-vy, Math.hypot(vx, vz)))),
    hang: time,
  };
}

/** Model less row for each figure of a flight, in the order of the row. */
export function flightMisses(constants: FittedModernConstants, row: FlightRow): readonly number[] {
  const flown = flyBy(constants, row.launch, row.air);
  return row.figures.map(({ figure, expected }) => flown[figure] - expected);
}

/** One fit. */
export interface Fit {
  readonly constants: FittedModernConstants;
  /** Standard errors, of the constants that were free last. */
  readonly standardErrors: Readonly<Partial<Record<keyof FittedModernConstants, number>>>;
}

function leastSquares(
  start: FittedModernConstants,
  names: readonly (keyof FittedModernConstants)[],
  residuals: (constants: FittedModernConstants) => readonly number[],
): Fit {
  const constantsFrom = (x: readonly number[]): FittedModernConstants => ({
    ...start,
    ...Object.fromEntries(names.map((name, i) => [name, x[i]])),
  });
  const solution = levenbergMarquardt(
    (x) => residuals(constantsFrom(x)),
    names.map((name) => start[name]),
    { lower: names.map(() => 1e-3), variance: 'known', tolerance: 1e-8 },
  );
  if (!solution.converged || solution.covariance === undefined) throw new Error('the fit did not converge');
  const errors = solution.covariance.map((row, i) => Math.sqrt(row[i] ?? Number.NaN));
  return {
    constants: constantsFrom(solution.x),
    standardErrors: Object.fromEntries(names.map((name, i) => [name, errors[i]])),
  };
}

/**
 * Coefficients first: six constants by least squares over the measured coefficients. Then {@link STANDS} stands, and the
 * other five are fitted over coefficients and flights together, each residual over its spread.
 * @param without - a source whose rows are left out
 */
export function refit(
  without?: FitSource,
  start: FittedModernConstants = fittedModernConstants,
): { readonly coefficientsOnly: Fit; readonly fit: Fit } {
  const points = coefficientRows.filter(({ source }) => source !== without);
  const flights = flightRows.filter(({ source }) => source !== without);
  const ofPoints = (constants: FittedModernConstants): number[] =>
    points.map((row) => missOf(constants, row) / row.spread);
  const coefficientsOnly = leastSquares(start, FITTED, ofPoints);
  const fit = leastSquares(
    coefficientsOnly.constants,
    FITTED.filter((name) => name !== STANDS),
    (constants) => [
      ...ofPoints(constants),
      ...flights.flatMap((row) =>
        flightMisses(constants, row).map((miss, i) => miss / (row.figures[i]?.spread ?? Number.NaN)),
      ),
    ],
  );
  return { coefficientsOnly, fit };
}

/** The constants as they are shipped: to four decimals. */
export function rounded(constants: FittedModernConstants): FittedModernConstants {
  const entries = Object.entries(constants).map(([name, value]) => [name, Number(value.toFixed(4))]);
  return Object.fromEntries(entries) as unknown as FittedModernConstants;
}

/** Mean of the squared residuals over their spreads. */
export function chiSquare(constants: FittedModernConstants, rows: readonly CoefficientRow[]): number {
  return rows.reduce((sum, row) => sum + (missOf(constants, row) / row.spread) ** 2, 0) / rows.length;
}

/** Root mean square. */
export function rms(values: readonly number[]): number {
  return Math.hypot(...values) / Math.sqrt(values.length);
}
