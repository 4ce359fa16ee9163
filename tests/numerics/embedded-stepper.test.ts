import { describe, expect, it } from 'vitest';
import { createStepper, type RightHandSide } from '../../src/numerics/embedded-stepper.js';
import { quinticHermite, quinticValue } from '../../src/numerics/quintic-hermite.js';
import { dormandPrince853 } from '../../src/numerics/tableaux/dormand-prince-853.js';

/** The pendulum's linear cousin: y″ = −y from (0, 1), whose answer is (sin t, cos t). */
const oscillator: RightHandSide = (_t, y, out) => {
  out[0] = y[1] as number;
  out[1] = -(y[0] as number);
};
/** y′ = −2 t y², y(0) = 1: 1/(1 + t²). Not linear and with t in it, as a quadrature would not notice. */
const runge: RightHandSide = (t, y, out) => {
  out[0] = -2 * t * (y[0] as number) ** 2;
};

/** Greatest error at the nodes of equal steps, and the greatest error estimate. */
function errorsOf(
  f: RightHandSide,
  start: readonly number[],
  end: number,
  steps: number,
  answer: (t: number) => number,
): { readonly error: number; readonly estimate: number } {
  const stepper = createStepper(dormandPrince853, start.length);
  const y = Float64Array.from(start);
  const derivative = new Float64Array(start.length);
  const h = end / steps;
  let estimate = 0;
  let error = 0;
  for (let i = 0; i < steps; i++) {
    f(i * h, y, derivative);
    stepper.step(f, i * h, y, derivative, h);
    estimate = Math.max(estimate, stepper.error(h, 0, start.length, 1));
    y.set(stepper.next);
    error = Math.max(error, Math.abs((y[0] as number) - answer((i + 1) * h)));
  }
  return { error, estimate };
}

/** Slope of log error against log step between two numbers of steps. */
const order = (coarse: number, fine: number, refinement: number): number =>
  Math.log(coarse / fine) / Math.log(refinement);

describe('the order of convergence, measured', () => {
  // Dormand and Prince's method is of order 8, its estimate of order 8 after one step (Hairer, Norsett & Wanner 1993, II.10).
  it.each([
    ['the oscillator', oscillator, [0, 1], 3, Math.sin, 4],
    ['a law that changes with time', runge, [1], 2, (t: number) => 1 / (1 + t * t), 6],
  ] as const)('is 8: %s', (_name, f, start, end, answer, steps) => {
    const coarse = errorsOf(f, start, end, steps, answer);
    const fine = errorsOf(f, start, end, 2 * steps, answer);
    expect(fine.error).toBeGreaterThan(1e-14);
    expect(order(coarse.error, fine.error, 2)).toBeGreaterThan(7.5);
    expect(order(coarse.error, fine.error, 2)).toBeLessThan(9.5);
    expect(order(coarse.estimate, fine.estimate, 2)).toBeGreaterThan(7);
    expect(order(coarse.estimate, fine.estimate, 2)).toBeLessThan(9.5);
    // An estimate that were smaller than the error would be none.
    expect(coarse.estimate).toBeGreaterThan(coarse.error / steps);
  });

  it('of the path between nodes is 6: a quintic through both ends', () => {
    const quintic = new Float64Array(6);
    const worst = (h: number): number => {
      quinticHermite(h, 0, 1, 0, Math.sin(h), Math.cos(h), -Math.sin(h), quintic);
      return Math.abs(quinticValue(quintic, 0.5) - Math.sin(h / 2));
    };
    // sin is odd about 0: its sixth derivative there is 0, so the error grows one order faster.
    expect(order(worst(0.8), worst(0.4), 2)).toBeGreaterThan(6.7);
    expect(order(worst(0.8), worst(0.4), 2)).toBeLessThan(7.3);
  });
});
