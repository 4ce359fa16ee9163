/**
 * Monotone piecewise cubic interpolation: Fritsch and Carlson (1980), SIAM J. Numer. Anal. 17, 238–246, with the
 * harmonic-mean slopes of Fritsch and Butland (1984), SIAM J. Sci. Stat. Comput. 5, 300–304, and their shape-preserving
 * three-point end slopes. Between two nodes the curve never leaves the span of their values.
 * @internal
 */

/** Slope at an inner node from the widths and secants before and after it. */
export function innerSlope(h0: number, h1: number, secant0: number, secant1: number): number {
  if (secant0 * secant1 <= 0) return 0;
  const w0 = 2 * h1 + h0;
  const w1 = h1 + 2 * h0;
  return (w0 + w1) / (w0 / secant0 + w1 / secant1);
}

/** Slope at an end node; `h0`, `secant0` belong to the interval at the end, `h1`, `secant1` to its neighbour. */
export function endSlope(h0: number, h1: number, secant0: number, secant1: number): number {
  const slope = ((2 * h0 + h1) * secant0 - h0 * secant1) / (h0 + h1);
  if (slope * secant0 <= 0) return 0;
  if (secant0 * secant1 < 0 && Math.abs(slope) > 3 * Math.abs(secant0)) return 3 * secant0;
  return slope;
}

/** Slopes at all nodes; `x` strictly increasing, at least two nodes. */
export function monotoneSlopes(x: readonly number[], y: readonly number[]): readonly number[] {
  const width = (i: number): number => at(x, i + 1) - at(x, i);
  const secant = (i: number): number => (at(y, i + 1) - at(y, i)) / width(i);
  const last = x.length - 1;
  if (last === 1) return [secant(0), secant(0)];
  return x.map((_, i) => {
    if (i === 0) return endSlope(width(0), width(1), secant(0), secant(1));
    if (i === last) return endSlope(width(last - 1), width(last - 2), secant(last - 1), secant(last - 2));
    return innerSlope(width(i - 1), width(i), secant(i - 1), secant(i));
  });
}

/** Cubic through two nodes `h` apart with given slopes, at the fraction `t` of the interval. */
export function hermite(
  t: number,
  h: number,
  y0: number,
  y1: number,
  slope0: number,
  slope1: number,
): number {
  const u = 1 - t;
  return u * u * ((1 + 2 * t) * y0 + t * h * slope0) + t * t * ((3 - 2 * t) * y1 - u * h * slope1);
}

/** Index of the interval that holds `value`, 0 to nodes − 2; the end intervals also hold what lies outside. */
export function intervalOf(nodes: readonly number[], value: number): number {
  let low = 0;
  let high = nodes.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (value < at(nodes, middle)) high = middle;
    else low = middle;
  }
  return low;
}

/** Element that the caller knows to be there. */
export function at(values: readonly number[], index: number): number {
  return values[index] as number;
}
