import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { latinHypercube } from '../../src/numerics/latin-hypercube.js';
import { type PointSet, SOBOL_DIMENSIONS, SOBOL_LAST_INDEX, sobol } from '../../src/numerics/sobol.js';
import reference from '../published/data/designs.json' with { type: 'json' };

const take = (set: PointSet, count: number, from = 0): number[][] =>
  Array.from({ length: count }, (_, i) => [...set.point(from + i)]);

/** Squared centred L2 discrepancy, Hickernell F J (1998) Math. Comput. 67, 299–322, eq. 5.1a. */
function centredDiscrepancy(points: readonly (readonly number[])[]): number {
  const n = points.length;
  const d = points[0]?.length ?? 0;
  const z = points.map((p) => p.map((x) => Math.abs(x - 0.5)));
  const single = z.reduce((sum, p) => sum + p.reduce((f, a) => f * (1 + 0.5 * a - 0.5 * a * a), 1), 0);
  let pair = 0;
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < n; k++) {
      let f = 1;
      for (let j = 0; j < d; j++) {
        const apart = Math.abs((points[i]?.[j] ?? 0) - (points[k]?.[j] ?? 0));
        f *= 1 + 0.5 * (z[i]?.[j] ?? 0) + 0.5 * (z[k]?.[j] ?? 0) - 0.5 * apart;
      }
      pair += f;
    }
  }
  return (13 / 12) ** d - (2 / n) * single + pair / (n * n);
}

describe('sobol', () => {
  it('gives the points of scipy, in order, from any index and in all dimensions', () => {
    expect(SOBOL_DIMENSIONS).toBe(32);
    expect(take(sobol(32), 16)).toEqual(reference.first);
    expect(take(sobol(32), 3, reference.later.start)).toEqual(reference.later.points);
    expect(take(sobol(21), 2, reference.last.start)).toEqual(reference.last.points);
  });

  // Joe and Kuo (2008) print the start of the two-dimensional sequence: (0, 0), (½, ½), (¾, ¼), (¼, ¾), (⅜, ⅜), …
  it('starts as published', () => {
    expect(take(sobol(2), 5)).toEqual([
      [0, 0],
      [0.5, 0.5],
      [0.75, 0.25],
      [0.25, 0.75],
      [0.375, 0.375],
    ]);
  });

  it('has the centred discrepancy that scipy computes', () => {
    for (const { dimensions, count, value } of reference.centredDiscrepancy) {
      expect(Math.abs(centredDiscrepancy(take(sobol(dimensions), count)) / value - 1)).toBeLessThan(1e-9);
    }
  });

  it('reaches its last index with numbers in [0, 1) and refuses the next', () => {
    for (const scramble of ['none', 'shift', 'owen'] as const) {
      const set = sobol(32, { scramble, seed: 1 });
      for (const x of set.point(SOBOL_LAST_INDEX)) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThan(1);
      }
    }
    expect(() => sobol(1).point(SOBOL_LAST_INDEX + 1)).toThrow(/index/);
    expect(() => sobol(1).point(0.5)).toThrow(/index/);
    expect(() => sobol(33)).toThrow(/dimensions/);
  });

  it.each(['none', 'shift', 'owen'] as const)(
    'keeps one point in every elementary interval (%s)',
    (scramble) => {
      // Sobol's first two dimensions form a (0, 2)-sequence (Sobol 1967): every aligned block of 2^k points has one
      // point in each box of volume 2^−k with dyadic sides. Scrambles must keep that.
      const k = 6;
      for (const seed of [1, 2, 3]) {
        for (const block of [0, 5]) {
          const points = take(sobol(2, { scramble, seed }), 2 ** k, block * 2 ** k);
          for (let a = 0; a <= k; a++) {
            const boxes = new Set(
              points.map(([x = 0, y = 0]) => `${Math.floor(x * 2 ** a)} ${Math.floor(y * 2 ** (k - a))}`),
            );
            expect(boxes.size).toBe(2 ** k);
          }
        }
      }
    },
  );

  it('is uniform in every dimension when scrambled, whatever the seed', () => {
    for (const scramble of ['shift', 'owen'] as const) {
      for (let j = 0; j < 8; j++) {
        const first = Array.from(
          { length: 4000 },
          (_, seed) => sobol(8, { scramble, seed }).point(3)[j] ?? 0,
        );
        const mean = first.reduce((s, x) => s + x, 0) / first.length;
        expect(Math.abs(mean - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / first.length));
      }
    }
  });

  it('integrates a smooth function far better than random points, best with the Owen scramble', () => {
    // ∫ Π (1 + (x_j − ½)/j²)² over the cube, exactly Π (1 + 1/(12 j⁴)).
    const d = 5;
    const exact = Array.from({ length: d }, (_, j) => 1 + 1 / (12 * (j + 1) ** 4)).reduce((f, x) => f * x, 1);
    const rms = (scramble: 'shift' | 'owen'): number => {
      const errors = Array.from({ length: 20 }, (_, seed) => {
        const points = take(sobol(d, { scramble, seed }), 1024);
        const mean =
          points.reduce((s, p) => s + p.reduce((f, x, j) => f * (1 + (x - 0.5) / (j + 1) ** 2) ** 2, 1), 0) /
          1024;
        return (mean - exact) ** 2;
      });
      return Math.sqrt(errors.reduce((s, e) => s + e, 0) / errors.length);
    };
    const shift = rms('shift');
    const owen = rms('owen');
    // The function's standard deviation is about 0.6, so random points would give 0.6/32 = 0.02.
    expect(shift).toBeLessThan(1e-3);
    expect(owen).toBeLessThan(0.3 * shift);
  });
});

