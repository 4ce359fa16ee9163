import { isList, isRecord } from '../errors.js';
import type { Fields, QuantityField } from './field.js';
import { allows, requireKnown } from './read.js';
import { refusal, refuseQuantity, refuseType } from './refuse.js';

/** Numbers of one quantity, a row each. */
export type NumberColumn = Float64Array | readonly number[];

/**
 * Reads columns of equal length by the fields of a record: each number is checked like the field itself. Plain lists,
 * as JSON gives them, become typed arrays.
 * @param rows - length every column must have; from the first one when left out
 * @throws FairflightError naming column and row, as `launches.ballSpeed[17]`
 * @internal
 */
export function readColumns<Name extends string>(
  fields: Readonly<Record<Name, QuantityField & { readonly optional?: true }>>,
  value: unknown,
  path: string,
  rows?: { readonly count: number; readonly like: string },
): { readonly count: number; readonly columns: { readonly [K in Name]?: Float64Array } } {
  const given = requireKnown(fields as Fields, value, path);
  const columns: { [K in Name]?: Float64Array } = {};
  let expected = rows;
  for (const name of Object.keys(fields) as Name[]) {
    const field = fields[name];
    const column = given[name];
    if (column === undefined && field.optional === true) continue;
    const numbers = readColumn(field, column, `${path}.${name}`);
    expected ??= { count: numbers.length, like: `${path}.${name}` };
    if (numbers.length !== expected.count) {
      throw refusal(
        `${path}.${name}`,
        `${path}.${name} has ${numbers.length} rows, ${expected.like} has ${expected.count}`,
        { value: numbers.length },
      );
    }
    columns[name] = numbers;
  }
  return { count: expected?.count ?? 0, columns };
}

/** True for a typed column. @internal */
export function isTyped(column: unknown): column is Float64Array {
  // A proxy may throw where it is asked for its class; it is no view of a buffer.
  return ArrayBuffer.isView(column) && column instanceof Float64Array;
}

/** Reads one column. @throws FairflightError naming the row, as `launches.ballSpeed[17]` @internal */
export function readColumn(field: QuantityField, column: unknown, path: string): Float64Array {
  const typed = isTyped(column);
  if (!typed && !isList(column)) throw refuseType(path, 'a Float64Array or a list of numbers', column);
  const { length } = column;
  const numbers = typed ? column : new Float64Array(length);
  for (let i = 0; i < length; i++) {
    const value = column[i];
    if (!allows(field, value)) throw refuseQuantity(field, value, `${path}[${i}]`);
    if (!typed) numbers[i] = value as number;
  }
  return numbers;
}

/** A record with lists in the place of its typed arrays. */
export type PlainColumns<T> = T extends number | string | boolean | undefined
  ? T
  : T extends ArrayBufferView
    ? readonly number[]
    : { readonly [K in keyof T]: PlainColumns<T[K]> };

/**
 * Columns as plain lists, which JSON keeps: `JSON.stringify(plainColumns(flights))`. A typed array by itself becomes
 * `{"0":…}` there. `structuredClone` needs no help.
 * @param columns - a record with typed arrays in it, for example from `flyMany`, `carryMap` or `sweep`, or a typed array
 * @throws `FairflightError` `invalid-input` when it is neither
 */
export function plainColumns<T extends object>(columns: T): PlainColumns<T> {
  if (!isRecord(columns) && !ArrayBuffer.isView(columns)) {
    throw refuseType('columns', 'a record of columns', columns);
  }
  return plainPart(columns, 'columns', []) as PlainColumns<T>;
}

/** Records in records that are looked into: no result is as deep. */
const DEEPEST = 32;

function plainPart(value: unknown, path: string, around: readonly unknown[]): unknown {
  if (ArrayBuffer.isView(value)) return Array.from(value as unknown as ArrayLike<number>);
  const list = isList(value);
  if (!list && !isRecord(value)) return value;
  if (around.length === DEEPEST || around.includes(value)) {
    throw refusal(path, `${path} lies in a ring, or more than ${DEEPEST} records deep`);
  }
  const within = [...around, value];
  if (list) return value.map((part, i) => plainPart(part, `${path}[${i}]`, within));
  const parts = Object.entries(value).map(([name, part]) => [
    name,
    plainPart(part, `${path}.${name}`, within),
  ]);
  return Object.fromEntries(parts);
}
