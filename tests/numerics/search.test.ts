import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brentMinimum, goldenSection } from '../../src/numerics/minimise.js';
import { nelderMead } from '../../src/numerics/nelder-mead.js';
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

describe.each([
  ['goldenSection', goldenSection],
  ['brentMinimum', brentMinimum],
] as const)('%s', (_, search) => {
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
    const found = search(logGamma, 0.5, 4);
    expect(found.converged).toBe(true);
    expect(found.x).toBeCloseTo(1.461632144968362, 6);
  });

  it('finds a kink and a minimum at the end', () => {
    expect(search((x) => Math.abs(x - 0.7), 0, 2).x).toBeCloseTo(0.7, 7);
    expect(search((x) => x, 2, 5).x).toBeCloseTo(2, 6);
    expect(search((x) => -x, 5, 2).x).toBeCloseTo(5, 6);
  });

  it('walks away from values that are not finite', () => {
    const found = search((x) => (x < 1 ? Number.NaN : (x - 2) ** 2), -3, 5);
    expect(found.x).toBeCloseTo(2, 6);
  });

  it('says when the cap stopped it', () => {
    expect(search((x) => (x - 2) ** 2 + x ** 4, -3, 50, { maxIterations: 2 }).converged).toBe(false);
  });
});

it('brentMinimum needs fewer evaluations than golden section on a smooth function', () => {
  const count = (search: typeof goldenSection): number => {
    let n = 0;
    search(
      (x) => {
        n++;
        return -Math.sin(x) - 0.1 * x;
      },
      0,
      3,
    );
    return n;
  };
  expect(count(brentMinimum)).toBeLessThan(0.5 * count(goldenSection));
});

