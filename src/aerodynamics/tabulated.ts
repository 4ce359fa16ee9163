import { FairflightError, requireOneOf, requireRecord, requireWithin } from '../errors.js';
import type { Source } from '../source.js';
import type { AerodynamicModel } from './model.js';
import { at, endSlope, hermite, innerSlope, intervalOf, monotoneSlopes } from './monotone.js';
import { aerodynamicModels } from './registry.js';
import { SPIN_DECAY } from './spin-decay.js';

/** A grid of measured coefficients. Rows belong to Reynolds numbers, columns to spin ratios. */
export interface CoefficientGrid {
  /** Short id; must differ from the built-in ones. */
  readonly id: string;
  /** One line for people; default the id. */
  readonly label?: string;
  /** Reynolds numbers of the rows, strictly increasing, 1 to 1e7; one row is allowed. */
  readonly reynolds: readonly number[];
  /** Spin ratios of the columns, strictly increasing, 0 to 10; at least two. */
  readonly spinRatio: readonly number[];
  /** `drag[row][column]`, 0.01 to 10. */
  readonly drag: readonly (readonly number[])[];
  /** `lift[row][column]`, −5 to 5; must be 0 in a column of spin ratio 0. */
  readonly lift: readonly (readonly number[])[];
  /** Where the numbers come from. */
  readonly source: Source;
  /** Which spin the table's S was made with; default `across`. */
  readonly spinEntering?: 'across' | 'total';
  /** Spin decay constant, 0 to 0.001; default 2e-5 (Smits and Smith 1994). */
  readonly spinDecay?: number;
}

const FIELDS = [
  'id',
  'label',
  'reynolds',
  'spinRatio',
  'drag',
  'lift',
  'source',
  'spinEntering',
  'spinDecay',
] as const;

/**
 * A model from a user's own wind-tunnel or range grid, Re × S.
 *
 * Between the nodes: monotone piecewise cubics (Fritsch and Carlson 1980, Fritsch and Butland 1984) in S along each
 * row, then in Re across the rows, so a value never leaves the span of the four nodes around it. Outside: values at
 * the edge are held, except that below the smallest S lift runs straight to 0 at S 0. Results outside the grid carry a
 * warning.
 * @throws {@link FairflightError} `invalid-input` for a grid of the wrong shape, `outside-range` for a bad entry
 */
export function tabulated(grid: CoefficientGrid): AerodynamicModel {
  requireRecord('grid', grid, FIELDS);
  if (typeof grid.id !== 'string' || grid.id.trim() === '')
    refuse('id', grid.id, 'must be a non-empty string');
  if (Object.hasOwn(aerodynamicModels, grid.id))
    refuse('id', grid.id, 'must differ from the ids of the built-in models');
  if (typeof grid.source !== 'object' || grid.source === null) {
    refuse('source', grid.source, 'must say where the numbers come from');
  }
  const reynolds = nodes('reynolds', grid.reynolds, 1, 1, 1e7);
  const spinRatio = nodes('spinRatio', grid.spinRatio, 2, 0, 10);
  const drag = table('drag', grid.drag, reynolds, spinRatio, 0.01, 10);
  const lift = table('lift', grid.lift, reynolds, spinRatio, -5, 5);
  const firstS = at(spinRatio, 0);
  lift.forEach((row, i) => {
    if (firstS === 0 && at(row, 0) !== 0) {
      refuse(`lift[${i}][0]`, row[0], 'must be 0 at spin ratio 0: without spin lift has no direction');
    }
  });
  const dragSurface = surface(reynolds, spinRatio, drag);
  const liftSurface = surface(reynolds, spinRatio, lift);

  return {
    id: grid.id,
    label: grid.label ?? grid.id,
    source: grid.source,
    validity: {
      reynolds: { min: at(reynolds, 0), max: at(reynolds, reynolds.length - 1) },
      spinRatio: { min: firstS, max: at(spinRatio, spinRatio.length - 1) },
    },
    extrapolation:
      'Outside the grid the values at its edge are held; below its smallest spin ratio lift runs straight to 0 at S 0.',
    spinEntering: requireOneOf('grid.spinEntering', grid.spinEntering ?? 'across', ['across', 'total']),
    dragCoefficient: dragSurface,
    liftCoefficient: (re, s) => (s < firstS ? (s / firstS) * liftSurface(re, firstS) : liftSurface(re, s)),
    spinDecay: requireWithin('grid.spinDecay', grid.spinDecay ?? SPIN_DECAY, 0, 1e-3, ''),
  };
}

