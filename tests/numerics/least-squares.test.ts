import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { levenbergMarquardt } from '../../src/numerics/levenberg-marquardt.js';
import {
  cholesky,
  choleskySolve,
  inverseOfSymmetric,
  leastSquares,
  type Matrix,
  symmetricEigen,
} from '../../src/numerics/linear-algebra.js';
import { anyOf } from '../even.js';

const times = (a: Matrix, x: readonly number[]): number[] =>
  a.map((row) => row.reduce((sum, v, j) => sum + v * (x[j] ?? 0), 0));

describe('linear algebra', () => {
  it('factors and inverts a symmetric positive definite matrix, and refuses one that is not', () => {
    // The factor of this matrix is exact: L = [2; 6 1; -8 5 3] (textbook example, Cholesky decomposition).
    const a = [
      [4, 12, -16],
      [12, 37, -43],
      [-16, -43, 98],
    ];
    expect(cholesky(a)).toEqual([
      [2, 0, 0],
      [6, 1, 0],
      [-8, 5, 3],
    ]);
    const l = cholesky(a) ?? [];
    expect(times(a, choleskySolve(l, [1, 2, 3])).map((v) => Math.round(v * 1e9) / 1e9)).toEqual([1, 2, 3]);
    const inverse = inverseOfSymmetric(a) ?? [];
    for (const [i, row] of inverse.entries()) {
      times(a, row).forEach((v, j) => {
        expect(v).toBeCloseTo(i === j ? 1 : 0, 9);
      });
    }
    expect(
      cholesky([
        [1, 2],
        [2, 1],
      ]),
    ).toBeUndefined();
    expect(
      inverseOfSymmetric([
        [1, 1],
        [1, 1],
      ]),
    ).toBeUndefined();
  });

  it('finds the eigenvalues of the second-difference matrix, 2 − 2 cos(kπ/(n+1))', () => {
    const n = 7;
    const a = Array.from({ length: n }, (_, i) =>
      Array.from({ length: n }, (__, j) => (i === j ? 2 : Math.abs(i - j) === 1 ? -1 : 0)),
    );
    const { values, vectors } = symmetricEigen(a);
    values.forEach((value, i) => {
      expect(value).toBeCloseTo(2 - 2 * Math.cos(((n - i) * Math.PI) / (n + 1)), 13);
      const vector = vectors[i] ?? [];
      times(a, vector).forEach((v, k) => {
        expect(v).toBeCloseTo(value * (vector[k] ?? 0), 12);
      });
      expect(Math.hypot(...vector)).toBeCloseTo(1, 13);
    });
  });

  it('says when columns depend on each other and when rows are too few', () => {
    expect(
      leastSquares(
        [
          [1, 2],
          [2, 4],
          [3, 6],
        ],
        [1, 2, 3],
      ),
    ).toBeUndefined();
    expect(leastSquares([[1, 2]], [1])).toBeUndefined();
  });

  it('leaves residuals at right angles to every column', () => {
    const entry = anyOf(-10, 10);
    fc.assert(
      fc.property(fc.array(fc.tuple(entry, entry, entry), { minLength: 4, maxLength: 12 }), (rows) => {
        const a = rows.map(([u, v], i) => [1, u + i, v - i * i]);
        const b = rows.map(([, , w]) => w);
        const fit = leastSquares(a, b);
        if (fit === undefined) return;
        const residual = times(a, fit.x).map((v, i) => v - (b[i] ?? 0));
        const worst = Math.max(
          ...fit.x.map((_, j) =>
            Math.abs(a.reduce((s, row, i) => s + (row[j] ?? 0) * (residual[i] ?? 0), 0)),
          ),
        );
        expect(worst).toBeLessThan(1e-7);
        expect(residual.reduce((s, r) => s + r * r, 0)).toBeCloseTo(fit.sumOfSquares, 7);
      }),
    );
  });
});

// NIST StRD, nonlinear regression, Misra1a (lower difficulty): data and certified values from memory; scipy 1.10.1
// curve_fit gives the same estimates and sum of squares to the 8 digits it prints.
const misra = {
  y: [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78],
  x: [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0],
  certified: {
    estimate: [2.3894212918e2, 5.5015643181e-4],
    sd: [2.7070075241, 7.2668688436e-6],
    sumOfSquares: 1.2455138894e-1,
  },
};
const misraResiduals = ([a = 0, b = 0]: readonly number[]): number[] =>
  misra.x.map((x, i) => a * (1 - Math.exp(-b * x)) - (misra.y[i] ?? 0));

const relative = (value: number | undefined, expected: number): number =>
  Math.abs(((value ?? Number.NaN) - expected) / expected);

