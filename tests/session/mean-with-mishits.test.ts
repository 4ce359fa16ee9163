import { describe, expect, it } from 'vitest';
import { meanInterval, stream } from '../../src/numerics/index.js';
import { meanIntervalWithMishits } from '../../src/session/mean-with-mishits.js';

const DRAWS = 4000;

/** Share of the samples whose interval holds the true mean, and how much wider than Student's they are on average. */
function held(count: number, share: number): { readonly covered: number; readonly wider: number } {
  const { normal, uniform } = stream(11, count);
  // A mishit loses 10 to 30 % of 200 yd: invented.
  const truth = 200 - share * 40;
  let covered = 0;
  let width = 0;
  let plain = 0;
  for (let draw = 0; draw < DRAWS; draw++) {
    const carries = Array.from({ length: count }, () => {
      const carry = 200 + 8 * normal();
      return uniform() < share ? carry * (0.7 + 0.2 * uniform()) : carry;
    });
    const interval = meanIntervalWithMishits(carries, 'carry', 0.95);
    const student = meanInterval(carries, 0.95);
    if (interval.low <= truth && truth <= interval.high) covered += 1;
    width += interval.high - interval.low;
    plain += student.high - student.low;
  }
  return { covered: covered / DRAWS, wider: width / plain };
}

// Two standard errors of 4,000 draws are 0.7 %.
describe('the interval of a mean holds mishits not yet seen', () => {
  it.each([5, 10, 20])('95 of 100 times and hardly less with one in ten, %i shots', (count) => {
    expect(held(count, 0.1).covered).toBeGreaterThan(0.935);
  });
  it.each([5, 10, 20])('and without mishits is no wider than it must be, %i shots', (count) => {
    const { covered, wider } = held(count, 0);
    expect(covered).toBeGreaterThan(0.95);
    expect(covered).toBeLessThan(0.99);
    expect(wider).toBeLessThan(1.3);
  });
  it('leaves Student’s interval to what a mishit does not make smaller, and always the upper end', () => {
    const values = [12.1, 13.4, 11.8, 12.9, 12.2];
    const student = meanInterval(values, 0.95);
    expect(meanIntervalWithMishits(values, 'launchAngle', 0.95)).toEqual(student);
    const carry = meanIntervalWithMishits(values, 'carry', 0.95);
    expect(carry.high).toBe(student.high);
    expect(carry.low).toBeLessThan(student.low);
  });
});