/** The interpolating surface, held at its edges. */
function surface(
  reynolds: readonly number[],
  spinRatio: readonly number[],
  values: readonly (readonly number[])[],
): (re: number, s: number) => number {
  const slopes = values.map((row) => monotoneSlopes(spinRatio, row));
  const lastRow = reynolds.length - 1;
  const [firstS, lastS] = [at(spinRatio, 0), at(spinRatio, spinRatio.length - 1)];
  const [firstRe, lastRe] = [at(reynolds, 0), at(reynolds, lastRow)];

  function alongRow(row: number, column: number, t: number, h: number): number {
    const y = values[row] as readonly number[];
    const d = slopes[row] as readonly number[];
    return hermite(t, h, at(y, column), at(y, column + 1), at(d, column), at(d, column + 1));
  }

  return (re, s) => {
    const x = Math.min(Math.max(s, firstS), lastS);
    const column = intervalOf(spinRatio, x);
    const h = at(spinRatio, column + 1) - at(spinRatio, column);
    const t = (x - at(spinRatio, column)) / h;
    if (lastRow === 0) return alongRow(0, column, t, h);

    // The slopes in Re at the two rows around the point need one more row on either side, where there is one.
    const z = Math.min(Math.max(re, firstRe), lastRe);
    const i = intervalOf(reynolds, z);
    const width = at(reynolds, i + 1) - at(reynolds, i);
    const y0 = alongRow(i, column, t, h);
    const y1 = alongRow(i + 1, column, t, h);
    const secant = (y1 - y0) / width;
    const before = i > 0 ? at(reynolds, i) - at(reynolds, i - 1) : 0;
    const secantBefore = i > 0 ? (y0 - alongRow(i - 1, column, t, h)) / before : 0;
    const after = i + 1 < lastRow ? at(reynolds, i + 2) - at(reynolds, i + 1) : 0;
    const secantAfter = i + 1 < lastRow ? (alongRow(i + 2, column, t, h) - y1) / after : 0;
    let slope0 = secant;
    let slope1 = secant;
    if (i > 0) slope0 = innerSlope(before, width, secantBefore, secant);
    else if (i + 1 < lastRow) slope0 = endSlope(width, after, secant, secantAfter);
    if (i + 1 < lastRow) slope1 = innerSlope(width, after, secant, secantAfter);
    else if (i > 0) slope1 = endSlope(width, before, secant, secantBefore);
    return hermite((z - at(reynolds, i)) / width, width, y0, y1, slope0, slope1);
  };
}

function nodes(
  field: string,
  values: unknown,
  atLeast: number,
  minimum: number,
  maximum: number,
): readonly number[] {
  if (!Array.isArray(values) || values.length < atLeast) {
    refuse(field, values, `must be an array of at least ${atLeast} number${atLeast === 1 ? '' : 's'}`);
  }
  const checked = values.map((value, i) => requireWithin(`grid.${field}[${i}]`, value, minimum, maximum, ''));
  checked.forEach((value, i) => {
    if (i > 0 && value <= at(checked, i - 1)) {
      refuse(`${field}[${i}]`, value, `must be greater than ${field}[${i - 1}] = ${checked[i - 1]}`);
    }
  });
  return checked;
}

function table(
  field: string,
  rows: unknown,
  reynolds: readonly number[],
  spinRatio: readonly number[],
  minimum: number,
  maximum: number,
): readonly (readonly number[])[] {
  if (!Array.isArray(rows) || rows.length !== reynolds.length) {
    refuse(field, rows, `must have one row for each of the ${reynolds.length} Reynolds numbers`);
  }
  return rows.map((row: unknown, i) => {
    if (!Array.isArray(row) || row.length !== spinRatio.length) {
      refuse(`${field}[${i}]`, row, `must have one number for each of the ${spinRatio.length} spin ratios`);
    }
    return row.map((value, j) => requireWithin(`grid.${field}[${i}][${j}]`, value, minimum, maximum, ''));
  });
}

function refuse(field: string, value: unknown, complaint: string): never {
  throw new FairflightError('invalid-input', `grid.${field} ${complaint}`, { field: `grid.${field}`, value });
}
