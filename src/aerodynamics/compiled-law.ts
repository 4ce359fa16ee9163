import type { CoefficientLaw } from './model.js';

/** Cells of the table in S, a power of two; {@link CELLS_PER_SPIN_RATIO} of them a unit: S from 0 to 2.56. @internal */
export const SPIN_CELLS = 2048;
const CELLS_PER_SPIN_RATIO = 800;
/** Cells of the table in Re, a power of two; {@link CELLS_PER_REYNOLDS} of them a unit: Re from 0 to 512,000. @internal */
export const REYNOLDS_CELLS = 2048;
const CELLS_PER_REYNOLDS = 1 / 250;
/** Largest coefficient error a usable cell may have. 1e-9 of a coefficient moves a drive by under 1e-6 m. */
const LARGEST_ERROR = 1e-9;
/** Largest part of a coefficient that its form may leave over. */
const LARGEST_MISFIT = 1e-13;
/** Largest jump of slope, in coefficient per cell, between usable neighbours: a corner in the law is no error of a cell. */
const LARGEST_CORNER = 1e-6;
/**
 * Share of S or Re that is kept away from a corner: both may pass through a peak between the stages of a step, by so
 * much less than this that a flight which comes near a corner is handed over before it crosses it unseen.
 */
const CORNER_MARGIN = 0.04;
/** Where a coefficient is taken apart: at this Re it is a function of S alone. */
const PIVOT_REYNOLDS = 150_000;
/** A spin ratio that any flight may meet: cells are usable around it. */
const PIVOT_SPIN_RATIO = 0.2;

/** How Re enters a law: not at all; in drag alone, b being 1; in any other way. @internal */
export const REYNOLDS_NOWHERE = 0;
export const REYNOLDS_IN_DRAG = 1;
export const REYNOLDS_IN_BOTH = 2;

/**
 * A coefficient law tabulated as piecewise cubics: each coefficient as a(S) + b(S) c(Re). Only for laws that have this
 * form, which is measured, not assumed; `spinCells` and `reynoldsCells` bound the cells whose error was measured and
 * found small enough. Outside them the exact law must be used. @internal
 */
export interface CompiledLaw {
  /** Sixteen numbers a cell of S: the four coefficients of a, of CL and of CD by turns; then those of b. */
  readonly spinTable: Float64Array;
  /** Eight numbers a cell of Re: the four coefficients of c, of CL and of CD by turns. */
  readonly reynoldsTable: Float64Array;
  /** How Re enters, a `REYNOLDS_` number: a kernel reads no more of the tables than it has to. */
  readonly reynoldsForm: number;
  readonly cellsPerSpinRatio: number;
  readonly cellsPerReynolds: number;
  /** Usable cells, as cell coordinates: from `low` (included) to `high` (excluded). */
  readonly spinCells: { readonly low: number; readonly high: number };
  readonly reynoldsCells: { readonly low: number; readonly high: number };
  /** Largest error measured between the nodes of usable cells. */
  readonly measuredError: number;
}

/** Numbers of a cell of S and of a cell of Re. @internal */
export const SPIN_NUMBERS = 16;
export const REYNOLDS_NUMBERS = 8;

/**
 * Compiles a model's law, or returns undefined when it has another form or is too rough for the tables.
 * @internal
 */
export function compileLaw(model: CoefficientLaw): CompiledLaw | undefined {
  const lift = takeApart(model.liftCoefficient);
  const drag = takeApart(model.dragCoefficient);
  if (lift === undefined || drag === undefined) return undefined;
  // An error of b counts as much as c is large, and the other way about.
  const spinTables = [
    ...[lift, drag].map(({ a }) => tabulate(a, SPIN_CELLS, CELLS_PER_SPIN_RATIO, 1)),
    ...[lift, drag].map(({ b, largestC }) => tabulate(b, SPIN_CELLS, CELLS_PER_SPIN_RATIO, largestC)),
  ];
  const reynoldsTables = [lift, drag].map(({ c, largestB }) =>
    tabulate(c, REYNOLDS_CELLS, CELLS_PER_REYNOLDS, largestB),
  );
  const spin = usableAround(PIVOT_SPIN_RATIO * CELLS_PER_SPIN_RATIO, spinTables);
  const reynolds = usableAround(PIVOT_REYNOLDS * CELLS_PER_REYNOLDS, reynoldsTables);
  if (spin.cells.high - spin.cells.low < 64 || reynolds.cells.high - reynolds.cells.low < 64)
    return undefined;
  return {
    spinTable: interleaved(spinTables, SPIN_CELLS),
    reynoldsTable: interleaved(reynoldsTables, REYNOLDS_CELLS),
    reynoldsForm: formOf(lift, drag),
    cellsPerSpinRatio: CELLS_PER_SPIN_RATIO,
    cellsPerReynolds: CELLS_PER_REYNOLDS,
    spinCells: spin.cells,
    reynoldsCells: reynolds.cells,
    measuredError: spin.error + reynolds.error,
  };
}

const compiled = new WeakMap<CoefficientLaw, CompiledLaw | 'none'>();

/** {@link compileLaw}, remembered for as long as the model lives: it costs some thousands of flights. @internal */
export function compiledLaw(model: CoefficientLaw): CompiledLaw | undefined {
  let law = compiled.get(model);
  if (law === undefined) {
    law = compiledOrNone(model);
    compiled.set(model, law);
  }
  return law === 'none' ? undefined : law;
}

/** A model that throws somewhere may serve flights that never come there: the exact law flies those. */
function compiledOrNone(model: CoefficientLaw): CompiledLaw | 'none' {
  try {
    return compileLaw(model) ?? 'none';
  } catch {
    return 'none';
  }
}

