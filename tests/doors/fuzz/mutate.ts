import type { Field } from '../../../src/inputs/field.js';
import type { Stream } from '../../../src/numerics/index.js';
import { pathOf, placesIn } from '../declared.js';
import type { Door } from '../door.js';
import { mixedValue } from './values.js';

/** Somewhere in the arguments of a door. */
export interface Spot {
  /** Which argument. */
  readonly argument: number;
  /** Keys that lead to it; none for the argument itself. */
  readonly keys: readonly (string | number)[];
  /** Its name for people. */
  readonly path: string;
  /** Its declaration, where it has one. */
  readonly field: Field | undefined;
}

/** What is done to a spot: a value put there, an accessor put there, or the key taken away. */
export type Change =
  | { readonly what: string; readonly value: unknown }
  | { readonly what: string; readonly get: () => unknown }
  | { readonly what: string; readonly gone: true };

/** Every declared field of the arguments, given or not, and whatever else they hold. */
export function spotsIn(door: Door): readonly Spot[] {
  return door.args.flatMap((argument, i) => {
    const fields = new Map(
      placesIn(argument.field, argument.valid).map(({ keys, field }) => [
        JSON.stringify(keys),
        { keys, field },
      ]),
    );
    for (const keys of keysWithin(argument.valid)) {
      const key = JSON.stringify(keys);
      if (!fields.has(key))
        fields.set(key, { keys, field: argument.field.kind === 'custom' ? argument.field : UNDECLARED });
    }
    return [...fields.values()].map(({ keys, field }) => ({
      argument: i,
      keys,
      path: pathOf(argument, keys) || argument.root,
      field: field.kind === 'custom' ? undefined : field,
    }));
  });
}

const UNDECLARED: Field = { kind: 'custom', read: (value) => value, label: '' };

/** Keys that lead to everything within a value; of a long list the ends. */
function* keysWithin(
  value: unknown,
  keys: readonly (string | number)[] = [],
): Generator<readonly (string | number)[]> {
  yield keys;
  if (typeof value !== 'object' || value === null) return;
  if (Array.isArray(value) || ArrayBuffer.isView(value)) {
    const list = value as ArrayLike<unknown>;
    for (const i of new Set([0, 1, list.length - 1])) {
      if (i >= 0 && i < list.length) yield* keysWithin(list[i], [...keys, i]);
    }
    return;
  }
  for (const [key, part] of Object.entries(value)) yield* keysWithin(part, [...keys, key]);
}

/** A copy to the bottom that can be written to; functions and objects of classes stay themselves. */
export function copyOf(value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(copyOf);
  if (ArrayBuffer.isView(value)) return structuredClone(value);
  if (Object.getPrototypeOf(value) !== Object.prototype) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, copyOf(part)]));
}

/** Changes one of the spots in the arguments and says how; says nothing where an earlier change took the spot away. */
export function mutate(args: unknown[], spots: readonly Spot[], draw: Stream): string {
  const spot = spots[draw.integer(spots.length)];
  if (spot === undefined) return '';
  const keys = [spot.argument, ...spot.keys];
  const last = keys.pop() as string | number;
  const holder = keys.reduce<unknown>(heldAt, args);
  if (typeof holder !== 'object' || holder === null || isProxyOrClass(holder)) return '';
  let change: Change | undefined;
  try {
    change = mixedValue(spot, heldAt(holder, last), draw);
  } catch {
    // What was to be copied throws by an earlier change.
    return '';
  }
  if (change === undefined || !put(holder, last, change)) return '';
  return `${spot.path} ${change.what}`;
}

/** What an object holds; an accessor is not called. */
function heldAt(holder: unknown, key: string | number): unknown {
  if (typeof holder !== 'object' || holder === null || isProxyOrClass(holder)) return undefined;
  return Object.getOwnPropertyDescriptor(holder, key)?.value;
}

function isProxyOrClass(value: object): boolean {
  try {
    // Throws where the value is a proxy that does.
    Reflect.ownKeys(value);
    return (
      !Array.isArray(value) && !ArrayBuffer.isView(value) && Object.getPrototypeOf(value) !== Object.prototype
    );
  } catch {
    return true;
  }
}

function put(holder: object, key: string | number, change: Change): boolean {
  if (ArrayBuffer.isView(holder)) {
    if (!('value' in change) || typeof change.value !== 'number') return false;
    (holder as Float64Array)[key as number] = change.value;
    return true;
  }
  if ('gone' in change) return Reflect.deleteProperty(holder, key);
  const rest = { enumerable: true, configurable: true };
  return Reflect.defineProperty(
    holder,
    key,
    'get' in change ? { get: change.get, ...rest } : { value: change.value, writable: true, ...rest },
  );
}
