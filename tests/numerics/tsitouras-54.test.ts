import { describe, expect, it } from 'vitest';
import { tsitouras54 } from '../../src/numerics/tableaux/tsitouras-54.js';

const { a, b, e } = tsitouras54;
const c = a.map((row) => row.reduce((sum, weight) => sum + weight, 0));
const dot = (x: readonly number[], y: readonly number[]): number =>
  x.reduce((sum, value, i) => sum + value * (y[i] ?? 0), 0);
const times = (x: readonly number[]): number[] => a.map((row) => dot(row, x));
const power = (n: number): number[] => c.map((node) => node ** n);

/** Steps of y'' = −sin y, a pendulum; returns how far the angle is from that of steps a hundredth as long. */
function pendulum(steps: number): number {
  const rate = ([angle = 0, speed = 0]: readonly number[]): number[] => [speed, -Math.sin(angle)];
  let y = [1, 0.5];
  for (let n = 0; n < steps; n++) {
    const k: number[][] = [];
    for (const row of a)
      k.push(
        rate(
          y.map(
            (value, i) =>
              value +
              (4 / steps) *
                dot(
                  row,
                  k.map((one) => one[i] ?? 0),
                ),
          ),
        ),
      );
    y = y.map(
      (value, i) =>
        value +
        (4 / steps) *
          dot(
            b,
            k.map((one) => one[i] ?? 0),
          ),
    );
  }
  return y[0] ?? 0;
}

describe('Tsitouras 5(4)', () => {
  // The seventeen conditions of order five, Hairer, Norsett & Wanner 1993, Solving Ordinary Differential Equations I, table II.2.1.
  it('satisfies the conditions of order five', () => {
    const product = (...xs: readonly (readonly number[])[]): number[] =>
      c.map((_, i) => xs.reduce((all, x) => all * (x[i] ?? 0), 1));
    const conditions: readonly (readonly [readonly number[], number])[] = [
      [power(0), 1],
      [c, 1 / 2],
      [power(2), 1 / 3],
      [times(c), 1 / 6],
      [power(3), 1 / 4],
      [product(c, times(c)), 1 / 8],
      [times(power(2)), 1 / 12],
      [times(times(c)), 1 / 24],
      [power(4), 1 / 5],
      [product(power(2), times(c)), 1 / 10],
      [product(times(c), times(c)), 1 / 20],
      [product(c, times(power(2))), 1 / 15],
      [product(c, times(times(c))), 1 / 30],
      [times(power(3)), 1 / 20],
      [times(product(c, times(c))), 1 / 40],
      [times(times(power(2))), 1 / 60],
      [times(times(times(c))), 1 / 120],
    ];
    for (const [elementary, expected] of conditions) expect(dot(b, elementary)).toBeCloseTo(expected, 12);
  });

  it('has an error estimate that vanishes to order four', () => {
    // The end of the step is the seventh stage, at node 1.
    for (let n = 0; n <= 3; n++) expect(dot(e, [...power(n), 1])).toBeCloseTo(0, 12);
    expect(Math.abs(dot(e, [...power(4), 1]))).toBeGreaterThan(1e-5);
  });

  it('converges with the fifth power of the step', () => {
    const exact = pendulum(4000);
    const order = Math.log2((pendulum(20) - exact) / (pendulum(40) - exact));
    expect(order).toBeGreaterThan(4.8);
    expect(order).toBeLessThan(5.4);
  });
});
