import { isList } from '../errors.js';
import {
  type CustomField,
  choice,
  count,
  type Field,
  type ListField,
  optional,
  type VariantField,
} from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readField, readList, readQuantity, requireKnown } from '../inputs/read.js';
import { refusal, refuseType } from '../inputs/refuse.js';
import { seedField } from '../inputs/seed.js';
import { latinHypercube } from '../numerics/latin-hypercube.js';
import { type PointSet, type SobolScramble, sobol } from '../numerics/sobol.js';
import { sobolIndicesDesign } from '../numerics/sobol-indices.js';
import type { Design, GridFactor, ListRow, RangeFactor } from './design.js';
import { type FactorName, factorFields, requireFactor } from './factors.js';

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

const SCRAMBLES: readonly SobolScramble[] = ['none', 'shift', 'owen'];

/** Declaration of {@link Design}. @internal */
export const designField: VariantField = /* @__PURE__ */ frozen(() => {
  const seed = optional(seedField);
  const factors = listOf(readRange, 'factors');
  return {
    kind: 'variant',
    by: 'kind',
    cases: {
      grid: { factors: listOf(readGridFactor, 'factors') },
      'latin-hypercube': { factors, count: count(1, 2 ** 30, 1000, 'rows'), seed },
      sobol: {
        factors,
        count: count(1, 2 ** 31, 1024, 'rows'),
        scramble: optional(choice(SCRAMBLES, 'scramble')),
        seed,
      },
      'sobol-indices': { factors, base: count(2, 2 ** 31, 1024, 'base rows'), seed },
      list: { rows: { kind: 'custom', read: readRows, label: 'rows' } },
    },
    label: 'design',
  };
});

function listOf(read: CustomField['read'], label: string): ListField {
  return { kind: 'list', of: { kind: 'custom', read, label }, least: 1, most: 1000, label };
}

/**
 * Checks a design.
 * @throws `FairflightError` that names the factor and its allowed range
 * @internal
 */
export function designPoints(given: Design): DesignPoints {
  const design = readField(designField, given, 'design') as Design;
  if (design.kind === 'list') return listPoints(design.rows);
  const names = namesOf(design.factors);
  switch (design.kind) {
    case 'grid':
      return gridPoints(names, design.factors);
    case 'latin-hypercube': {
      const points = latinHypercube(design.count, names.length, design.seed ?? 0);
      return rangePoints(names, design, design.count, design, points);
    }
    case 'sobol': {
      const { scramble = 'owen' } = design;
      const points = sobolOf(names.length, 1, scramble, design.seed ?? 0);
      return rangePoints(names, design, design.count, { ...design, scramble }, points);
    }
    case 'sobol-indices': {
      const points = sobolIndicesDesign(sobolOf(names.length, 2, 'owen', design.seed ?? 0));
      return rangePoints(names, design, design.base * (names.length + 2), design, points);
    }
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
  names: readonly FactorName[],
  { factors, seed = 0 }: { readonly factors: readonly RangeFactor[]; readonly seed?: number },
  rows: number,
  about: object,
  points: PointSet,
): DesignPoints {
  const from = factors.map((factor): number => factor.from);
  const width = factors.map((factor, j) => factor.to - (from[j] as number));
  const at = new Float64Array(names.length);
  return {
    rows,
    names,
    seed,
    about: { ...about, seed },
    fill: (start, count, columns) => {
      for (let i = 0; i < count; i++) {
        points.point(start + i, at);
        for (let j = 0; j < names.length; j++) {
          (columns[j] as Float64Array)[i] = (from[j] as number) + (at[j] as number) * (width[j] as number);
        }
      }
    },
  };
}

function gridPoints(names: readonly FactorName[], factors: readonly GridFactor[]): DesignPoints {
  const levels = factors.map(levelsOf);
  const rows = levels.reduce((product, values) => product * values.length, 1);
  if (rows > MOST_ROWS) {
    throw refusal(
      'design.factors',
      `design.factors make ${rows.toPrecision(3)} rows; at most ${MOST_ROWS}`,
      { value: rows, range: [1, MOST_ROWS] },
      'outside-range',
    );
  }
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

function levelsOf(factor: GridFactor): Float64Array {
  if ('values' in factor) return Float64Array.from(factor.values);
  const { from, to, steps } = factor;
  return Float64Array.from({ length: steps }, (_, i) =>
    i === steps - 1 ? to : from + (i / (steps - 1)) * (to - from),
  );
}

const STEPS: Field = /* @__PURE__ */ frozen(() => count(2, 2 ** 30, 10, 'steps'));

function readRange(value: unknown, path: string): unknown {
  return readEnds(requireKnown(RANGE_KEYS, value, path), path);
}

function readGridFactor(value: unknown, path: string): unknown {
  const given = requireKnown({ ...RANGE_KEYS, steps: true, values: true }, value, path);
  if (!Object.hasOwn(given, 'values')) {
    return { ...readEnds(given, path), steps: readField(STEPS, given['steps'], `${path}.steps`) };
  }
  const { name, values } = requireKnown({ name: true, values: true }, value, path);
  const known = requireFactor(`${path}.name`, name);
  const of = factorFields[known];
  return {
    name: known,
    values: readList({ of, least: 1, most: 2 ** 30 }, values, `${path}.values`),
  };
}

const RANGE_KEYS = { name: true, from: true, to: true };

function readEnds(given: Readonly<Record<string, unknown>>, path: string): RangeFactor {
  const name = requireFactor(`${path}.name`, given['name']);
  const end = (key: 'from' | 'to'): number => readQuantity(factorFields[name], given[key], `${path}.${key}`);
  return { name, from: end('from'), to: end('to') } as RangeFactor;
}

/** The rows of a list as they are: their numbers may lie outside a range, and the row then says so in its status. */
function readRows(value: unknown, path: string): readonly ListRow[] {
  if (!isList(value)) throw refuseType(path, 'a list', value);
  if (value.length === 0) throw refusal(path, `${path} must be a list with at least one row`);
  return value as readonly ListRow[];
}

function listPoints(rows: readonly ListRow[]): DesignPoints {
  const first = requireKnown(factorFields, rows[0], 'design.rows[0]');
  const names = Object.keys(first) as FactorName[];
  if (names.length === 0) {
    throw refusal('design.rows[0]', 'design.rows[0] must name at least one factor');
  }
  const columns = names.map(() => new Float64Array(rows.length));
  const known = Object.fromEntries(names.map((name) => [name, true]));
  for (let i = 0; i < rows.length; i++) {
    const row = requireKnown(known, rows[i], `design.rows[${i}]`);
    names.forEach((name, j) => {
      (columns[j] as Float64Array)[i] = listValue(row[name], i, name);
    });
  }
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

function listValue(value: unknown, i: number, name: FactorName): number {
  if (typeof value === 'number') return value;
  throw refusal(
    `design.rows[${i}].${name}`,
    `design.rows[${i}] must give ${name} as a number: every row has the factors of the first`,
    { value, unit: factorFields[name].si },
  );
}

function namesOf(factors: readonly { readonly name: FactorName }[]): readonly FactorName[] {
  const names = factors.map(({ name }) => name);
  names.forEach((name, j) => {
    if (names.indexOf(name) !== j) {
      throw refusal(`design.factors[${j}].name`, `design.factors names ${name} twice`, { value: name });
    }
  });
  return names;
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
