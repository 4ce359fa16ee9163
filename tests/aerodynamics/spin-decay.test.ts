import { describe, expect, it } from 'vitest';
import {
  bestDecay,
  decayChiSquare,
  isPatent,
  spinRows,
} from '../../src/aerodynamics/build-time/spin-lost.js';
import { SPIN_DECAY } from '../../src/aerodynamics/index.js';

/** Spin lost after 1, 3 and 5 s, US patent 8,016,695 (second-hand), and three rows for a driver after 6 s. */
describe('spin decay against the spin that sources say is lost', () => {
  const patent = spinRows.filter(isPatent);
  const others = spinRows.filter((row) => !isPatent(row));
  const worse = (decay: number): string[] =>
    spinRows
      .filter(
        (row) => Math.abs(row.lost(decay) - row.expected) > Math.abs(row.lost(SPIN_DECAY) - row.expected),
      )
      .map(({ what }) => what);

  it('has nine rows of the patent and three others', () => {
    expect(patent).toHaveLength(9);
    expect(others).toHaveLength(3);
  });
  it('would suit the patent best at 1.55e-5, and be worse elsewhere: so it stays', () => {
    const best = bestDecay();
    expect(best).toBeCloseTo(1.55e-5, 8);
    expect(decayChiSquare(SPIN_DECAY, patent)).toBeCloseTo(6.1, 1);
    expect(decayChiSquare(best, patent)).toBeCloseTo(2.9, 1);
    expect(decayChiSquare(SPIN_DECAY, others)).toBeLessThan(0.3);
    expect(decayChiSquare(best, others)).toBeGreaterThan(2.5);
    expect(worse(best)).toEqual([
      '5-iron, after 3 s',
      '5-iron, after 5 s',
      '8-iron, after 1 s',
      '8-iron, after 3 s',
      '8-iron, after 5 s',
      'Driver, 3.3 % a second, exponential: after 6 s',
      'Driver, typical fall of 4 % a second: after 6 s',
      'Driver, 78 to 82 % left after 6 s',
    ]);
  });
});
