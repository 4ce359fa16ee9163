import { describe, expect, it } from 'vitest';
import { FairflightError } from '../../src/errors.js';
import { type RowStatus, rowStatuses } from '../../src/sweep/index.js';
import { door, open } from './door.js';
import { doors } from './doors.js';
import { COSTS, fuzzCall, judged, type Outcome } from './fuzz/calls.js';
import { ownError } from './fuzz/values.js';

const CALLS = 3000;

describe('a short run of the fuzz', () => {
  it('meets every door, and gets results and typed refusals only', async () => {
    const outcomes: Outcome[] = [];
    for (let k = 0; k < CALLS; k++) outcomes.push(await fuzzCall(1, k));
    expect(outcomes.filter(({ faults }) => faults.length > 0)).toEqual([]);
    expect(new Set(outcomes.map(({ door }) => door)).size).toBe(doors.length);
    const refusals = outcomes.filter(({ refused }) => refused).length;
    expect(refusals).toBeGreaterThan(0.3 * CALLS);
    expect(refusals).toBeLessThan(0.8 * CALLS);
  });
  it('makes the same call of the same seed and number', async () => {
    for (const k of [100, 101, 102]) expect(await fuzzCall(1, k)).toEqual(await fuzzCall(1, k));
  });
  it('knows the cost of no door that there is not', () => {
    const names = doors.map(({ name }) => name);
    expect(Object.keys(COSTS).filter((name) => !names.includes(name))).toEqual([]);
  });
});

describe('the judge of a call', () => {
  const kindsOf = async (call: (given: { x: number }) => unknown): Promise<unknown> => {
    const { faults } = await judged(door('none', call, open('given', {})), [{ x: 1 }]);
    return faults.map(([kind]) => kind);
  };
  it('sees an untyped throw, thrown or rejected, and lets the error of the caller pass', async () => {
    const fail = (error: Error) => (): never => {
      throw error;
    };
    expect(await kindsOf(fail(new TypeError('x')))).toEqual(['untyped throws']);
    expect(await kindsOf(() => Promise.reject(new RangeError('x')))).toEqual(['untyped throws']);
    expect(await kindsOf(fail(ownError))).toEqual([]);
    expect(await kindsOf(fail(new FairflightError('aborted', 'x')))).toEqual([]);
  });
  it('sees a number that is none, however deep', async () => {
    expect(await kindsOf(() => ({ a: [{ b: Number.NaN }] }))).toEqual(['NaN in a result']);
    expect(await kindsOf(() => Float64Array.of(1, Number.POSITIVE_INFINITY))).toEqual(['NaN in a result']);
    expect(await kindsOf(() => ({ a: [1, null, 'NaN'] }))).toEqual([]);
  });
  it('sees a change of what was given', async () => {
    expect(await kindsOf((given) => void Object.assign(given, { x: 2 }))).toEqual(['inputs changed']);
    expect(await kindsOf((given) => void Object.assign(given, { y: undefined }))).toEqual(['inputs changed']);
    expect(await kindsOf((given) => void Object.freeze(given))).toEqual([]);
  });
  it('lets a failed row of a sweep hold NaN, and no other', async () => {
    const about = { columns: [{ name: 'carry', role: 'output' }] };
    const rows = (status: RowStatus) => () => ({
      about,
      values: [Float64Array.of(Number.NaN)],
      status: Uint8Array.of(rowStatuses.indexOf(status)),
    });
    expect(await kindsOf(rows('no-strike'))).toEqual([]);
    expect(await kindsOf(rows('landed'))).toEqual(['NaN in a result']);
  });
});
