import { requireOneOf, requireRecord, requireWithin } from '../errors.js';
import { latinHypercube } from '../numerics/latin-hypercube.js';
import { type PointSet, sobol } from '../numerics/sobol.js';
import { sobolIndicesDesign } from '../numerics/sobol-indices.js';
import { refusal, requireWhole } from './checks.js';
import type { Design, GridFactor, ListRow, RangeFactor } from './design.js';
import { type FactorName, requireFactor, sweepFactors } from './factors.js';

/** A checked design: how many rows of which factors, and each row by its index. @internal */
export interface DesignPoints {
  readonly rows: number;
  readonly names: readonly FactorName[];
  readonly seed: number | undefined;
  /** The design as plain data for a file's metadata; a list is told by its size and a checksum. */
  readonly about: Readonly<Record<string, unknown>>;
  /** Writes rows `start` to `start + count − 1` into one column a factor. */
  readonly fill: (start: number, count: number, columns: readonly Float64Array[]) => void;
}

const MOST_ROWS = Number.MAX_SAFE_INTEGER;

/**
 * Checks a design.
 * @throws `FairflightError` that names the factor and its allowed range
 * @internal
 */
export function designPoints(design: Design): DesignPoints {
  if (typeof design !== 'object' || design === null) {
    throw refusal('design', `design must be an object, got ${String(design)}`, { value: design });
  }
  const kinds = ['grid', 'latin-hypercube', 'sobol', 'sobol-indices', 'list'] as const;
  requireOneOf('design.kind', design.kind, kinds);
  switch (design.kind) {
    case 'grid':
      return gridPoints(requireRecord('design', design, ['kind', 'factors']).factors);
    case 'latin-hypercube': {
      const {
        factors,
        count,
        seed = 0,
      } = requireRecord('design', design, ['kind', 'factors', 'count', 'seed']);
      requireWhole('design.count', count, 1, 2 ** 30);
      const names = namesOf(factors);
      const points = latinHypercube(count, names.length, requireSeed(seed));
      return rangePoints(factors, names, count, seed, design, (index, out) => points.point(index, out));
    }
    case 'sobol': {
      const {
        factors,
        count,
        scramble = 'owen',
        seed = 0,
      } = requireRecord('design', design, ['kind', 'factors', 'count', 'scramble', 'seed']);
      requireWhole('design.count', count, 1, 2 ** 31);
      const names = namesOf(factors);
      const points = sobolOf(names.length, 1, scramble, requireSeed(seed));
      const about = { ...design, scramble };
      return rangePoints(factors, names, count, seed, about, (index, out) => points.point(index, out));
    }
    case 'sobol-indices': {
      const {
        factors,
        base,
        seed = 0,
      } = requireRecord('design', design, ['kind', 'factors', 'base', 'seed']);
      requireWhole('design.base', base, 2, 2 ** 31);
      const names = namesOf(factors);
      const points = sobolIndicesDesign(sobolOf(names.length, 2, 'owen', requireSeed(seed)));
      const rows = base * (names.length + 2);
      return rangePoints(factors, names, rows, seed, design, (index, out) => points.point(index, out));
    }
    case 'list':
      return listPoints(requireRecord('design', design, ['kind', 'rows']).rows);
  }
}

function sobolOf(factors: number, sets: number, scramble: 'none' | 'shift' | 'owen', seed: number): PointSet {
  const most = 32 / sets;
  if (factors > most) {
    throw refusal(
      'design.factors',
      `design.factors must number at most ${most} for this design, got ${factors}`,
      { value: factors, range: [1, most], hint: 'use a Latin hypercube' },
      'outside-range',
    );
  }
  return sobol(factors * sets, { scramble, seed });
}

function rangePoints(
  factors: readonly RangeFactor[],
  names: readonly FactorName[],
  rows: number,
  seed: number,
  about: object,
  unitPoint: (index: number, out: Float64Array) => void,
): DesignPoints {
  const from = factors.map((factor, j) => endOf(factor, j, 'from', ['name', 'from', 'to']));
  const width = factors.map(
    (factor, j) => endOf(factor, j, 'to', ['name', 'from', 'to']) - (from[j] as number),
  );
  const at = new Float64Array(names.length);
  return {
    rows,
    names,
    seed,
    about: { ...about, seed },
    fill: (start, count, columns) => {
      for (let i = 0; i < count; i++) {
        unitPoint(start + i, at);
        for (let j = 0; j < names.length; j++) {
          (columns[j] as Float64Array)[i] = (from[j] as number) + (at[j] as number) * (width[j] as number);
        }
      }
    },
  };
}

