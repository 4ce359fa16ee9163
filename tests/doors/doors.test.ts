import { describe, expect, it } from 'vitest';
import { isFairflightError } from '../../src/errors.js';
import {
  changed,
  declaredVerdict,
  numbersAbout,
  placesIn,
  type Verdict,
  valueAt,
  WRONG,
} from './declared.js';
import { type Door, doors } from './doors.js';

async function verdictOf(call: () => unknown): Promise<Verdict> {
  try {
    await call();
  } catch (error) {
    if (!isFairflightError(error)) throw error;
    return `${error.code} at ${error.field}`;
  }
  return 'fine';
}

async function compare(door: Door, k: number, value: unknown, what: string, faults: string[]): Promise<void> {
  const argument = door.args[k]!;
  const declared = declaredVerdict(argument, value);
  const args = door.args.map(({ valid }, i) => (i === k ? value : valid));
  const start = performance.now();
  let met: string;
  try {
    met = await verdictOf(() => door.call(...args));
  } catch (e) {
    met = `UNTYPED ${String(e)}`;
  }
  const took = performance.now() - start;
  if (took > 500) faults.push(`SLOW ${door.name} ${argument.root} ${what}: ${took.toFixed(0)} ms`);
  if (met !== declared && (declared !== 'fine' || met.startsWith('UNTYPED')))
    faults.push(`${door.name} ${argument.root} ${what}: declared ${declared}, met ${met}`);
}

describe.each(doors.map((door) => [door.name, door] as const))('%s', (_, door) => {
  it('is fine', async () => {
    await door.call(...door.args.map(({ valid }) => valid));
  });
  it('refuses alike', async () => {
    const faults: string[] = [];
    for (const [k, argument] of door.args.entries()) {
      for (const { keys, field } of placesIn(argument.field, argument.valid)) {
        const path = keys.join('.');
        for (const [name, wrong] of Object.entries(WRONG)) {
          await compare(door, k, changed(argument.valid, keys, wrong), `${path} ${name}`, faults);
        }
        for (const [name, [number]] of Object.entries(numbersAbout(field))) {
          if (field.kind === 'count' && name === 'at max') continue;
          await compare(door, k, changed(argument.valid, keys, number), `${path} ${name}`, faults);
        }
        const at = valueAt(argument.valid, keys);
        if (typeof at === 'object' && !Array.isArray(at))
          await compare(door, k, changed(argument.valid, [...keys, 'colour'], 1), `${path} unknown`, faults);
        if (keys.length > 0)
          await compare(door, k, changed(argument.valid, keys, undefined), `${path} missing`, faults);
      }
    }
    expect(faults).toEqual([]);
  });
});