/** Coefficients that are the same everywhere, in the form of a compiled law. @internal */
export function constantLaw(
  lift: number,
  drag: number,
  reynoldsForm: number = REYNOLDS_NOWHERE,
): CompiledLaw {
  const spinTable = new Float64Array(SPIN_NUMBERS * SPIN_CELLS);
  for (let cell = 0; cell < SPIN_CELLS; cell++) {
    spinTable[SPIN_NUMBERS * cell] = lift;
    spinTable[SPIN_NUMBERS * cell + 1] = drag;
  }
  return {
    spinTable,
    reynoldsTable: new Float64Array(REYNOLDS_NUMBERS * REYNOLDS_CELLS),
    reynoldsForm,
    cellsPerSpinRatio: CELLS_PER_SPIN_RATIO,
    cellsPerReynolds: CELLS_PER_REYNOLDS,
    spinCells: { low: 0, high: SPIN_CELLS },
    reynoldsCells: { low: 0, high: REYNOLDS_CELLS },
    measuredError: 0,
  };
}

/** A coefficient as a(S) + b(S) c(Re), and how large b and c get. */
interface Apart {
  readonly a: (s: number) => number;
  readonly b: (s: number) => number;
  readonly c: (re: number) => number;
  /** Whether Re adds c(Re), times 1 at any S; or nothing. */
  readonly added: boolean;
  readonly largestB: number;
  readonly largestC: number;
}

/** Reynolds numbers and spin ratios, none a node of the tables, at which the form is measured. */
const FORM_REYNOLDS = Array.from({ length: 41 }, (_, i) => 1000 + (i / 40) ** 1.3 * 510_000);
const FORM_SPIN_RATIOS = Array.from({ length: 41 }, (_, j) => 0.0137 + (j / 40) ** 2 * 2.5);

/**
 * Takes a coefficient apart along the Re and the S at which it is furthest from its values at the pivot, or returns
 * undefined where the sum is not the coefficient.
 */
function takeApart(coefficient: (re: number, s: number) => number): Apart | undefined {
  const a = (s: number): number => coefficient(PIVOT_REYNOLDS, s);
  let [furthest, atRe, atS] = [0, PIVOT_REYNOLDS, PIVOT_SPIN_RATIO];
  for (const re of FORM_REYNOLDS) {
    for (const s of FORM_SPIN_RATIOS) {
      const far = coefficient(re, s) - a(s);
      if (Math.abs(far) > Math.abs(furthest)) [furthest, atRe, atS] = [far, re, s];
    }
  }
  const atPivot = a(atS);
  const c = (re: number): number => coefficient(re, atS) - atPivot;
  const fits = (b: (s: number) => number): boolean =>
    FORM_REYNOLDS.every((re) =>
      FORM_SPIN_RATIOS.every((s) => Math.abs(coefficient(re, s) - (a(s) + b(s) * c(re))) < LARGEST_MISFIT),
    );
  const added = fits(ONE);
  const b = added ? ONE : (s: number): number => (coefficient(atRe, s) - a(s)) / furthest;
  if (!added && !fits(b)) return undefined;
  const largest = (f: (x: number) => number, at: readonly number[]): number =>
    Math.max(...at.map((x) => Math.abs(f(x))));
  return { a, b, c, added, largestB: largest(b, FORM_SPIN_RATIOS), largestC: largest(c, FORM_REYNOLDS) };
}

const ONE = (): number => 1;

/** How Re enters a law, from its coefficients taken apart. */
function formOf(lift: Apart, drag: Apart): number {
  if (lift.largestC > 0 || !drag.added) return REYNOLDS_IN_BOTH;
  return drag.largestC > 0 ? REYNOLDS_IN_DRAG : REYNOLDS_NOWHERE;
}

/** A function as cubics, the error of each, and the cells that begin at a corner. */
interface Tabulated {
  readonly table: Float64Array;
  readonly errors: readonly number[];
  readonly corners: ReadonlySet<number>;
}

/**
 * Cubics through the four Chebyshev points of each cell, the error measured at four other points of each, and the
 * cells that begin at a corner of the law; error and corner times `weight`. A step across a corner fools an error
 * estimate, so the tables end there.
 */
function tabulate(f: (x: number) => number, cells: number, cellsPerUnit: number, weight: number): Tabulated {
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
    errors.push(Number.isFinite(error) ? weight * error : Number.POSITIVE_INFINITY);
    if (weight * Math.abs(c1 - slopeBefore) > LARGEST_CORNER) corners.add(cell);
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

/** The usable cells of several tables together, around one, and the largest error in them. */
function usableAround(
  cell: number,
  tables: readonly Tabulated[],
): { readonly cells: CompiledLaw['spinCells']; readonly error: number } {
  const errors = (tables[0] as Tabulated).errors.map((_, i) =>
    Math.max(...tables.map((table) => table.errors[i] as number)),
  );
  const corners = new Set(tables.flatMap((table) => [...table.corners]));
  const cells = runAround(Math.floor(cell), errors, corners);
  return { cells, error: Math.max(...errors.slice(cells.low, cells.high)) };
}

/** The cells of several tables side by side, the numbers of each two by turns. */
function interleaved(tables: readonly Tabulated[], cells: number): Float64Array {
  const numbers = 4 * tables.length;
  const together = new Float64Array(numbers * cells);
  tables.forEach(({ table }, n) => {
    const offset = 8 * (n >> 1) + (n & 1);
    table.forEach((value, i) => {
      together[numbers * (i >> 2) + offset + 2 * (i & 3)] = value;
    });
  });
  return together;
}