function gridPoints(factors: readonly GridFactor[]): DesignPoints {
  const names = namesOf(factors);
  const levels = factors.map((factor, j) => levelsOf(factor, j));
  const rows = levels.reduce((product, values) => product * values.length, 1);
  requireWhole('the number of rows of the grid', rows, 1, MOST_ROWS);
  return {
    rows,
    names,
    seed: undefined,
    about: { kind: 'grid', factors },
    fill: (start, count, columns) => {
      let repeat = 1;
      for (let j = names.length - 1; j >= 0; j--) {
        const values = levels[j] as Float64Array;
        const column = columns[j] as Float64Array;
        for (let i = 0; i < count; i++) {
          column[i] = values[Math.floor((start + i) / repeat) % values.length] as number;
        }
        repeat *= values.length;
      }
    },
  };
}

function levelsOf(factor: GridFactor, j: number): Float64Array {
  const field = `design.factors[${j}]`;
  if (!('values' in factor)) {
    const known = ['name', 'from', 'to', 'steps'];
    const from = endOf(factor, j, 'from', known);
    const to = endOf(factor, j, 'to', known);
    const steps = requireWhole(`${field}.steps`, factor.steps, 2, 2 ** 30);
    return Float64Array.from({ length: steps }, (_, i) =>
      i === steps - 1 ? to : from + (i / (steps - 1)) * (to - from),
    );
  }
  const { name, values } = requireRecord(field, factor, ['name', 'values']);
  if (!Array.isArray(values) || values.length === 0) {
    throw refusal(`${field}.values`, `${field}.values must be a list with at least one value`, {
      value: values,
    });
  }
  return Float64Array.from(values, (value: number, i) => requireValue(`${field}.values[${i}]`, name, value));
}

function listPoints(rows: readonly ListRow[]): DesignPoints {
  if (!Array.isArray(rows) || rows.length === 0) {
    throw refusal('design.rows', 'design.rows must be a list with at least one row', { value: rows });
  }
  const first = rows[0] as ListRow;
  const names = Object.keys(
    requireRecord('design.rows[0]', first, Object.keys(sweepFactors)),
  ) as FactorName[];
  if (names.length === 0) {
    throw refusal('design.rows[0]', 'design.rows[0] must name at least one factor', { value: first });
  }
  const columns = names.map((name) => Float64Array.from(rows, (row, i) => listValue(row, i, name)));
  rows.forEach((row, i) => {
    requireRecord(`design.rows[${i}]`, row, names);
  });
  return {
    rows: rows.length,
    names,
    seed: undefined,
    about: { kind: 'list', factors: names, rows: rows.length, checksum: checksum(columns) },
    fill: (start, count, into) => {
      columns.forEach((column, j) => {
        (into[j] as Float64Array).set(column.subarray(start, start + count));
      });
    },
  };
}

function listValue(row: ListRow, i: number, name: FactorName): number {
  const value: unknown = (row as ListRow | null | undefined)?.[name];
  if (typeof value !== 'number') {
    throw refusal(
      `design.rows[${i}].${name}`,
      `design.rows[${i}] must give ${name} as a number: every row has the factors of the first`,
      { value, unit: sweepFactors[name].unit },
    );
  }
  return value;
}

function namesOf(factors: readonly { readonly name: FactorName }[]): readonly FactorName[] {
  if (!Array.isArray(factors) || factors.length === 0) {
    throw refusal('design.factors', 'design.factors must be a list with at least one factor', {
      value: factors,
    });
  }
  const names = factors.map((factor, j) =>
    requireFactor(`design.factors[${j}].name`, (factor as { name?: unknown } | null)?.name),
  );
  names.forEach((name, j) => {
    if (names.indexOf(name) !== j) {
      throw refusal(`design.factors[${j}].name`, `design.factors names ${name} twice`, { value: name });
    }
  });
  return names;
}

function endOf(factor: RangeFactor, j: number, end: 'from' | 'to', known: readonly string[]): number {
  const field = `design.factors[${j}]`;
  requireRecord(field, factor, known);
  return requireValue(`${field}.${end} (${factor.name})`, factor.name, factor[end]);
}

function requireValue(field: string, name: FactorName, value: number): number {
  const { min, max, unit } = sweepFactors[name];
  return requireWithin(field, value, min, max, unit, 'pass a quantity, for example mph(100) or degrees(3)');
}

function requireSeed(seed: number): number {
  return requireWhole('design.seed', seed, 0, Number.MAX_SAFE_INTEGER);
}

/** FNV-1a over the bytes of the columns (Fowler, Noll and Vo; IETF draft-eastlake-fnv), as eight hexadecimal digits. */
function checksum(columns: readonly Float64Array[]): string {
  let hash = 0x811c9dc5;
  for (const column of columns) {
    for (const byte of new Uint8Array(column.buffer, column.byteOffset, column.byteLength)) {
      hash = Math.imul(hash ^ byte, 0x01000193);
    }
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}
