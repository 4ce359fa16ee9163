import { isList, isRecord } from '../errors.js';
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
import { allows, readField, readList, requireKnown } from '../inputs/read.js';
import { memberPath, refusal, refuseQuantity, refuseType } from '../inputs/refuse.js';
import { seedField } from '../inputs/seed.js';
import { cholesky } from '../numerics/linear-algebra.js';
import type { SobolScramble } from '../numerics/sobol.js';
import type { Design, GridFactor, ListDesign, NormalFactors, RandomFactor, RangeFactor } from './design.js';
import { type FactorName, factorFields, requireFactor } from './factors.js';

/** A list as columns. @internal */
export interface ReadList {
  readonly kind: 'list';
  readonly names: readonly FactorName[];
  readonly columns: readonly Float64Array[];
}

/** A design as read. Plain data. @internal */
export type ReadDesign = Exclude<Design, ListDesign> | ReadList;

const SCRAMBLES: readonly SobolScramble[] = ['none', 'shift', 'owen'];

/** Declaration of {@link Design}. @internal */
export const designField: VariantField = /* @__PURE__ */ frozen(() => {
  const seed = optional(seedField);
  const factors = listOf(readRandom, 'factors');
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
 * Reads a design.
 * @throws `FairflightError` that names the factor and its allowed range
 * @internal
 */
export function readDesign(value: unknown): ReadDesign {
  const design = readField(designField, value, 'design') as Exclude<Design, ListDesign> | ListAsRead;
  if (design.kind === 'list') return { kind: 'list', ...design.rows };
  const seen = new Set<FactorName>();
  (design.factors as readonly (GridFactor | RandomFactor)[]).forEach((factor, j) => {
    for (const name of 'names' in factor ? factor.names : [factor.name]) {
      if (seen.has(name)) {
        const field = 'names' in factor ? 'names' : 'name';
        throw refusal(`design.factors[${j}].${field}`, `design.factors names ${name} twice`, { value: name });
      }
      seen.add(name);
    }
  });
  return design;
}

interface ListAsRead {
  readonly kind: 'list';
  readonly rows: Omit<ReadList, 'kind'>;
}

const STEPS: Field = /* @__PURE__ */ frozen(() => count(2, 2 ** 30, 10, 'steps'));

function readRandom(value: unknown, path: string): unknown {
  if (isRecord(value) && 'covariance' in value) return readNormal(value, path);
  return readEnds(requireKnown(RANGE_KEYS, value, path), path);
}

function readGridFactor(value: unknown, path: string): unknown {
  const given = requireKnown({ ...RANGE_KEYS, steps: true, values: true }, value, path);
  const { values } = given;
  if (values === undefined) {
    return { ...readEnds(given, path), steps: readField(STEPS, given['steps'], `${path}.steps`) };
  }
  const name = requireFactor(`${path}.name`, requireKnown({ name: true, values: true }, value, path)['name']);
  const of = factorFields[name];
  return { name, values: readList({ of, least: 1, most: 2 ** 30 }, values, `${path}.values`) };
}

function readNormal(value: unknown, path: string): NormalFactors {
  const given = requireKnown({ names: true, mean: true, covariance: true }, value, path);
  const named: CustomField = { kind: 'custom', read: (name, at) => requireFactor(at, name), label: 'name' };
  const names = readList({ of: named, least: 1, most: 32 }, given['names'], `${path}.names`) as FactorName[];
  const mean = readList(
    { of: NUMBER, least: names.length, most: names.length },
    given['mean'],
    `${path}.mean`,
  ) as number[];
  names.forEach((name, j) => {
    const field = factorFields[name];
    const at = `${path}.mean[${j}]`;
    if (!allows(field, mean[j])) throw refuseQuantity(field, mean[j], at, `${at} of ${name}`);
  });
  const row: Field = { kind: 'list', of: NUMBER, least: names.length, most: names.length, label: 'row' };
  const covariance = readList(
    { of: row, least: names.length, most: names.length },
    given['covariance'],
    `${path}.covariance`,
  ) as number[][];
  const at = (j: number, k: number): number => covariance[j]?.[k] ?? 0;
  const uneven = names.some((_, j) =>
    names.some((__, k) => Math.abs(at(j, k) - at(k, j)) > ROUNDING * Math.sqrt(at(j, j) * at(k, k))),
  );
  if (uneven || cholesky(covariance) === undefined) {
    throw refusal(`${path}.covariance`, `${path}.covariance must be symmetric and positive definite`, {
      value: covariance,
    });
  }
  return { names, mean, covariance };
}

/** What arithmetic may leave of a symmetric matrix, as a correlation. */
const ROUNDING = 1e-9;

const NUMBER: CustomField = {
  kind: 'custom',
  read: (value, path) => {
    if (typeof value === 'number' && Number.isFinite(value)) return value;
    throw refuseType(path, 'a number', value);
  },
  label: 'number',
};

const RANGE_KEYS = { name: true, from: true, to: true };

function readEnds(given: Readonly<Record<string, unknown>>, path: string): RangeFactor {
  const name = requireFactor(`${path}.name`, given['name']);
  const field = factorFields[name];
  const end = (key: 'from' | 'to'): number => {
    const value = given[key];
    if (allows(field, value)) return value as number;
    throw refuseQuantity(field, value, `${path}.${key}`, `${path}.${key} of ${name}`);
  };
  return { name, from: end('from'), to: end('to') } as RangeFactor;
}

/** The rows of a list as columns. A number may lie outside its range: the row then says so in its status. */
function readRows(rows: unknown, path: string): Omit<ReadList, 'kind'> {
  if (!isList(rows)) throw refuseType(path, 'a list', rows);
  if (rows.length === 0) throw refusal(path, `${path} must be a list with at least one row`);
  const first = requireKnown(factorFields, rows[0], `${path}[0]`);
  const names = Object.keys(first) as FactorName[];
  if (names.length === 0) throw refusal(`${path}[0]`, `${path}[0] must name at least one factor`);
  const known = Object.fromEntries(names.map((name) => [name, true]));
  const columns = names.map((): number[] => []);
  for (let i = 0; i < rows.length; i++) {
    const row = requireKnown(known, rows[i], `${path}[${i}]`);
    names.forEach((name, j) => {
      const value = row[name];
      if (typeof value !== 'number') throw refuseRow(value, `${path}[${i}]`, name);
      columns[j]?.push(value);
    });
  }
  return { names, columns: columns.map((column) => Float64Array.from(column)) };
}

function refuseRow(value: unknown, row: string, name: FactorName): Error {
  return refusal(
    memberPath(row, name),
    `${row} must give ${name} as a number: every row has the factors of the first`,
    { value, unit: factorFields[name].si },
  );
}
