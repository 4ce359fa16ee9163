import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  binomialQuantile,
  chiSquareCdf,
  chiSquareQuantile,
  fCdf,
  fQuantile,
  normalCdf,
  normalQuantile,
  studentTCdf,
  studentTQuantile,
} from '../../src/numerics/distributions.js';
import { logGamma } from '../../src/numerics/special-functions.js';
import { mixedState, stream } from '../../src/numerics/stream.js';
import { anyOf } from '../even.js';
import reference from '../published/data/distributions.json' with { type: 'json' };

/** Each row holds the arguments and then the value of an independent library (see the data file's `about`). */
function compare(
  rows: readonly (readonly number[])[],
  f: (...args: number[]) => number,
  tolerance: number,
  floor = 1e-300,
): void {
  for (const row of rows) {
    const args = row.slice(0, -1);
    const expected = row.at(-1) ?? Number.NaN;
    const error = Math.abs(f(...args) - expected) / Math.max(floor, Math.abs(expected));
    expect(error, `arguments ${args.join(', ')}`).toBeLessThan(tolerance);
  }
}

describe('distribution functions against scipy and mpmath', () => {
  it('normal', () => {
    compare(reference.normalQuantile, normalQuantile, 1e-14, 1);
    compare(reference.normalCdf.slice(1), normalCdf, 1e-13);
  });
  it('Student t', () => {
    compare(reference.studentTQuantile, studentTQuantile, 1e-12);
    compare(reference.studentTCdf, studentTCdf, 1e-12);
  });
  it('chi-square', () => {
    compare(reference.chiSquareQuantile, chiSquareQuantile, 1e-12);
  });
  it('F', () => {
    compare(reference.fQuantile, fQuantile, 1e-12);
  });
  it('log gamma', () => {
    compare(reference.logGamma, logGamma, 1e-14, 1);
  });
});

// Against the sum of the probabilities themselves.
it.each([
  [1, 0.3],
  [10, 0.5],
  [64, 0.9],
  [200, 0.01],
])('gives the number of successes in %d trials of %d', (trials, share) => {
  const sumTo = (most: number): number => {
    let sum = 0;
    for (let k = 0, chance = (1 - share) ** trials; k <= most; k++) {
      sum += chance;
      chance *= ((trials - k) / (k + 1)) * (share / (1 - share));
    }
    return sum;
  };
  for (const p of [0.001, 0.025, 0.4, 0.975, 0.9999]) {
    const enough = binomialQuantile(p, trials, share);
    expect(sumTo(enough)).toBeGreaterThanOrEqual(p);
    expect(sumTo(enough - 1)).toBeLessThan(p);
  }
});

// Tables printed in every statistics textbook.
it('gives the tabulated 95 % points', () => {
  expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 14);
  expect(studentTQuantile(0.975, 4)).toBeCloseTo(2.776, 3);
  expect(studentTQuantile(0.975, 9)).toBeCloseTo(2.262, 3);
  expect(chiSquareQuantile(0.95, 2)).toBeCloseTo(5.991, 3);
  expect(chiSquareQuantile(0.95, 10)).toBeCloseTo(18.307, 3);
  expect(fQuantile(0.95, 2, 8)).toBeCloseTo(4.459, 3);
});

describe('laws of distributions', () => {
  const probability = anyOf(1e-9, 1 - 1e-9);
  const dof = anyOf(0.6, 400);

  it('quantile undoes the distribution function', () => {
    fc.assert(
      fc.property(probability, dof, dof, (p, a, b) => {
        expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 12);
        expect(studentTCdf(studentTQuantile(p, a), a)).toBeCloseTo(p, 10);
        expect(chiSquareCdf(chiSquareQuantile(p, a), a)).toBeCloseTo(p, 10);
        expect(fCdf(fQuantile(p, a, b), a, b)).toBeCloseTo(p, 9);
      }),
    );
  });

  it('is symmetric where it should be and tends to the normal', () => {
    fc.assert(
      fc.property(probability, dof, (p, a) => {
        expect(normalQuantile(1 - p)).toBeCloseTo(-normalQuantile(p), 6);
        expect(studentTQuantile(1 - p, a)).toBeCloseTo(
          -studentTQuantile(p, a),
          3 - Math.log10(1 + Math.abs(studentTQuantile(p, a))),
        );
      }),
      { numRuns: 20 },
    );
    expect(studentTQuantile(0.9, 1e9)).toBeCloseTo(normalQuantile(0.9), 8);
  });

  it('refuses a probability outside (0, 1)', () => {
    for (const p of [0, 1, -0.1, 1.2, Number.NaN]) {
      expect(() => normalQuantile(p)).toThrow(/between/);
      expect(() => studentTQuantile(p, 5)).toThrow(/between/);
      expect(() => chiSquareQuantile(p, 5)).toThrow(/between/);
      expect(() => fQuantile(p, 5, 5)).toThrow(/between/);
    }
    expect(() => studentTQuantile(0.5, -1)).toThrow(/dof/);
  });
});

