import { describe, expect, it } from 'vitest';
import { centralDifferences, logSumExp } from '../../src/numerics/index.js';

describe('centralDifferences', () => {
  // Central differences are exact for polynomials of second degree (mixed ones too), whatever the steps.
  it('is exact for quadratics', () => {
    const [first, second] = centralDifferences(
      ([x = 0, y = 0, z = 0]) => [3 * x * x + 2 * x * y - y * z + 4 * z, z * z - 5 * x],
      [1, -2, 0.5],
      [0.1, 0.3, 0.02],
    );
    const close = (found: readonly number[] | undefined, wanted: readonly number[]): void => {
      wanted.forEach((value, i) => {
        expect(found?.[i]).toBeCloseTo(value, 9);
      });
    };
    close(first?.gradient, [6 * 1 + 2 * -2, 2 * 1 - 0.5, 2 + 4]);
    close(first?.hessian.flat(), [6, 2, 0, 2, 0, -1, 0, -1, 0]);
    close(second?.gradient, [-5, 0, 1]);
    close(second?.hessian.flat(), [0, 0, 0, 0, 0, 0, 0, 0, 2]);
  });

  it('errs with the square of the step', () => {
    const error = (step: number): number =>
      Math.abs((centralDifferences(([x = 0]) => [Math.exp(x)], [0], [step])[0]?.gradient[0] ?? 0) - 1);
    expect(error(0.02) / error(0.01)).toBeCloseTo(4, 2);
  });
});

describe('logSumExp', () => {
  it('adds numbers far beyond what exp can hold', () => {
    expect(logSumExp([-2000, -2000])).toBeCloseTo(-2000 + Math.LN2, 12);
    expect(logSumExp([1000, 990])).toBeCloseTo(1000 + Math.log1p(Math.exp(-10)), 12);
  });

  it('has −∞ for nothing, and lets NaN be seen', () => {
    expect(logSumExp([])).toBe(Number.NEGATIVE_INFINITY);
    expect(logSumExp([Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY])).toBe(Number.NEGATIVE_INFINITY);
    expect(logSumExp([1, Number.NaN])).toBeNaN();
    expect(logSumExp([Number.NaN, 1])).toBeNaN();
    expect(logSumExp([Number.NaN])).toBeNaN();
  });
});
