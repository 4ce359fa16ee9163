import { describe, expect, it } from 'vitest';
import { isFairflightError } from '../../src/errors.js';
import {
  type Argument,
  changed,
  declaredVerdict,
  numbersAbout,
  pathOf,
  placesIn,
  type Verdict,
  valueAt,
  WRONG,
} from './declared.js';
import type { Door } from './door.js';
import { doors, elsewhere, entries } from './doors.js';

/** One value to be tried in an argument. */
interface Trial {
  readonly what: string;
  readonly value: unknown;
  /** What must come of it by the range alone. */
  readonly expected?: Verdict;
}

/** Every declared field of an argument × everything that it may be given. */
function* trialsOf(argument: Argument): Generator<Trial> {
  const { valid } = argument;
  for (const { keys, field } of placesIn(argument.field, valid)) {
    const path = pathOf(argument, keys);
    for (const [name, wrong] of Object.entries(WRONG)) {
      yield { what: `${path} = ${name}`, value: changed(valid, keys, wrong) };
    }
    for (const [name, { value, verdict }] of Object.entries(numbersAbout(field))) {
      // The largest count of rows, shots or resamples would take all day.
      if (field.kind === 'count' && name === 'at max') continue;
      const trial = { what: `${path} ${name}`, value: changed(valid, keys, value) };
      yield verdict === 'fine' ? trial : { ...trial, expected: `${verdict} at ${path}` };
    }
    const at = valueAt(valid, keys);
    if (typeof at === 'object' && at !== null && !Array.isArray(at) && field.kind !== 'custom') {
      const unknown = { what: `${path}.colour`, value: changed(valid, [...keys, 'colour'], 1) };
      const refused = `invalid-input at ${path === '' ? argument.root : path}.colour`;
      yield { ...unknown, expected: argument.lax === true ? 'fine' : refused };
    }
    // Where a count is left out, its default would be computed.
    if (keys.length > 0 && field.kind !== 'count') {
      yield { what: `${path} left out`, value: changed(valid, keys, undefined) };
    }
  }
}

async function outcomeOf(call: () => unknown): Promise<Verdict> {
  try {
    await call();
    return 'fine';
  } catch (error) {
    return isFairflightError(error) ? `${error.code} at ${error.field}` : `untyped: ${String(error)}`;
  }
}

/** What is not as it should be at a door. */
async function faultsOf(door: Door): Promise<readonly string[]> {
  const faults: string[] = [];
  let fine = 0;
  for (const [k, argument] of door.args.entries()) {
    for (const { what, value, expected } of trialsOf(argument)) {
      const declared = declaredVerdict(argument, value);
      if (expected !== undefined && declared !== expected) {
        faults.push(`${what}: must be ${expected}, the declaration says ${declared}`);
      }
      if (declared === 'fine' && door.slow === true && fine++ % 10 > 0) continue;
      const met = await outcomeOf(() =>
        door.call(...door.args.map((arg, i) => (i === k ? value : arg.valid))),
      );
      // A value that is fine by itself may contradict another; that is said by name as well.
      const alike = declared === 'fine' ? !/^untyped|undefined$/.test(met) : met === declared;
      if (!alike) faults.push(`${what}: the declaration says ${declared}, the door ${met}`);
    }
  }
  return faults;
}

describe.each(doors.map((door) => [door.name, door] as const))('%s', (_, door) => {
  it('takes its arguments', async () => {
    await door.call(...door.args.map(({ valid }) => valid));
  });
  it('gives each value of each field the verdict of its declaration, under the same path', async () => {
    expect(await faultsOf(door)).toEqual([]);
  });
  it('without its arguments gives a result or a refusal', async () => {
    for (let given = 0; given < door.args.length; given++) {
      if (door.slow === true && door.args[given]?.field.optional === true) continue;
      const args = door.args.slice(0, given).map(({ valid }) => valid);
      expect(await outcomeOf(() => door.call(...args))).not.toMatch(/^untyped|undefined$/);
    }
  });
});

describe('the table of doors', () => {
  const named = new Set([...doors.map(({ name }) => name.split(' (')[0]), ...Object.keys(elsewhere)]);
  const { units = {}, ...others } = entries;
  const all = Object.entries(others).flatMap(([entry, face]) =>
    Object.entries(face)
      .filter(([name, value]) => typeof value === 'function' && !(name in units))
      .map(([name]) => `${entry}.${name}`),
  );
  it('has every public function', () => {
    expect(all.filter((name) => !named.has(name))).toEqual([]);
  });
  it('has nothing else', () => {
    expect([...named].filter((name) => !all.includes(name ?? ''))).toEqual([]);
  });
});
