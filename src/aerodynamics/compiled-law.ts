import type { AerodynamicModel } from './model.js';

/** Cells of the table in S, and cells per unit of S: S from 0 to 2.56. */
const SPIN_CELLS = 2048;
const CELLS_PER_SPIN_RATIO = 800;
/** Cells of the table in Re, and cells per unit of Re: Re from 0 to 512,000. */
const REYNOLDS_CELLS = 1024;
const CELLS_PER_REYNOLDS = 1 / 500;
/** Largest coefficient error a usable cell may have. 1e-9 of a coefficient moves a drive by under 1e-6 m. */
const LARGEST_ERROR = 1e-9;
/** Largest jump of slope, in coefficient per cell, between usable neighbours: a corner in the law is no error of a cell. */
const LARGEST_CORNER = 1e-6;
/** Where the law is taken apart into a part in S and a part in Re. */
const PIVOT_REYNOLDS = 150_000;
const PIVOT_SPIN_RATIO = 0.2;

/**
 * A coefficient law tabulated as piecewise cubics: CL(S) and CD(S) + CD(Re). Only for laws that have this form, which
 * is measured, not assumed; `lowS` to `highRe` bound the cells whose error was measured to be within
 * `largestError`. Outside them the exact law must be used. @internal
 */
export interface CompiledLaw {
  /** Eight numbers a cell of S: four coefficients of CL, four of the S part of CD. */
  readonly spinTable: Float64Array;
  /** Four numbers a cell of Re: the Re part of CD. */
  readonly reynoldsTable: Float64Array;
  readonly cellsPerSpinRatio: number;
  readonly cellsPerReynolds: number;
  /** Usable cells, as cell coordinates: from `low` (included) to `high` (excluded). */
  readonly spinCells: { readonly low: number; readonly high: number };
  readonly reynoldsCells: { readonly low: number; readonly high: number };
  /** Largest error measured between the nodes of usable cells. */
  readonly measuredError: number;
}

/**
 * Compiles a model's law, or returns undefined when it has another form or is too rough for the tables.
 * @internal
 */
export function compileLaw(model: AerodynamicModel): CompiledLaw | undefined {
  const { dragCoefficient: drag, liftCoefficient: lift } = model;
  if (!hasAdditiveForm(model)) return undefined;
  const pivot = drag(PIVOT_REYNOLDS, PIVOT_SPIN_RATIO);
  const liftOfSpin = tabulate((s) => lift(PIVOT_REYNOLDS, s), SPIN_CELLS, CELLS_PER_SPIN_RATIO);
  const dragOfSpin = tabulate((s) => drag(PIVOT_REYNOLDS, s), SPIN_CELLS, CELLS_PER_SPIN_RATIO);
  const dragOfReynolds = tabulate(
    (re) => drag(re, PIVOT_SPIN_RATIO) - pivot,
    REYNOLDS_CELLS,
    CELLS_PER_REYNOLDS,
  );
  const spinErrors = liftOfSpin.errors.map((error, i) => Math.max(error, dragOfSpin.errors[i] as number));
  const spinCorners = new Set([...liftOfSpin.corners, ...dragOfSpin.corners]);
  const spinCells = runAround(Math.floor(PIVOT_SPIN_RATIO * CELLS_PER_SPIN_RATIO), spinErrors, spinCorners);
  const reynoldsCells = runAround(
    Math.floor(PIVOT_REYNOLDS * CELLS_PER_REYNOLDS),
    dragOfReynolds.errors,
    dragOfReynolds.corners,
  );
  if (spinCells.high - spinCells.low < 64 || reynoldsCells.high - reynoldsCells.low < 64) return undefined;

  const spinTable = new Float64Array(8 * SPIN_CELLS);
  for (let cell = 0; cell < SPIN_CELLS; cell++) {
    spinTable.set(liftOfSpin.table.subarray(4 * cell, 4 * cell + 4), 8 * cell);
    spinTable.set(dragOfSpin.table.subarray(4 * cell, 4 * cell + 4), 8 * cell + 4);
  }
  return {
    spinTable,
    reynoldsTable: dragOfReynolds.table,
    cellsPerSpinRatio: CELLS_PER_SPIN_RATIO,
    cellsPerReynolds: CELLS_PER_REYNOLDS,
    spinCells,
    reynoldsCells,
    measuredError: worst(spinErrors, spinCells) + worst(dragOfReynolds.errors, reynoldsCells),
  };
}

const compiled = new WeakMap<AerodynamicModel, CompiledLaw | 'none'>();

/** {@link compileLaw}, remembered for as long as the model lives: it costs a millisecond or two. @internal */
export function compiledLaw(model: AerodynamicModel): CompiledLaw | undefined {
  let law = compiled.get(model);
  if (law === undefined) {
    law = compileLaw(model) ?? 'none';
    compiled.set(model, law);
  }
  return law === 'none' ? undefined : law;
}

