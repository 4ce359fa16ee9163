import { FairflightError } from '../errors.js';

/** What a one-dimensional search found. */
export interface Solution {
  /** Where. */
  readonly x: number;
  /** Value of the function there. */
  readonly value: number;
  /** Iterations used. */
  readonly iterations: number;
  /** False when the iteration cap stopped the search before the tolerance was met. */
  readonly converged: boolean;
}

/** When a one-dimensional search stops. */
export interface SearchOptions {
  /** Absolute tolerance on x, > 0; default 1e-10. */
  readonly tolerance?: number;
  /** Cap on iterations; default 100. */
  readonly maxIterations?: number;
}

/**
 * A root of a continuous function between two points where it has opposite signs: bisection, secant and inverse
 * quadratic interpolation combined so that the bracket never grows.
 *
 * Source: Brent R P (1973) Algorithms for Minimization without Derivatives, ch. 4 (procedure zero).
 * @throws `FairflightError` `invalid-input` when both ends have the same sign or a value is not finite.
 */
export function brent(
  f: (x: number) => number,
  lower: number,
  upper: number,
  options: SearchOptions = {},
): Solution {
  const tolerance = options.tolerance ?? 1e-10;
  const maxIterations = options.maxIterations ?? 100;
  let a = lower;
  let b = upper;
  let fa = f(a);
  let fb = f(b);
  if (!Number.isFinite(fa) || !Number.isFinite(fb) || fa * fb > 0) {
    throw new FairflightError(
      'invalid-input',
      `a root needs a bracket with opposite signs, got f(${a}) = ${fa} and f(${b}) = ${fb}`,
      { field: 'bracket', value: [fa, fb] },
    );
  }
  let c = a;
  let fc = fa;
  let step = b - a;
  let previousStep = step;
  for (let iterations = 0; iterations <= maxIterations; iterations++) {
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b;
      b = c;
      c = a;
      fa = fb;
      fb = fc;
      fc = fa;
    }
    const close = 2 * Number.EPSILON * Math.abs(b) + 0.5 * tolerance;
    const middle = 0.5 * (c - b);
    if (fb === 0 || Math.abs(middle) <= close) return { x: b, value: fb, iterations, converged: true };
    if (iterations === maxIterations) break;

    if (Math.abs(previousStep) < close || Math.abs(fa) <= Math.abs(fb)) {
      step = middle;
      previousStep = middle;
    } else {
      const s = fb / fa;
      let p: number;
      let q: number;
      if (a === c) {
        p = 2 * middle * s;
        q = 1 - s;
      } else {
        const r = fb / fc;
        const t = fa / fc;
        p = s * (2 * middle * t * (t - r) - (b - a) * (r - 1));
        q = (t - 1) * (r - 1) * (s - 1);
      }
      if (p > 0) q = -q;
      else p = -p;
      if (2 * p < Math.min(3 * middle * q - Math.abs(close * q), Math.abs(previousStep * q))) {
        previousStep = step;
        step = p / q;
      } else {
        step = middle;
        previousStep = middle;
      }
    }
    a = b;
    fa = fb;
    b += Math.abs(step) > close ? step : Math.sign(middle) * close;
    fb = f(b);
    if (!Number.isFinite(fb)) {
      throw new FairflightError('invalid-input', `the function is not finite at ${b}`, {
        field: 'f',
        value: fb,
      });
    }
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      step = b - a;
      previousStep = step;
    }
  }
  return { x: b, value: fb, iterations: maxIterations, converged: false };
}
