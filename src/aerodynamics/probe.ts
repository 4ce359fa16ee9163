import { checksumOf } from '../numerics/checksum.js';
import { sobol } from '../numerics/sobol.js';
import type { CoefficientLaw } from './model.js';

/** Where a model is asked: Reynolds numbers 10³ to 10⁶, spin ratios 0 to 2, more than a ball in flight meets. */
const LOG_REYNOLDS = { from: 3, width: 3 };
const MOST_SPIN = 2;
/** Points of the checksum. */
const POINTS = 4096;

/** A coefficient model in numbers, whatever it is made of. Plain data. */
export interface ModelNumbers {
  /**
   * Checksum (FNV-1a, 64 bits) of drag and lift at 4096 points, evenly spread (Sobol's sequence) over Re 10³ to 10⁶, as a
   * logarithm, and S 0 to 2, and of the spin decay. Two models that differ only between the points, or outside, have the
   * same.
   */
  readonly checksum: string;
  /** Reynolds numbers of the rows below. */
  readonly reynolds: readonly number[];
  /** Spin ratios of the columns below. */
  readonly spinRatio: readonly number[];
  /** Drag coefficients, `drag[row][column]`; null where the model gives no number. */
  readonly drag: readonly (readonly (number | null)[])[];
  /** Lift coefficients likewise. */
  readonly lift: readonly (readonly (number | null)[])[];
  /** Which spin enters S. */
  readonly spinEntering: CoefficientLaw['spinEntering'];
  /** Spin decay constant. */
  readonly spinDecay: number;
}

/** What a model is in numbers, for a file that is to say what flew. @internal */
export function modelNumbers(model: CoefficientLaw): ModelNumbers {
  const { dragCoefficient, liftCoefficient, spinEntering, spinDecay } = model;
  const reynolds = Array.from({ length: 13 }, (_, i) =>
    Math.round(10 ** (LOG_REYNOLDS.from + (LOG_REYNOLDS.width * i) / 12)),
  );
  const spinRatio = [0, 0.025, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.6, 1, MOST_SPIN];
  const grid = (law: Coefficient): (number | null)[][] =>
    reynolds.map((re) =>
      spinRatio.map((s) => {
        const value = coefficientOf(law, re, s);
        return Number.isFinite(value) ? value : null;
      }),
    );
  return {
    checksum: checksumOfModel(model),
    reynolds,
    spinRatio,
    drag: grid(dragCoefficient),
    lift: grid(liftCoefficient),
    spinEntering,
    spinDecay,
  };
}

function checksumOfModel(model: CoefficientLaw): string {
  const { dragCoefficient, liftCoefficient, spinEntering, spinDecay } = model;
  const points = sobol(2);
  const at = new Float64Array(2);
  const values = new Float64Array(2 * POINTS + 2);
  for (let i = 0; i < POINTS; i++) {
    const [u = 0, v = 0] = points.point(i, at);
    const reynolds = 10 ** (LOG_REYNOLDS.from + LOG_REYNOLDS.width * u);
    values[2 * i] = coefficientOf(dragCoefficient, reynolds, MOST_SPIN * v);
    values[2 * i + 1] = coefficientOf(liftCoefficient, reynolds, MOST_SPIN * v);
  }
  values[2 * POINTS] = spinDecay;
  values[2 * POINTS + 1] = spinEntering === 'across' ? 0 : 1;
  return checksumOf([values]);
}

type Coefficient = CoefficientLaw['dragCoefficient'];

/** NaN, always the same one, where a model of the user's own throws or gives no number: the flight will say so. */
function coefficientOf(law: Coefficient, reynolds: number, spinRatio: number): number {
  try {
    const value = law(reynolds, spinRatio);
    return typeof value === 'number' && !Number.isNaN(value) ? value : Number.NaN;
  } catch {
    return Number.NaN;
  }
}
