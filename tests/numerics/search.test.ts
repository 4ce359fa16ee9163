import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brentMinimum } from '../../src/numerics/minimise.js';
import { brent } from '../../src/numerics/roots.js';
import { anyOf } from '../even.js';

describe('brent', () => {
  // The fixed point of cosine, 0.739085133215160641... (OEIS A003957).
  it('finds the fixed point of the cosine', () => {
    const root = brent((x) => Math.cos(x) - x, 0, 1, { tolerance: 1e-15 });
    expect(root.converged).toBe(true);
    expect(root.x).toBeCloseTo(0.7390851332151607, 14);
    expect(root.iterations).toBeLessThan(12);
  });

  // Wallis's equation x³ − 2x − 5 = 0, root 2.094551481542326591... (OEIS A007493).
  it('finds the root of the equation Newton solved', () => {
    expect(brent((x) => x ** 3 - 2 * x - 5, 2, 3, { tolerance: 1e-15 }).x).toBeCloseTo(
      2.0945514815423265,
      13,
    );
  });

  it('keeps its bracket on a flat root and on a step', () => {
    expect(brent((x) => (x - 0.3) ** 9, -1, 1, { tolerance: 1e-9, maxIterations: 400 }).x).toBeCloseTo(
      0.3,
      2,
    );
    const step = brent((x) => (x < 0.1234 ? -1 : 1), 0, 1, { tolerance: 1e-12 });
    expect(step.x).toBeCloseTo(0.1234, 10);
  });

  it('accepts a root at an end and says when the cap stopped it', () => {
    expect(brent((x) => x, 0, 1).x).toBe(0);
    expect(brent((x) => Math.exp(x) - 2, 0, 100, { maxIterations: 2 }).converged).toBe(false);
  });

  it('refuses a bracket without a change of sign', () => {
    expect(() => brent((x) => x * x + 1, -1, 1)).toThrow(/opposite signs/);
    expect(() => brent(() => Number.NaN, -1, 1)).toThrow(/opposite signs/);
  });

  it('finds the root of any monotonic cubic', () => {
    fc.assert(
      fc.property(anyOf(-5, 5), anyOf(0.1, 3), (r, k) => {
        const root = brent((x) => (x - r) ** 3 + k * (x - r), -10, 10.5, { tolerance: 1e-12 });
        expect(Math.abs(root.x - r)).toBeLessThan(1e-11);
      }),
    );
  });
});

describe('brentMinimum', () => {
  // Γ(x) on x > 0 is least at 1.461632144968362 (OEIS A030169); Stirling's series is exact enough with x + 10.
  it('finds the least value of the gamma function', () => {
    const logGamma = (x: number): number => {
      let shift = 0;
      let z = x;
      while (z < 12) shift -= Math.log(z++);
      return (
        (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + 1 / (12 * z) - 1 / (360 * z ** 3) + shift
      );
    };
    const found = brentMinimum(logGamma, 0.5, 4);
    expect(found.converged).toBe(true);
    expect(found.x).toBeCloseTo(1.461632144968362, 6);
  });

  it('finds a kink and a minimum at the end', () => {
    expect(brentMinimum((x) => Math.abs(x - 0.7), 0, 2).x).toBeCloseTo(0.7, 7);
    expect(brentMinimum((x) => x, 2, 5).x).toBeCloseTo(2, 6);
    expect(brentMinimum((x) => -x, 5, 2).x).toBeCloseTo(5, 6);
  });

  it('walks away from values that are not finite', () => {
    const found = brentMinimum((x) => (x < 1 ? Number.NaN : (x - 2) ** 2), -3, 5);
    expect(found.x).toBeCloseTo(2, 6);
  });

  it('says when the cap stopped it', () => {
    expect(brentMinimum((x) => (x - 2) ** 2 + x ** 4, -3, 50, { maxIterations: 2 }).converged).toBe(false);
  });

  // Golden section shrinks the bracket by 0.618 an evaluation: 3 to 1e-8 takes 41.
  it('needs less than half the evaluations of golden section on a smooth function', () => {
    let evaluations = 0;
    const found = brentMinimum(
      (x) => {
        evaluations++;
        return -Math.sin(x) - 0.1 * x;
      },
      0,
      3,
    );
    expect(found.x).toBeCloseTo(Math.acos(-0.1), 6);
    expect(evaluations).toBeLessThan(Math.log(1e-8 / 3) / Math.log(0.618) / 2);
  });
});
