/**
 * The quintic on [0, h] with given value, slope and curvature at both ends, as six coefficients in x = t/h.
 * Source: Hermite interpolation with triple nodes, any text on numerical analysis; checked in tests/numerics.
 */
export function quinticHermite(
  h: number,
  y0: number,
  v0: number,
  a0: number,
  y1: number,
  v1: number,
  a1: number,
  out: Float64Array,
): void {
  const p = v0 * h;
  const q = v1 * h;
  const r = 0.5 * a0 * h * h;
  const s = 0.5 * a1 * h * h;
  const d = y1 - y0;
  out[0] = y0;
  out[1] = p;
  out[2] = r;
  out[3] = 10 * d - 6 * p - 4 * q - 3 * r + s;
  out[4] = -15 * d + 8 * p + 7 * q + 3 * r - 2 * s;
  out[5] = 6 * d - 3 * p - 3 * q - r + s;
}

/** Value of the quintic at x in [0, 1]. */
export function quinticValue(c: Float64Array, x: number): number {
  return c[0]! + x * (c[1]! + x * (c[2]! + x * (c[3]! + x * (c[4]! + x * c[5]!))));
}

/** Derivative of the quintic with respect to x. */
export function quinticSlope(c: Float64Array, x: number): number {
  return c[1]! + x * (2 * c[2]! + x * (3 * c[3]! + x * (4 * c[4]! + x * 5 * c[5]!)));
}

/** Second derivative of the quintic with respect to x. */
export function quinticCurvature(c: Float64Array, x: number): number {
  return 2 * c[2]! + x * (6 * c[3]! + x * (12 * c[4]! + x * 20 * c[5]!));
}

/**
 * Root of the quintic (`derivative` false) or of its slope (true) in [from, to], where the signs at the ends differ.
 * Newton steps kept inside a shrinking bracket, so it always ends.
 */
export function quinticRoot(c: Float64Array, derivative: boolean, from: number, to: number): number {
  let lo = from;
  let hi = to;
  const signLo = (derivative ? quinticSlope(c, lo) : quinticValue(c, lo)) > 0;
  let x = 0.5 * (lo + hi);
  for (let i = 0; i < 60 && hi - lo > 1e-15; i++) {
    const f = derivative ? quinticSlope(c, x) : quinticValue(c, x);
    if (f === 0) return x;
    if (f > 0 === signLo) lo = x;
    else hi = x;
    const slope = derivative ? quinticCurvature(c, x) : quinticSlope(c, x);
    const newton = x - f / slope;
    const inside = newton > lo && newton < hi;
    const previous = x;
    x = inside ? newton : 0.5 * (lo + hi);
    if (inside && Math.abs(x - previous) < 1e-15) return x;
  }
  return x;
}
