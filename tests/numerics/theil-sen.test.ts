import { describe, expect, it } from 'vitest';
import { pairSlopes } from '../../src/numerics/slope-selection.js';
import { stream } from '../../src/numerics/stream.js';
import { fewestForSlope, theilSen } from '../../src/numerics/theil-sen.js';
import norris from '../published/data/nist-norris.json' with { type: 'json' };
import reference from '../published/data/statistics.json' with { type: 'json' };

describe('theilSen', () => {
  it('agrees with scipy on data with ties and wild points', () => {
    const line = theilSen(reference.x, reference.y);
    expect(line.slope).toBeCloseTo(reference.theilSen.slope, 10);
    expect(line.intercept).toBeCloseTo(reference.theilSen.intercept, 9);
    expect(line.interval.low).toBeCloseTo(reference.theilSen.low, 10);
    expect(line.interval.high).toBeCloseTo(reference.theilSen.high, 10);
  });

  it('gives 1.00219684 and −0.06401582 on the Norris data (scipy convention)', () => {
    const line = theilSen(
      norris.rows.map((r) => r[1] ?? 0),
      norris.rows.map((r) => r[0] ?? 0),
    );
    expect(line.slope).toBeCloseTo(1.00219684, 8);
    expect(line.intercept).toBeCloseTo(-0.06401582, 8);
  });

  it('stands still when a quarter of the points run wild, and needs two different x', () => {
    const x = Array.from({ length: 20 }, (_, i) => i);
    const y = x.map((v, i) => 2 * v + 1 + (i % 4 === 3 ? 1000 : 0));
    expect(theilSen(x, y).slope).toBeCloseTo(2, 9);
    expect(() => theilSen([1, 1], [1, 2])).toThrow(/two different x/);
  });

  it('counts ties of x and of y in the interval as scipy does, at three levels', () => {
    for (const { x, y, slope, intervals } of reference.tiedLines) {
      for (const [level = 0, low = 0, high = 0] of intervals) {
        const line = theilSen(x, y, level);
        expect(line.slope).toBeCloseTo(slope, 12);
        expect(line.interval.low, `${x.length} at ${level}`).toBeCloseTo(low, 12);
        expect(line.interval.high, `${x.length} at ${level}`).toBeCloseTo(high, 12);
      }
    }
  });

  it('refuses lists of unequal length', () => {
    expect(() => theilSen([1, 2, 3], [1, 2])).toThrow(/at least 3/);
    expect(() => theilSen([1, 2], [1, 2, 3])).toThrow(/as many values as x/);
  });
});

describe('pairSlopes', () => {
  const allSlopes = (x: readonly number[], y: readonly number[]): Float64Array => {
    const slopes: number[] = [];
    x.forEach((xi, i) => {
      for (let j = i + 1; j < x.length; j++) {
        const run = (x[j] ?? 0) - xi;
        if (run !== 0) slopes.push(((y[j] ?? 0) - (y[i] ?? 0)) / run);
      }
    });
    return Float64Array.from(slopes).sort();
  };
  const points = (kind: string, n: number): readonly [number[], number[]] => {
    const random = stream(17, n);
    const x = Array.from({ length: n }, (_, i) =>
      kind === 'free' ? random.normal() : kind === 'tied' ? (7 * i) % 60 : n - i,
    );
    const noise = (v: number): number => 45 + 0.001 * v + random.normal();
    return [x, x.map((v) => (kind === 'free' ? noise(v) : Math.round(10 * noise(v)) / 10))];
  };

  // 400 and 401 stand on either side of the change from sorting to counting; counts of pairs are even and odd.
  it.each(['free', 'tied', 'falling'])('has every slope at its rank: %s x', (kind) => {
    for (const n of [2, 3, 4, 30, 31, 400, 401, 402, 700]) {
      const [x, y] = points(kind, n);
      const expected = allSlopes(x, y);
      const slopes = pairSlopes(x, y);
      expect(slopes.count).toBe(expected.length);
      const last = expected.length - 1;
      for (let k = 0; k <= 60; k++) {
        const rank = Math.round((k / 60) * last);
        const right = (expected[rank] ?? 0) + 0; // Adding 0 makes 0 of −0.
        const found = slopes.atRank(rank);
        // Counting takes one of the slopes that agree to within rounding.
        if (n <= 400) expect(found, `${n} points, rank ${rank}`).toBe(right);
        else expect(found, `${n} points, rank ${rank}`).toBeCloseTo(right, 12);
      }
    }
  });

  it('tells where the pairs that agree to within rounding begin and end', () => {
    // Six in seven points lie on one line of slope 0.1, which no double is: most slopes differ by rounding only.
    const x = Array.from({ length: 1000 }, (_, i) => i % 50);
    const y = x.map((v, i) => 0.1 * v + (i % 7 === 0 ? Math.sin(i) : 0));
    const expected = allSlopes(x, y);
    const slopes = pairSlopes(x, y);
    for (let k = 0; k <= 100; k++) {
      const rank = Math.round((k / 100) * (expected.length - 1));
      expect(slopes.atRank(rank), `rank ${rank}`).toBeCloseTo(expected[rank] ?? 0, 12);
    }
    for (const edge of [
      expected.findIndex((s) => s > 0.1 - 1e-12),
      expected.findIndex((s) => s > 0.1 + 1e-12),
    ]) {
      for (const rank of [edge - 1, edge]) expect(slopes.atRank(rank)).toBeCloseTo(expected[rank] ?? 0, 12);
    }
  });

  it('keeps no list of the 200 million slopes of 20,000 points', () => {
    const n = 20_000;
    const random = stream(3);
    const x = Array.from({ length: n }, (_, i) => i);
    const y = x.map((v) => 0.25 * v + random.normal());
    const { slope, interval } = theilSen(x, y);
    // The slope's standard error is √12 σ/n^1.5, some 2 % more for the median of slopes.
    expect(Math.abs(slope - 0.25)).toBeLessThan((5 * Math.sqrt(12)) / n ** 1.5);
    expect(interval.low).toBeLessThan(slope);
    expect(interval.high).toBeGreaterThan(slope);
    expect(interval.high - interval.low).toBeLessThan((6 * Math.sqrt(12)) / n ** 1.5);
  });
});

// Twice 1/4! = 8 % is more than 5 %, twice 1/5! = 1.7 % is not; for 99 % twice 1/6! = 0.28 %.
it('needs five points for an interval of 95 %, six for 99 %', () => {
  expect([0.5, 0.9, 0.95, 0.99, 0.999].map(fewestForSlope)).toEqual([3, 4, 5, 6, 7]);
});
