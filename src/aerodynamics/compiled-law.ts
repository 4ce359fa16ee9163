import type { AerodynamicModel } from './model.js';

/** Cells of the table in S, a power of two; {@link CELLS_PER_SPIN_RATIO} of them a unit: S from 0 to 2.56. @internal */
export const SPIN_CELLS = 2048;
const CELLS_PER_SPIN_RATIO = 800;
/** Cells of the table in Re, a power of two; {@link CELLS_PER_REYNOLDS} of them a unit: Re from 0 to 512,000. @internal */
export const REYNOLDS_CELLS = 1024;
const CELLS_PER_REYNOLDS = 1 / 500;
/** Largest coefficient error a usable cell may have. 1e-9 of a coefficient moves a drive by under 1e-6 m. */
const LARGEST_ERROR = 1e-9;
/** Largest jump of slope, in coefficient per cell, between usable neighbours: a corner in the law is no error of a cell. */
const LARGEST_CORNER = 1e-6;
/**
 * Share of S or Re that is kept away from a corner: both may pass through a peak between the stages of a step, by so
 * much less than this that a flight which comes near a corner is handed over before it crosses it unseen.
 */
const CORNER_MARGIN = 0.04;
/** Where the law is taken apart into a part in S and a part in Re. */
const PIVOT_REYNOLDS = 150_000;
const PIVOT_SPIN_RATIO = 0.2;

/**
 * A coefficient law tabulated as piecewise cubics: CL(S) and CD(S) + CD(Re). Only for laws that have this form, which
 * is measured, not assumed; `spinCells` and `reynoldsCells` bound the cells whose error was measured and found small
 * enough. Outside them the exact law must be used. @internal
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

/** {@link compileLaw}, remembered for as long as the model lives: it costs some thousands of flights. @internal */
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
  const table = new Float64Array(4 * cells);
  const errors: number[] = [];
  let slopeBefore = Number.NaN;
  for (let cell = 0; cell < cells; cell++) {
    let [c0, c1, c2, c3] = [0, 0, 0, 0];
    for (const [node, k0, k1, k2, k3] of CUBICS) {
      const y = f((cell + node) / cellsPerUnit);
      c0 += k0 * y;
      c1 += k1 * y;
      c2 += k2 * y;
      c3 += k3 * y;
    }
    table[4 * cell] = c0;
    table[4 * cell + 1] = c1;
    table[4 * cell + 2] = c2;
    table[4 * cell + 3] = c3;
    let error = 0;
    for (const t of PROBES) {
      const miss = f((cell + t) / cellsPerUnit) - (c0 + t * (c1 + t * (c2 + t * c3)));
      error = Math.max(error, Math.abs(miss));
    }
    errors.push(Number.isFinite(error) ? error : Number.POSITIVE_INFINITY);
    if (Math.abs(c1 - slopeBefore) > LARGEST_CORNER) corners.add(cell);
    slopeBefore = c1 + 2 * c2 + 3 * c3;
  }
  return { table, errors, corners };
}

/** Chebyshev points of a cell, and where between them the error is measured. */
const NODES = [0, 1, 2, 3].map((k) => 0.5 - 0.5 * Math.cos((Math.PI * (2 * k + 1)) / 8));
const PROBES = [0, 0.22, 0.5, 1];

/** Each node with the four coefficients of the cubic that is 1 there and 0 at the other three (Lagrange). */
const CUBICS = NODES.map((node) => {
  const [p, q, r] = NODES.filter((other) => other !== node) as [number, number, number];
  const scale = 1 / ((node - p) * (node - q) * (node - r));
  return [node, -p * q * r * scale, (p * q + p * r + q * r) * scale, -(p + q + r) * scale, scale] as const;
});

/**
 * The run of cells around one, all within the largest error allowed, up to a margin before the nearest corners; empty
 * when that one is not.
 */
function runAround(
  cell: number,
  errors: readonly number[],
  corners: ReadonlySet<number>,
): { readonly low: number; readonly high: number } {
  const errorOf = (i: number): number => errors[i] ?? Number.POSITIVE_INFINITY;
  const usable = (i: number): boolean => errorOf(i) <= LARGEST_ERROR;
  if (!usable(cell)) return { low: cell, high: cell };
  let low = cell;
  while (!corners.has(low) && usable(low - 1)) low--;
  let high = cell + 1;
  while (!corners.has(high) && usable(high)) high++;
  // A corner between two cells, or within the next one.
  const atCorner = (edge: number, next: number): boolean =>
    corners.has(edge) || (next >= 0 && next < errors.length && errorOf(next) > LARGEST_CORNER);
  if (atCorner(low, low - 1)) low = Math.min(Math.ceil(low * (1 + CORNER_MARGIN)), cell);
  if (atCorner(high, high)) high = Math.max(Math.floor(high * (1 - CORNER_MARGIN)), cell + 1);
  return { low, high };
}

function worst(errors: readonly number[], cells: { readonly low: number; readonly high: number }): number {
  return Math.max(...errors.slice(cells.low, cells.high));
}