/** Coefficients that are the same everywhere, in the form of a compiled law. @internal */
export function constantLaw(lift: number, drag: number): CompiledLaw {
  const spinTable = new Float64Array(8 * SPIN_CELLS);
  for (let cell = 0; cell < SPIN_CELLS; cell++) {
    spinTable[8 * cell] = lift;
    spinTable[8 * cell + 4] = drag;
  }
  return {
    spinTable,
    reynoldsTable: new Float64Array(4 * REYNOLDS_CELLS),
    cellsPerSpinRatio: CELLS_PER_SPIN_RATIO,
    cellsPerReynolds: CELLS_PER_REYNOLDS,
    spinCells: { low: 0, high: SPIN_CELLS },
    reynoldsCells: { low: 0, high: REYNOLDS_CELLS },
    measuredError: 0,
  };
}

/** Measures on an off-node grid that CD = f(S) + g(Re) and CL = h(S). */
function hasAdditiveForm({ dragCoefficient: drag, liftCoefficient: lift }: AerodynamicModel): boolean {
  const pivot = drag(PIVOT_REYNOLDS, PIVOT_SPIN_RATIO);
  for (let i = 0; i <= 40; i++) {
    const re = 1000 + (i / 40) ** 1.3 * 510_000;
    for (let j = 0; j <= 40; j++) {
      const s = 0.0137 + (j / 40) ** 2 * 2.5;
      const additive = drag(re, PIVOT_SPIN_RATIO) + drag(PIVOT_REYNOLDS, s) - pivot;
      if (!(Math.abs(drag(re, s) - additive) < 1e-13)) return false;
      if (!(Math.abs(lift(re, s) - lift(PIVOT_REYNOLDS, s)) < 1e-13)) return false;
    }
  }
  return true;
}

/**
 * Cubics through the four Chebyshev points of each cell, the error measured at four other points of each, and the
 * cells that begin at a corner of the law. A step across a corner fools an error estimate, so the tables end there.
 */
function tabulate(
  f: (x: number) => number,
  cells: number,
  cellsPerUnit: number,
): {
  readonly table: Float64Array;
  readonly errors: readonly number[];
  readonly corners: ReadonlySet<number>;
} {
  const corners = new Set<number>();
  let slopeBefore = Number.NaN;
  const table = new Float64Array(4 * cells);
  const nodes = [0, 1, 2, 3].map((k) => 0.5 - 0.5 * Math.cos((Math.PI * (2 * k + 1)) / 8));
  const probes = [0, 0.22, 0.5, 1];
  const errors: number[] = [];
  for (let cell = 0; cell < cells; cell++) {
    const at = (t: number): number => f((cell + t) / cellsPerUnit);
    const cubic = cubicThrough(nodes, nodes.map(at));
    table.set(cubic, 4 * cell);
    const error = Math.max(...probes.map((t) => Math.abs(at(t) - horner(cubic, t))));
    errors.push(Number.isFinite(error) ? error : Number.POSITIVE_INFINITY);
    const [, c1 = 0, c2 = 0, c3 = 0] = cubic;
    if (Math.abs(c1 - slopeBefore) > LARGEST_CORNER) corners.add(cell);
    slopeBefore = c1 + 2 * c2 + 3 * c3;
  }
  return { table, errors, corners };
}

/** Coefficients of the cubic through four points, by Newton's divided differences. */
function cubicThrough(x: readonly number[], y: readonly number[]): number[] {
  const d = [...y];
  for (let order = 1; order < 4; order++) {
    for (let i = 3; i >= order; i--) {
      d[i] = ((d[i] as number) - (d[i - 1] as number)) / ((x[i] as number) - (x[i - order] as number));
    }
  }
  let c = [d[3] as number];
  for (let i = 2; i >= 0; i--) {
    const shifted = [0, ...c];
    c = shifted.map((value, k) => value - (x[i] as number) * (c[k] ?? 0));
    c[0] = (c[0] as number) + (d[i] as number);
  }
  return c;
}

function horner(c: readonly number[], t: number): number {
  return c.reduceRight((sum, value) => sum * t + value, 0);
}

/** The run of cells around one, all within the largest error allowed and divided by no corner; empty when it is not. */
function runAround(
  cell: number,
  errors: readonly number[],
  corners: ReadonlySet<number>,
): { readonly low: number; readonly high: number } {
  const usable = (i: number): boolean => (errors[i] ?? Number.POSITIVE_INFINITY) <= LARGEST_ERROR;
  if (!usable(cell)) return { low: cell, high: cell };
  let low = cell;
  while (!corners.has(low) && usable(low - 1)) low--;
  let high = cell + 1;
  while (!corners.has(high) && usable(high)) high++;
  return { low, high };
}

function worst(errors: readonly number[], cells: { readonly low: number; readonly high: number }): number {
  return Math.max(...errors.slice(cells.low, cells.high));
}
