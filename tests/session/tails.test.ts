import { describe, expect, it } from 'vitest';
import { stream } from '../../src/numerics/index.js';
import { tailFactor, tailsOf } from '../../src/session/tails.js';

const random = stream(41);
const normal = (count: number): number[] => Array.from({ length: count }, random.normal);
const wild = (count: number): number[] =>
  Array.from({ length: count }, () => (random.uniform() < 0.1 ? 3 : 1) * random.normal());
const share = (draws: number, of: () => boolean): number =>
  Array.from({ length: draws }, of).filter(Boolean).length / draws;

describe('tails', () => {
  it('is the kurtosis of the values about the means of their groups', () => {
    // By hand: deviations −1, 1, −3, 3, all with one standard deviation: fourth powers 164, squares 20, four values: 4 · 164/20².
    expect(
      tailsOf([
        [
          [4, 6],
          [7, 13],
        ],
      ]).kurtosis,
    ).toBeCloseTo(41 / 25, 12);
    // Two pools of their own scale: every deviation is one standard deviation.
    expect(tailsOf([[[4, 6]], [[7, 13]]]).kurtosis).toBeCloseTo(1, 12);
  });

  it('calls one normal session in ten wild, as its limit says', () => {
    // Four standard errors of 200 answers are 8.5 points.
    expect(
      Math.abs(share(200, () => tailsOf([[normal(20), normal(20)]]).verdict === 'wild') - 0.1),
    ).toBeLessThan(0.085);
  });

  it('finds one wild shot in ten more often the more shots there are', () => {
    const found = (count: number): number =>
      share(60, () => tailsOf([[wild(count)], [wild(count)]]).verdict === 'wild');
    expect(found(10)).toBeLessThan(found(60));
    expect(found(60)).toBeGreaterThan(0.9);
  });

  it('agrees with the trials where it leaves them', () => {
    const many = normal(2100);
    const { kurtosis, probability } = tailsOf([[many]]);
    // Mean and variance of the kurtosis of normal samples: 3 − 6/(n + 1) and 24/n (Fisher 1930, from memory).
    expect(Math.abs(kurtosis - 3)).toBeLessThan(4 * Math.sqrt(24 / 2100));
    expect(probability).toBeGreaterThan(0.001);
  });

  it('widens for wild tails and never narrows', () => {
    expect(tailFactor({ kurtosis: 7, probability: 0, verdict: 'wild' })).toBe(3);
    expect(tailFactor({ kurtosis: 2, probability: 1, verdict: 'not-shown' })).toBe(1);
  });
});