describe('latinHypercube', () => {
  it('puts one point in every slice of every dimension, for any count and seed', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.integer({ min: 1, max: 6 }),
        fc.nat(),
        (n, d, seed) => {
          const points = take(latinHypercube(n, d, seed), n);
          for (let j = 0; j < d; j++) {
            expect(new Set(points.map((p) => Math.floor((p[j] ?? 0) * n))).size).toBe(n);
          }
        },
      ),
    );
  });

  it('is repeatable by index and differs by seed and dimension', () => {
    const set = latinHypercube(1000, 3, 9);
    expect(set.point(777)).toEqual(latinHypercube(1000, 3, 9).point(777));
    expect(set.point(777)).not.toEqual(latinHypercube(1000, 3, 10).point(777));
    expect(() => set.point(1000)).toThrow(/index/);
  });

  it('leaves dimensions uncorrelated and slices shuffled', () => {
    const n = 4096;
    const points = take(latinHypercube(n, 4, 5), n);
    const correlation = (f: (i: number) => number, g: (i: number) => number): number => {
      let sum = 0;
      for (let i = 0; i < n - 1; i++) sum += (f(i) - 0.5) * (g(i) - 0.5);
      return (12 * sum) / n;
    };
    for (let j = 0; j < 4; j++) {
      const x = (i: number): number => points[i]?.[j] ?? 0;
      for (let k = 0; k < j; k++)
        expect(Math.abs(correlation(x, (i) => points[i]?.[k] ?? 0))).toBeLessThan(5 / Math.sqrt(n));
      expect(Math.abs(correlation(x, (i) => x(i + 1)))).toBeLessThan(5 / Math.sqrt(n));
      expect(Math.abs(correlation(x, (i) => i / n))).toBeLessThan(5 / Math.sqrt(n));
    }
  });

  it('integrates an additive function better than random points (McKay et al. 1979)', () => {
    const n = 256;
    const errors = Array.from({ length: 20 }, (_, seed) => {
      const points = take(latinHypercube(n, 3, seed), n);
      return points.reduce((s, p) => s + p.reduce((a, x) => a + x, 0), 0) / n - 1.5;
    });
    // Random points would give 0.5/16 = 0.031.
    expect(Math.sqrt(errors.reduce((s, e) => s + e * e, 0) / 20)).toBeLessThan(0.001);
  });
});
