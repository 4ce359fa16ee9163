import { describe, expect, it } from 'vitest';
import { plainColumns } from '../../src/index.js';
import { doors, entries } from './doors.js';

/** Freezes to the bottom; typed arrays cannot be. */
function deepFrozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  for (const part of Object.values(value)) deepFrozen(part);
  return Object.freeze(value);
}

/** Every object that can be reached, each once. */
function* objectsIn(value: unknown, seen: Set<object> = new Set()): Generator<object> {
  if ((typeof value !== 'object' && typeof value !== 'function') || value === null || seen.has(value)) return;
  seen.add(value);
  if (typeof value === 'object') yield value;
  if (ArrayBuffer.isView(value)) return;
  for (const part of Object.values(value)) yield* objectsIn(part, seen);
}

/** Spoils everything in a value that can be written to. */
function spoil(value: unknown): void {
  for (const object of objectsIn(value)) {
    if (ArrayBuffer.isView(object)) (object as Float64Array).fill(0);
    else if (!Object.isFrozen(object)) {
      for (const key of Object.keys(object)) (object as Record<string, unknown>)[key] = 'spoilt';
      if (Array.isArray(object)) object.push('spoilt');
    }
  }
}

/** As the library tells users to; and JSON has no −0. */
function plain(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value === 'number') return value + 0;
  if (typeof value !== 'object' || value === null) return value;
  const lists = plainColumns(value) as unknown;
  return Array.isArray(lists)
    ? lists.map(plain)
    : Object.fromEntries(Object.entries(lists as object).map(([key, part]) => [key, plain(part)]));
}

/** Results that hold functions, which no copy can hold, each with the reason. */
const functions: readonly string[] = ['models.resolveModel'];
/** A column of the caller's own rows is itself. */
const ofTheCaller: readonly string[] = ['sweep.columnOf'];

describe.each(doors.map((door) => [door.name, door] as const))('%s', (name, { call, args }) => {
  const valid = (): readonly unknown[] => args.map((arg) => arg.valid);

  it('changes nothing that it is given', async () => {
    for (const arg of args) deepFrozen(arg.valid);
    await call(...valid());
  });
  it('gives a result that nobody else holds', async () => {
    if (ofTheCaller.includes(name)) return;
    const first = await call(...valid());
    const before = structuredCloneOf(first);
    spoil(first);
    expect(structuredCloneOf(await call(...valid()))).toEqual(before);
  });
  it('gives a result that survives JSON and structuredClone', async () => {
    if (functions.some((each) => name.startsWith(each))) return;
    const result = plain(await call(...valid()));
    expect(structuredClone(result)).toEqual(result);
    expect(JSON.parse(JSON.stringify(result) ?? 'null')).toEqual(result ?? null);
  });
});

/** A copy to the bottom; functions stay as they are. */
function structuredCloneOf(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(structuredCloneOf);
  if (typeof value !== 'object' || value === null) return value;
  if (ArrayBuffer.isView(value)) return structuredClone(value);
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, structuredCloneOf(part)]));
}

describe('everything exported', () => {
  it('is frozen to the bottom', () => {
    const open = Object.entries(entries).flatMap(([entry, face]) =>
      Object.entries(face).flatMap(([name, value]) =>
        typeof value === 'object' && [...objectsIn(value)].some((part) => !Object.isFrozen(part))
          ? [`${entry}.${name}`]
          : [],
      ),
    );
    expect(open).toEqual([]);
  });
});
