import line from '../../../tests/published/data/test-range-line.json' with { type: 'json' };
import tours from '../../../tests/published/data/tour-averages.json' with { type: 'json' };
import { fly } from '../../flight/index.js';
import { levenbergMarquardt } from '../../numerics/index.js';
import type { Scene } from '../../scene/index.js';
import {
  degrees,
  kilogramsPerCubicMetre,
  metres,
  metresPerSecond,
  pascalSeconds,
  rpm,
  toDegrees,
  toYards,
} from '../../units/index.js';
import { type FittedModernConstants, fittedDrag, fittedLift } from '../fitted-modern.js';
import { fittedModern, fittedModernConstants } from '../index.js';

/** Air of the fit, which the tour rows do not state: 1.2 kg/m³, 1.81e-5 Pa s. */
const air = { density: kilogramsPerCubicMetre(1.2), viscosity: pascalSeconds(1.81e-5) };

/**
 * What one residual of each kind is divided by: carry and apex in yards, descent in degrees. The spreads of the first
 * fit were not written down; of several plain choices these give its constants back. Others (2–4 yd, 1.5–3°,
 * 0.01–0.02, the doubtful row at a third) move the constants by up to about one standard error.
 */
export const spread: Readonly<Record<'carry' | 'apex' | 'descent' | 'drag' | 'lift', number>> = {
  carry: 3,
  apex: 3,
  descent: 2,
  drag: 0.01,
  lift: 0.01,
};

/** The row that contradicts the others. */
export const doubtfulRow = 'women-3-wood';

/** The constants fitted. No row says anything about centre and step of the drag crisis. */
export const fittedNames: readonly (keyof FittedModernConstants)[] = [
  'liftLimit',
  'liftScale',
  'dragFloor',
  'dragRise',
  'dragScale',
  'crisisWidth',
];

/** Model minus row, at one test-range point. */
export interface PointResidual {
  readonly reynolds: number;
  readonly spinRatio: number;
  readonly drag: number;
  readonly lift: number;
}

/** Model minus row, for one tour average: carry and apex in yards, descent in degrees. */
export interface FlightResidual {
  readonly id: string;
  readonly carry: number;
  readonly apex: number;
  readonly descent: number;
}

/** What a set of constants leaves over. */
export interface Residuals {
  readonly points: readonly PointResidual[];
  readonly flights: readonly FlightResidual[];
}

/** Flies every tour row and looks up every test-range point with the constants given. */
export function residualsOf(constants: FittedModernConstants): Residuals {
  const scene: Scene = {
    air,
    aerodynamics: {
      ...fittedModern,
      id: 'refit',
      dragCoefficient: (reynolds, spinRatio) => fittedDrag(constants, reynolds, spinRatio),
      liftCoefficient: (_reynolds, spinRatio) => fittedLift(constants, spinRatio),
    },
  };
  return {
    points: line.rows.map(({ reynolds, spinRatio, drag, lift }) => ({
      reynolds,
      spinRatio,
      drag: fittedDrag(constants, reynolds, spinRatio) - drag,
      lift: fittedLift(constants, spinRatio) - lift,
    })),
    flights: tours.rows.map((row) => {
      const launch = {
        ballSpeed: metresPerSecond(row.ballSpeed),
        launchAngle: degrees(row.launchAngleDegrees),
        spinRate: rpm(row.backspinRpm),
      };
      // Tight, so that differences between neighbouring constants are those of the model.
      const flight = fly(launch, scene, { tolerance: metres(1e-7) });
      return {
        id: row.id,
        carry: toYards(flight.carry) - toYards(metres(row.carry)),
        apex: toYards(flight.apex) - toYards(metres(row.apex)),
        descent: toDegrees(flight.descentAngle) - row.descentAngleDegrees,
      };
    }),
  };
}

/** Residuals over their spreads; those of the doubtful row times `doubtfulWeight`. */
export function weighted({ points, flights }: Residuals, doubtfulWeight: number): readonly number[] {
  return [
    ...points.flatMap(({ drag, lift }) => [drag / spread.drag, lift / spread.lift]),
    ...flights.flatMap(({ id, carry, apex, descent }) => {
      const weight = id === doubtfulRow ? doubtfulWeight : 1;
      return [carry / spread.carry, apex / spread.apex, descent / spread.descent].map((r) => weight * r);
    }),
  ];
}

/** One fit. */
export interface Refit {
  readonly constants: FittedModernConstants;
  /** Standard error of each of {@link fittedNames}, from the scatter of the residuals. */
  readonly standardErrors: readonly number[];
  readonly sumOfSquares: number;
}

/** Least squares over all rows, from the shipped constants or others. */
export function refit(doubtfulWeight: number, start: FittedModernConstants = fittedModernConstants): Refit {
  const constantsFrom = (x: readonly number[]): FittedModernConstants => ({
    ...start,
    ...Object.fromEntries(fittedNames.map((name, i) => [name, x[i]])),
  });
  const solution = levenbergMarquardt(
    (x) => weighted(residualsOf(constantsFrom(x)), doubtfulWeight),
    fittedNames.map((name) => start[name]),
  );
  if (!solution.converged || solution.covariance === undefined) throw new Error('the fit did not converge');
  return {
    constants: constantsFrom(solution.x),
    standardErrors: solution.covariance.map((row, i) => Math.sqrt(row[i] ?? Number.NaN)),
    sumOfSquares: solution.sumOfSquares,
  };
}

/** Sum of squares of the weighted residuals, every row whole. */
export function costOf(residuals: Residuals): number {
  return weighted(residuals, 1).reduce((sum, r) => sum + r * r, 0);
}

/** Root mean square. */
export function rms(values: readonly number[]): number {
  return Math.hypot(...values) / Math.sqrt(values.length);
}