// Test functions of Moré J J, Garbow B S, Hillstrom K E (1981) ACM Trans. Math. Softw. 7, 17–41, with their numbers,
// standard starts and minima; Himmelblau D M (1972) Applied Nonlinear Programming.
describe('nelderMead', () => {
  const rosenbrock = (x: readonly number[]): number => {
    const [a = 0, b = 0] = x;
    return 100 * (b - a * a) ** 2 + (1 - a) ** 2;
  };

  it('Rosenbrock (1) from (−1.2, 1): 0 at (1, 1)', () => {
    const found = nelderMead(rosenbrock, [-1.2, 1]);
    expect(found.converged).toBe(true);
    expect(found.x[0]).toBeCloseTo(1, 5);
    expect(found.x[1]).toBeCloseTo(1, 5);
    expect(found.value).toBeLessThan(1e-10);
  });

  it('Freudenstein and Roth (2) from (0.5, −2): 0 at (5, 4) or 48.9842… at (11.41…, −0.8968…)', () => {
    const found = nelderMead(
      (x) => {
        const [a = 0, b = 0] = x;
        return (-13 + a + ((5 - b) * b - 2) * b) ** 2 + (-29 + a + ((b + 1) * b - 14) * b) ** 2;
      },
      [0.5, -2],
    );
    const local = Math.abs(found.value - 48.9842) < 1e-3 && Math.abs((found.x[1] ?? 0) + 0.8968) < 1e-3;
    expect(local || found.value < 1e-8).toBe(true);
  });

  it('Beale (5) from (1, 1): 0 at (3, 0.5)', () => {
    const found = nelderMead(
      (x) => {
        const [a = 0, b = 0] = x;
        return (1.5 - a * (1 - b)) ** 2 + (2.25 - a * (1 - b * b)) ** 2 + (2.625 - a * (1 - b ** 3)) ** 2;
      },
      [1, 1],
    );
    expect(found.x[0]).toBeCloseTo(3, 5);
    expect(found.x[1]).toBeCloseTo(0.5, 5);
  });

  it('helical valley (7) from (−1, 0, 0): 0 at (1, 0, 0)', () => {
    const found = nelderMead(
      (x) => {
        const [a = 0, b = 0, c = 0] = x;
        const theta = Math.atan2(b, a) / (2 * Math.PI);
        return 100 * ((c - 10 * theta) ** 2 + (Math.hypot(a, b) - 1) ** 2) + c * c;
      },
      [-1, 0, 0],
      { restarts: 3 },
    );
    expect(found.x[0]).toBeCloseTo(1, 4);
    expect(found.x[1]).toBeCloseTo(0, 4);
    expect(found.x[2]).toBeCloseTo(0, 4);
  });

  it('Wood (14) from (−3, −1, −3, −1): 0 at (1, 1, 1, 1)', () => {
    const found = nelderMead(
      (x) => {
        const [a = 0, b = 0, c = 0, d = 0] = x;
        return (
          100 * (b - a * a) ** 2 +
          (1 - a) ** 2 +
          90 * (d - c * c) ** 2 +
          (1 - c) ** 2 +
          10 * (b + d - 2) ** 2 +
          (b - d) ** 2 / 10
        );
      },
      [-3, -1, -3, -1],
      { restarts: 4, maxIterations: 5000 },
    );
    for (const x of found.x) expect(x).toBeCloseTo(1, 4);
  });

  it('Himmelblau: one of its four zeros, here within bounds that hold (3, 2)', () => {
    const found = nelderMead(
      (x) => {
        const [a = 0, b = 0] = x;
        return (a * a + b - 11) ** 2 + (a + b * b - 7) ** 2;
      },
      [1, 1],
      { lower: [0, 0], upper: [5, 5] },
    );
    expect(found.x[0]).toBeCloseTo(3, 5);
    expect(found.x[1]).toBeCloseTo(2, 5);
  });

  it('finds a minimum on a bound and never calls the function outside', () => {
    const lower = [-2, 0.5, Number.NEGATIVE_INFINITY];
    const upper = [0.8, Number.POSITIVE_INFINITY, -1];
    const found = nelderMead(
      (x) => {
        x.forEach((xi, i) => {
          expect(xi).toBeGreaterThanOrEqual(lower[i] ?? 0);
          expect(xi).toBeLessThanOrEqual(upper[i] ?? 0);
        });
        return x.reduce((sum, xi, i) => sum + (xi - ([2, -1, 3][i] ?? 0)) ** 2, 0);
      },
      [0, 1, -2],
      { lower, upper },
    );
    expect(found.x[0]).toBeCloseTo(0.8, 6);
    expect(found.x[1]).toBeCloseTo(0.5, 6);
    expect(found.x[2]).toBeCloseTo(-1, 6);
  });

  it('works in one dimension and starts on a bound', () => {
    const found = nelderMead((x) => ((x[0] ?? 0) - 0.3) ** 2, [1], { lower: [0], upper: [1] });
    expect(found.x[0]).toBeCloseTo(0.3, 6);
  });

  it('walks away from values that are not finite, says when the cap stopped it, refuses bad input', () => {
    const found = nelderMead((x) => ((x[0] ?? 0) < 1 ? Number.NaN : rosenbrock(x)), [1.5, 3]);
    expect(found.x[0]).toBeCloseTo(1, 3);
    expect(nelderMead(rosenbrock, [-1.2, 1], { maxIterations: 10 }).converged).toBe(false);
    expect(() => nelderMead(rosenbrock, [2, 0], { lower: [0, 0], upper: [1, 1] })).toThrow(/bounds/);
    expect(() => nelderMead(rosenbrock, [])).toThrow(/one entry/);
  });

  it('finds the minimum of any convex quadratic', () => {
    const entry = anyOf(-3, 3);
    fc.assert(
      fc.property(entry, entry, entry, (a, b, k) => {
        const found = nelderMead(
          (x) => {
            const u = (x[0] ?? 0) - a;
            const v = (x[1] ?? 0) - b;
            return (1 + k * k) * u * u + v * v + 0.5 * u * v;
          },
          [0, 0],
        );
        expect(Math.abs((found.x[0] ?? 0) - a)).toBeLessThan(1e-4);
        expect(Math.abs((found.x[1] ?? 0) - b)).toBeLessThan(1e-4);
      }),
      { numRuns: 50 },
    );
  });
});
