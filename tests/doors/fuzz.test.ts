import { describe, expect, it } from 'vitest';
import { doors } from './doors.js';
import { COSTS, fuzzCall, type Outcome } from './fuzz/calls.js';

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
