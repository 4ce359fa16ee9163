import { isFairflightError } from '../../src/errors.js';
import type { Field, Fields } from '../../src/inputs/field.js';
import { readField, requireKnown } from '../../src/inputs/read.js';

/** One argument of a door: what is declared of it, and a value that is fine in every field. */
export interface Argument {
  /** Name under which errors speak of it; none where each of its fields is a root of its own. */
  readonly root: string;
  readonly field: Field;
  readonly valid: unknown;
  /** Set where the fields are named without the record around them, as `hole.length` of a question. */
  readonly apart?: true;
  /** How the whole is read where it may be one of two records. */
  readonly read?: (value: unknown) => unknown;
  /** Set where fields that are not declared play no part. */
  readonly lax?: true;
}

/** One declared field within an argument. */
export interface Place {
  /** Keys that lead to it in the valid value. */
  readonly keys: readonly (string | number)[];
  readonly field: Field;
}

/** What an argument is met with: nothing, or the code and path of a refusal. */
export type Verdict = string;

/** The verdict of the declaration alone. */
export function declaredVerdict({ root, field, apart, read }: Argument, value: unknown): Verdict {
  return verdictOf(() => {
    if (read !== undefined) {
      read(value);
      return;
    }
    if (value === undefined && field.optional === true) return;
    if (apart !== true || field.kind !== 'record') {
      readField(field, value, root);
      return;
    }
    const given = requireKnown(field.fields, value, root);
    for (const [name, part] of Object.entries(field.fields)) {
      if (given[name] === undefined && part.optional === true) continue;
      readField(part, given[name], name);
    }
  });
}

/** The verdict in words that can be compared: `fine`, or code and path. Errors of another kind pass. */
export function verdictOf(action: () => unknown): Verdict {
  try {
    action();
  } catch (error) {
    if (!isFairflightError(error)) throw error;
    return `${error.code} at ${error.field}`;
  }
  return 'fine';
}

/** An ordinary value of a field, with every optional part of it; a custom field has none. */
export function exampleOf(field: Field): unknown {
  switch (field.kind) {
    case 'flag':
      return true;
    case 'record':
      return examplesOf(field.fields);
    case 'variant': {
      const [name = '', fields = {}] = Object.entries(field.cases)[0] ?? [];
      return { [field.by]: name, ...examplesOf(fields) };
    }
    case 'list':
      return Array.from({ length: Math.max(field.least, 1) }, () => exampleOf(field.of));
    case 'custom':
      return undefined;
    default:
      return field.example;
  }
}

/** {@link exampleOf} every field of a record. */
export function examplesOf(fields: Fields): Record<string, unknown> {
  const examples: Record<string, unknown> = {};
  for (const [name, field] of Object.entries(fields)) {
    const example = exampleOf(field);
    if (example !== undefined) examples[name] = example;
  }
  return examples;
}

/** Every declared field within a value, the value itself first. */
export function placesIn(field: Field, value: unknown, keys: readonly (string | number)[] = []): Place[] {
  const here: Place = { keys, field };
  const below = (fields: Fields): Place[] =>
    Object.entries(fields).flatMap(([name, part]) =>
      placesIn(part, (value as Record<string, unknown> | undefined)?.[name], [...keys, name]),
    );
  if (typeof value !== 'object' || value === null) return [here];
  switch (field.kind) {
    case 'record':
      return [here, ...below(field.fields)];
    case 'variant':
      return [here, ...below(field.cases[String((value as Record<string, unknown>)[field.by])] ?? {})];
    case 'named':
      return [here, ...placesIn(field.of, value, keys).slice(1)];
    case 'list':
      return [here, ...placesIn(field.of, (value as readonly unknown[])[0], [...keys, 0])];
    default:
      return [here];
  }
}

/** A copy with another value at one place. */
export function changed(value: unknown, keys: readonly (string | number)[], to: unknown): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return to;
  const copy = (Array.isArray(value) ? [...value] : { ...(value as object) }) as Record<string, unknown>;
  const next = changed(copy[key], rest, to);
  if (next === undefined && typeof key === 'string') delete copy[key];
  else copy[key] = next;
  return copy;
}

/** The path that an error gives a place. */
export function pathOf({ root, apart }: Argument, keys: readonly (string | number)[]): string {
  const path = keys.map((key) => (typeof key === 'number' ? `[${key}]` : `.${key}`)).join('');
  return apart === true ? path.slice(1) : `${root}${path}`;
}

/** The value at a place. */
export function valueAt(value: unknown, keys: readonly (string | number)[]): unknown {
  return keys.reduce<unknown>((part, key) => (part as Record<string, unknown>)[key], value);
}

const cyclic: { self?: unknown } = {};
cyclic.self = cyclic;

/** A proxy that throws at every look. */
export function revoked(): object {
  const { proxy, revoke } = Proxy.revocable({}, {});
  revoke();
  return proxy;
}

/** Values of a wrong type for nearly every field, each with a name. */
export const WRONG: Readonly<Record<string, unknown>> = {
  null: null,
  text: 'no such thing',
  'long text': 'x'.repeat(10_000),
  true: true,
  NaN: Number.NaN,
  Infinity: Number.POSITIVE_INFINITY,
  '-Infinity': Number.NEGATIVE_INFINITY,
  BigInt: 10n,
  symbol: Symbol('x'),
  function: () => 1,
  'empty object': {},
  'empty list': [],
  'cyclic object': cyclic,
  'revoked proxy': revoked(),
  promise: Promise.resolve({}),
  'inherited keys': Object.create({ inherited: 1 }),
  'own __proto__': JSON.parse('{"__proto__": {"x": 1}}'),
  Map: new Map([['x', 1]]),
  Date: new Date(0),
  'typed array': new Float64Array(2),
};

/** Where a number stands to its range, and the code of the refusal, or `fine`. */
export function numbersAbout(
  field: Field,
): Readonly<Record<string, { readonly value: number; readonly verdict: Verdict }>> {
  if (field.kind !== 'quantity' && field.kind !== 'count') return {};
  const { min, max, example } = field;
  const step = field.kind === 'count' ? 1 : (max - min) * 1e-6;
  return {
    below: { value: min - step, verdict: 'outside-range' },
    'at min': { value: min, verdict: 'fine' },
    inside: { value: example, verdict: 'fine' },
    'at max': { value: max, verdict: 'fine' },
    above: { value: max + Math.max(step, 2 * (max - min) * Number.EPSILON), verdict: 'outside-range' },
    ...(field.kind === 'count' &&
      min < max && { 'between whole numbers': { value: min + 0.5, verdict: 'invalid-input' } }),
  };
}