describe('levenbergMarquardt', () => {
  it.each([
    ['start 1', [500, 1e-4]],
    ['start 2', [250, 5e-4]],
  ] as const)('fits Misra1a from the published %s', (_, start) => {
    const fit = levenbergMarquardt(misraResiduals, start, { tolerance: 1e-13 });
    expect(fit.converged).toBe(true);
    misra.certified.estimate.forEach((value, j) => {
      expect(relative(fit.x[j], value)).toBeLessThan(1e-8);
      expect(relative(Math.sqrt(fit.covariance?.[j]?.[j] ?? 0), misra.certified.sd[j] ?? 0)).toBeLessThan(
        1e-6,
      );
    });
    expect(relative(fit.sumOfSquares, misra.certified.sumOfSquares)).toBeLessThan(1e-9);
  });

  it('gives the same with a given Jacobian', () => {
    const given = levenbergMarquardt(misraResiduals, [500, 1e-4], {
      jacobian: ([a = 0, b = 0]) => misra.x.map((x) => [1 - Math.exp(-b * x), a * x * Math.exp(-b * x)]),
      tolerance: 1e-13,
    });
    expect(relative(given.x[0], misra.certified.estimate[0] ?? 0)).toBeLessThan(1e-9);
  });

  // Moré, Garbow and Hillstrom (1981), functions 1, 7 and 13 (Powell singular), with their standard starts.
  it('brings the standard zero-residual problems to zero', () => {
    const rosenbrock = levenbergMarquardt(([a = 0, b = 0]) => [10 * (b - a * a), 1 - a], [-1.2, 1]);
    expect(rosenbrock.x[0]).toBeCloseTo(1, 9);
    expect(rosenbrock.x[1]).toBeCloseTo(1, 9);
    const helix = levenbergMarquardt(
      ([a = 0, b = 0, c = 0]) => [
        10 * (c - (10 * Math.atan2(b, a)) / (2 * Math.PI)),
        10 * (Math.hypot(a, b) - 1),
        c,
      ],
      [-1, 0.001, 0],
    );
    expect(helix.sumOfSquares).toBeLessThan(1e-15);
    const singular = levenbergMarquardt(
      ([a = 0, b = 0, c = 0, d = 0]) => [
        a + 10 * b,
        Math.sqrt(5) * (c - d),
        (b - 2 * c) ** 2,
        Math.sqrt(10) * (a - d) ** 2,
      ],
      [3, -1, 0, 1],
    );
    expect(singular.sumOfSquares).toBeLessThan(1e-12);
  });

  it('weighs a prior against the data: the mean of two normals weighted by their precisions', () => {
    // Textbook: posterior mean (10/1² + 4/2²)/(1/1² + 1/2²) = 8.8, variance 1/(1 + 1/4) = 0.8.
    const fit = levenbergMarquardt(([x = 0]) => [(x - 10) / 1, (x - 4) / 2], [0], { variance: 'known' });
    expect(fit.x[0]).toBeCloseTo(8.8, 9);
    expect(fit.covariance?.[0]?.[0]).toBeCloseTo(0.8, 9);
  });

  it('holds a parameter on its bound and still finds the best of the others', () => {
    // Least squares of y = a + b x with a <= 0.5 on the points (0,1), (1,2), (2,3): a = 0.5, b = (1·1.5+2·2.5)/5 = 1.3.
    const fit = levenbergMarquardt(([a = 0, b = 0]) => [0, 1, 2].map((x) => a + b * x - (x + 1)), [0, 0], {
      upper: [0.5, 10],
    });
    expect(fit.x[0]).toBe(0.5);
    expect(fit.x[1]).toBeCloseTo(1.3, 8);
    expect(fit.atBound).toEqual([true, false]);
    expect(fit.converged).toBe(true);
  });

  it('reports what the data do not determine, the iteration cap, and bad input', () => {
    const flat = levenbergMarquardt(([a = 0, b = 0]) => [a + b - 1, 2 * (a + b) - 2, a + b - 1.1], [0, 0]);
    expect(flat.covariance).toBeUndefined();
    expect(levenbergMarquardt(misraResiduals, [500, 1e-4], { maxIterations: 2 }).converged).toBe(false);
    expect(() => levenbergMarquardt(() => [Number.NaN], [1])).toThrow(/finite/);
  });

  it('recovers an exponential from noise-free data', () => {
    fc.assert(
      fc.property(anyOf(0.5, 5), anyOf(0.2, 2), (a, k) => {
        const t = [0, 0.5, 1, 1.5, 2, 3];
        const fit = levenbergMarquardt(
          ([p = 0, q = 0]) => t.map((ti) => p * Math.exp(-q * ti) - a * Math.exp(-k * ti)),
          [1, 1],
        );
        expect(Math.abs((fit.x[0] ?? 0) - a)).toBeLessThan(1e-6);
        expect(Math.abs((fit.x[1] ?? 0) - k)).toBeLessThan(1e-6);
      }),
      { numRuns: 50 },
    );
  });
});
