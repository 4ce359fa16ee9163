import type { SearchOptions, Solution } from './roots.js';

/** Where a function has been computed. */
export interface Known {
  readonly x: number;
  readonly value: number;
}

/** When a search for a minimum stops, and what is known before. */
export interface MinimumOptions extends SearchOptions {
  /** A point inside the interval and both its ends, computed before: the first step is then a parabola through them. */
  readonly known?: readonly [inside: Known, end: Known, otherEnd: Known];
}

const GOLDEN = (3 - Math.sqrt(5)) / 2;

/**
 * The minimum of a unimodal function on an interval: golden section with parabolic steps where they help, which
 * converges superlinearly on smooth functions. Values that are not finite count as worst.
 *
 * Source: Brent R P (1973) Algorithms for Minimization without Derivatives, ch. 5 (procedure localmin).
 */
export function brentMinimum(
  f: (x: number) => number,
  lower: number,
  upper: number,
  options: MinimumOptions = {},
): Solution {
  const tolerance = options.tolerance ?? 1e-8;
  const maxIterations = options.maxIterations ?? 100;
  let a = Math.min(lower, upper);
  let b = Math.max(lower, upper);
  // x: best so far, w: second best, v: the one before w.
  const inside = a + GOLDEN * (b - a);
  const first = options.known?.[0] ?? { x: inside, value: f(inside) };
  const [, second, third] = options.known ?? [first, first, first];
  let x = first.x;
  let w = second.x;
  let v = third.x;
  let fx = worstIfNotFinite(first.value);
  let fw = worstIfNotFinite(second.value);
  let fv = worstIfNotFinite(third.value);
  let step = 0.5 * (w - v);
  let before = w - v;
  for (let iterations = 0; iterations < maxIterations; iterations++) {
    const middle = 0.5 * (a + b);
    const close = 1e-10 * Math.abs(x) + tolerance / 3;
    if (Math.abs(x - middle) <= 2 * close - 0.5 * (b - a)) {
      return { x, value: fx, iterations, converged: true };
    }
    let parabola = false;
    if (Math.abs(before) > close && Number.isFinite(fw) && Number.isFinite(fv)) {
      const r = (x - w) * (fx - fv);
      let q = (x - v) * (fx - fw);
      let p = (x - v) * q - (x - w) * r;
      q = 2 * (q - r);
      if (q > 0) p = -p;
      else q = -q;
      if (Math.abs(p) < Math.abs(0.5 * q * before) && p > q * (a - x) && p < q * (b - x)) {
        before = step;
        step = p / q;
        const u = x + step;
        if (u - a < 2 * close || b - u < 2 * close) step = x < middle ? close : -close;
        parabola = true;
      }
    }
    if (!parabola) {
      before = x < middle ? b - x : a - x;
      step = GOLDEN * before;
    }
    const u = x + (Math.abs(step) >= close ? step : Math.sign(step) * close);
    const fu = worstIfNotFinite(f(u));
    if (fu <= fx) {
      if (u < x) b = x;
      else a = x;
      v = w;
      fv = fw;
      w = x;
      fw = fx;
      x = u;
      fx = fu;
    } else {
      if (u < x) a = u;
      else b = u;
      if (fu <= fw || w === x) {
        v = w;
        fv = fw;
        w = u;
        fw = fu;
      } else if (fu <= fv || v === x || v === w) {
        v = u;
        fv = fu;
      }
    }
  }
  return { x, value: fx, iterations: maxIterations, converged: false };
}

function worstIfNotFinite(value: number): number {
  return Number.isFinite(value) ? value : Number.POSITIVE_INFINITY;
}
