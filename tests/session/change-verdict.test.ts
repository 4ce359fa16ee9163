import { describe, expect, it } from 'vitest';
import { type DrawnInterval, hangsOn, verdictOf, WORTH } from '../../src/session/change-verdict.js';
import { yards } from '../../src/units/index.js';

const gain = (value: number, low: number, high: number): DrawnInterval => ({
  value: yards(value),
  low: yards(low),
  high: yards(high),
});
const judged = (of: DrawnInterval, other?: DrawnInterval): string =>
  verdictOf({ gain: of, worth: WORTH, ...(other && { other }), measure: [], shots: 14 });

// A fitting is worth its trouble from about three yards on; common practice, no source.
describe('a change is advised', () => {
  it('from 3 yd on, and not below', () => {
    expect(judged(gain(3.05, 0.5, 6))).toBe('advised');
    expect(judged(gain(2.95, 0.5, 6))).toBe('not-worth-it');
    expect(judged(gain(0.1, -1, 1))).toBe('not-worth-it');
    expect(judged(gain(-4, -9, -1))).toBe('leave');
    expect(judged(gain(0, -1, 2))).toBe('leave');
  });
  it('only when it is clear of bringing nothing', () => {
    expect(judged(gain(8, 0.1, 15))).toBe('advised');
    expect(judged(gain(8, -0.1, 16))).toBe('not-clear');
  });
  it('not when it surely costs the other distance', () => {
    expect(judged(gain(8, 2, 15), gain(-4, -9, 0.5))).toBe('advised');
    expect(judged(gain(8, 2, 15), gain(-4, -9, -0.5))).toBe('costs-the-other');
  });
  it('not where only training brings it, however much that is', () => {
    const training = true;
    expect(verdictOf({ gain: gain(8, 5, 11), worth: WORTH, measure: [], shots: 14, training })).toBe(
      'by-training',
    );
    expect(verdictOf({ gain: gain(2, 1, 3), worth: WORTH, measure: [], shots: 14, training })).toBe(
      'not-worth-it',
    );
    expect(verdictOf({ gain: gain(8, -1, 11), worth: WORTH, measure: [], shots: 14, training })).toBe(
      'not-clear',
    );
  });
  it('not from fewer than five shots', () => {
    const of = (shots: number): string =>
      verdictOf({ gain: gain(8, 2, 15), worth: WORTH, measure: [], shots });
    expect([4, 5].map(of)).toEqual(['too-few-shots', 'advised']);
  });
  it('not before what it hangs on is measured', () => {
    const measure = ['attackAngle'] as const;
    expect(verdictOf({ gain: gain(8, 2, 15), worth: WORTH, measure, shots: 14 })).toBe('measure-first');
  });
});

describe('a worth hangs on something assumed', () => {
  const assumed = [-4, -3, -2, -1, 0, 1, 2, 3, 4];
  it('when one end of what players do makes it worth it and the other does not', () => {
    expect(hangsOn(assumed, [9, 8, 7, 5, 4, 3, 1, 0, -1], 3)).toBe(true);
    expect(hangsOn(assumed, [-1, 0, 1, 3, 4, 5, 7, 8, 9], 3)).toBe(true);
  });
  it('not when it is worth it, or is not, at both', () => {
    expect(hangsOn(assumed, [9, 8, 7, 5, 4, 5, 7, 8, 9], 3)).toBe(false);
    expect(hangsOn(assumed, [1, 0, 1, 9, 9, 9, 1, 0, 1], 3)).toBe(false);
  });
});