describe('stream', () => {
  const moments = (values: readonly number[]): { mean: number; variance: number; fourth: number } => {
    const mean = values.reduce((s, v) => s + v, 0) / values.length;
    const variance = values.reduce((s, v) => s + (v - mean) ** 2, 0) / values.length;
    const fourth = values.reduce((s, v) => s + (v - mean) ** 4, 0) / values.length / variance ** 2;
    return { mean, variance, fourth };
  };
  const n = 20_000;

  it('repeats itself for the same seed and index, and differs for others', () => {
    const draw = (seed: number, index: number): number[] => {
      const s = stream(seed, index);
      return [s.uniform(), s.normal(), s.studentT(4), s.integer(10)];
    };
    expect(draw(7, 123_456_789_012)).toEqual(draw(7, 123_456_789_012));
    expect(draw(7, 1)).not.toEqual(draw(7, 2));
    expect(draw(7, 1)).not.toEqual(draw(8, 1));
    expect(draw(1, 2)).not.toEqual(draw(2, 1));
  });

  // Expected mean 1/2, variance 1/12; limits are five standard errors.
  it('has a uniform first draw over consecutive seeds and over consecutive indices', () => {
    for (const first of [
      (i: number) => stream(i, 0).uniform(),
      (i: number) => stream(42, i).uniform(),
      (i: number) => stream(i * 2 ** 32, 5).uniform(),
    ]) {
      const values = Array.from({ length: n }, (_, i) => first(i));
      const { mean, variance } = moments(values);
      expect(Math.abs(mean - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / n));
      expect(Math.abs(variance - 1 / 12)).toBeLessThan(5 * Math.sqrt(1 / 180 / n));
      const lag =
        values.slice(1).reduce((s, v, i) => s + (v - 0.5) * ((values[i] ?? 0) - 0.5), 0) / n / (1 / 12);
      expect(Math.abs(lag)).toBeLessThan(5 / Math.sqrt(n));
      const cells = new Array<number>(100).fill(0);
      for (const v of values) cells[Math.floor(v * 100)] = (cells[Math.floor(v * 100)] ?? 0) + 1;
      const chiSquare = cells.reduce((s, c) => s + (c - n / 100) ** 2 / (n / 100), 0);
      expect(chiSquareCdf(chiSquare, 99)).toBeLessThan(1 - 1e-6);
    }
  });

  it('draws normal and Student t numbers with the right moments and tail', () => {
    const s = stream(2024);
    const normal = moments(Array.from({ length: n }, s.normal));
    expect(Math.abs(normal.mean)).toBeLessThan(5 / Math.sqrt(n));
    expect(Math.abs(normal.variance - 1)).toBeLessThan(5 * Math.sqrt(2 / n));
    expect(Math.abs(normal.fourth - 3)).toBeLessThan(5 * Math.sqrt(24 / n));
    const t = Array.from({ length: n }, () => s.studentT(5));
    // Kolmogorov's distance; 1.95/√n is passed by chance once in a thousand.
    t.sort((a, b) => a - b);
    const distance = Math.max(...t.map((x, i) => Math.abs(studentTCdf(x, 5) - (i + 0.5) / n)));
    expect(distance).toBeLessThan(1.95 / Math.sqrt(n));
  });

  it('draws every integer and none beyond', () => {
    const s = stream(3);
    const counts = new Array<number>(6).fill(0);
    for (let i = 0; i < 6000; i++) {
      const k = s.integer(6);
      counts[k] = (counts[k] ?? 0) + 1;
    }
    expect(counts).toHaveLength(6);
    for (const c of counts) expect(Math.abs(c - 1000)).toBeLessThan(150);
  });

  it('never gives two pairs the same state', () => {
    const whole = fc.maxSafeNat();
    fc.assert(
      fc.property(whole, whole, whole, whole, (a, b, c, d) => {
        fc.pre(a !== c || b !== d);
        expect(mixedState(a, b)).not.toEqual(mixedState(c, d));
      }),
    );
  });

  it('refuses seeds that are not whole', () => {
    expect(() => stream(1.5)).toThrow(/seed/);
    expect(() => stream(1, -1)).toThrow(/index/);
  });
});
