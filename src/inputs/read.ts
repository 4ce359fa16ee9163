import { describe, isList, isRecord } from '../errors.js';
import type { Declared, Field, Fields, ListField, NamedField, QuantityField, VariantField } from './field.js';
import { memberPath, refusal, refuseQuantity, refuseType } from './refuse.js';

/** Names of fields that a message lists; more would bury what it says. */
const MOST_NAMES = 24;

/** Share of an end of a range by which a unit's rounding may miss it: −50 °C is 223.14999999999998 K. */
const ROUNDING = 1e-12;

/** True for a number within a field's range. @internal */
export function allows({ min, max }: QuantityField, value: unknown): boolean {
  // False for NaN; the range is finite.
  return (
    typeof value === 'number' &&
    value >= min - ROUNDING * Math.abs(min) &&
    value <= max + ROUNDING * Math.abs(max)
  );
}

/** A quantity of one's own: the number when its field allows it. @throws FairflightError @internal */
export function readQuantity(field: QuantityField, value: unknown, path: string): number {
  if (!allows(field, value)) throw refuseQuantity(field, value, path);
  return value as number;
}

/**
 * Reads a record by its declaration: every field once, into a copy, so that nothing the caller changes later, and no
 * getter that changes its answer, reaches a result. Only the record's own fields count.
 * @throws `FairflightError` for an unknown or missing field or a bad value, with the path the caller wrote
 * @internal
 */
export function readRecord<T extends object>(fields: Declared<T>, value: unknown, path: string): T {
  return readFields(fields as Fields, value, path) as T;
}

/** {@link readRecord} where the record may be left out whole. @internal */
export function readOptions<T extends object>(fields: Declared<T>, value: unknown, path = 'options'): T {
  return value === undefined ? ({} as T) : readRecord(fields, value, path);
}

function readFields(fields: Fields, value: unknown, path: string): object {
  const record = requireKnown(fields, value, path);
  const copy: Record<string, unknown> = {};
  for (const name in fields) {
    const field = fields[name] as Field;
    const given = record[name];
    if (given === undefined && field.optional === true) continue;
    // Nearly every value is a number that is fine: no path is written for those.
    if (field.kind === 'quantity' && allows(field, given)) {
      copy[name] = given;
      continue;
    }
    copy[name] = readField(field, given, `${path}.${name}`);
  }
  return copy;
}

/**
 * The value as a record when all its keys are known.
 * @throws `FairflightError` `invalid-input` for another type, an unknown or an inherited key
 * @internal
 */
export function requireKnown(
  fields: Readonly<Record<string, unknown>>,
  value: unknown,
  path: string,
): Readonly<Record<string, unknown>> {
  if (!isRecord(value)) throw refuseType(path, 'an object', value);
  for (const key in value) {
    if (!Object.hasOwn(value, key)) {
      throw refusal(memberPath(path, key), `${path} inherits ${describe(key)}; give its fields as its own`, {
        value,
      });
    }
    if (!Object.hasOwn(fields, key)) throw refuseUnknown(fields, key, path);
  }
  return value;
}

function refuseUnknown(fields: Readonly<Record<string, unknown>>, key: string, path: string): Error {
  const names = Object.keys(fields);
  const known = names.slice(0, MOST_NAMES).join(', ');
  const more = names.length > MOST_NAMES ? ' and more' : '';
  const text = names.length === 0 ? 'it has none' : `known fields: ${known}${more}`;
  return refusal(memberPath(path, key), `${path} has no field ${describe(key)}; ${text}`);
}

/** Reads one value by its field. @throws FairflightError @internal */
export function readField(field: Field, value: unknown, path: string): unknown {
  switch (field.kind) {
    case 'quantity':
      return readQuantity(field, value, path);
    case 'count':
      if (typeof value === 'number' && Number.isInteger(value) && value >= field.min && value <= field.max) {
        return value;
      }
      throw refuseCount(field, value, path);
    case 'choice':
      return readChoice(field.names, value, path);
    case 'text':
      if (typeof value !== 'string') throw refuseType(path, 'a text', value);
      return value;
    case 'flag':
      if (typeof value !== 'boolean') throw refuseType(path, 'true or false', value);
      return value;
    case 'record': {
      const record = readFields(field.fields, value, path);
      field.relate?.(record as never, path);
      return record;
    }
    case 'variant':
      return readVariant(field, value, path);
    case 'list':
      return readList(field, value, path);
    case 'named':
      return readNamed(field, value, path);
    case 'custom':
      return field.read(value, path);
  }
}

function refuseCount(
  field: { readonly min: number; readonly max: number },
  value: unknown,
  path: string,
): Error {
  const range = [field.min, field.max] as const;
  const wanted = `a whole number between ${field.min} and ${field.max}`;
  if (typeof value !== 'number' || !Number.isFinite(value)) return refuseType(path, wanted, value);
  return refusal(
    path,
    `${path} must be ${wanted}, got ${value}`,
    { value, range },
    Number.isInteger(value) ? 'outside-range' : 'invalid-input',
  );
}

/** One of the names. @throws FairflightError @internal */
export function readChoice<Name extends string>(names: readonly Name[], value: unknown, path: string): Name {
  const found = names.find((name) => name === value);
  if (found === undefined) throw refuseType(path, `one of ${names.join(', ')}`, value);
  return found;
}

function readVariant({ by, cases }: VariantField, value: unknown, path: string): object {
  // The name is looked at first: it says which fields there are.
  if (!isRecord(value)) throw refuseType(path, 'an object', value);
  const names = Object.keys(cases);
  const name = readChoice(names, Object.hasOwn(value, by) ? value[by] : undefined, `${path}.${by}`);
  const fields = cases[name] as Fields;
  const choice: Field = { kind: 'choice', names: [name], example: name, label: by };
  return readFields({ [by]: choice, ...fields }, value, path);
}

/** Reads every entry of a list. @throws FairflightError @internal */
export function readList(
  field: Omit<ListField, 'label' | 'kind'>,
  value: unknown,
  path: string,
): readonly unknown[] {
  if (!isList(value)) throw refuseType(path, 'a list', value);
  const { length } = value;
  if (!(length >= field.least && length <= field.most)) {
    const wanted = field.least === field.most ? `${field.least}` : `${field.least} to ${field.most}`;
    throw refusal(path, `${path} must have ${wanted} entries, it has ${length}`, { value: length });
  }
  const copy: unknown[] = [];
  for (let i = 0; i < length; i++) copy.push(readField(field.of, value[i], `${path}[${i}]`));
  return copy;
}

function readNamed({ presets, of }: NamedField, value: unknown, path: string): unknown {
  if (isRecord(value)) return readField(of, value, path);
  const names = Object.keys(presets);
  if (typeof value !== 'string') throw refuseType(path, `a record or one of ${names.join(', ')}`, value);
  return presets[readChoice(names, value, path)];
}
