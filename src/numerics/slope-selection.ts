import { stream } from './stream.js';

/** Slopes of all pairs of points with different x, by their place in order of size. */
export interface PairSlopes {
  /** Number of pairs with different x. */
  readonly count: number;
  /** Slope number `rank` by size, 0 to `count` − 1. */
  readonly atRank: (rank: number) => number;
}

/** Up to this many points all slopes are written out. */
const FEW = 400;
/** Once no more slopes than this for each point are in question, they are sorted. */
const SORTED = 8;
/** Slopes drawn to guess where the one sought lies. */
const SAMPLE = 64;

/**
 * Prepares {@link PairSlopes}. Up to 400 points, all slopes are sorted. With more, a slope is found by counting: it is
 * below t for the pairs whose y − t x stand in the wrong order, and a merge sort counts those in n log n steps. Each t
 * comes from a sample of the slopes still in question, until few enough are left to be sorted. The sample has a fixed
 * seed, so the same points give the same slope. Where many slopes agree to within rounding, counting gives one of them.
 *
 * Source: Matoušek J (1991) Randomized optimal algorithm for slope selection, Inf. Process. Lett. 39, 183–187;
 * Dillencourt M B, Mount D M, Netanyahu N S (1992) Int. J. Comput. Geom. Appl. 2, 1–27 (both from memory).
 */
export function pairSlopes(x: readonly number[], y: readonly number[]): PairSlopes {
  const n = x.length;
  // Adding 0 makes 0 of −0.
  const slope = (i: number, j: number): number => (y[j]! - y[i]!) / (x[j]! - x[i]!) + 0;
  if (n <= FEW) {
    const slopes: number[] = [];
    for (let i = 0; i < n; i++) {
      for (let j = i + 1; j < n; j++) if (x[i] !== x[j]) slopes.push(slope(i, j));
    }
    const sorted = Float64Array.from(slopes).sort();
    return { count: sorted.length, atRank: (rank) => sorted[rank]! };
  }

  // Points in order of x. Those with the same x stand so that they never count as being in the wrong order.
  const order = (sign: number): number[] =>
    Array.from(x, (_, i) => i).sort((i, j) => x[i]! - x[j]! || sign * (y[i]! - y[j]!));
  const [rising, falling] = [order(1), order(-1)];
  /** In the order of x this rises along slopes above t and falls along slopes below. */
  const key = (i: number, t: number): number =>
    Number.isFinite(t) ? y[i]! - t * x[i]! : Math.sign(-t) * x[i]!;
  const [reachX, reachY] = [farthest(x), farthest(y)];
  /** Keys closer than this do not tell on which side of t a slope lies. */
  const blur = (t: number): number =>
    Number.isFinite(t) ? 4 * Number.EPSILON * (reachY + Math.abs(t) * reachX) : 0;
  const below = (t: number): number =>
    inversions(
      rising.map((i) => key(i, t)),
      blur(t),
    );
  const above = (t: number): number =>
    inversions(
      falling.map((i) => -key(i, t)),
      blur(t),
    );
  const count = below(Number.POSITIVE_INFINITY);

  /** All slopes between two bounds, sorted. */
  function between(low: number, high: number): Float64Array {
    const slopes: number[] = [];
    const [lowBlur, highBlur] = [blur(low), blur(high)];
    const points = rising
      .map((i): Point => ({ i, atLow: key(i, low), atHigh: key(i, high) }))
      .sort((a, b) => a.atLow - b.atLow || a.atHigh - b.atHigh);
    forEachInversion(points, (a, b) => {
      if (a.atLow + lowBlur < b.atLow && a.atHigh > b.atHigh + highBlur) slopes.push(slope(a.i, b.i));
    });
    return Float64Array.from(slopes).sort();
  }

  function atRank(rank: number): number {
    const random = stream(0, rank);
    let [low, high] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    // Slopes not above `low`, and slopes below `high`.
    let [left, right] = [0, count];
    while (right - left > SORTED * n) {
      const sample: number[] = [];
      while (sample.length < SAMPLE) {
        const t = slope(random.integer(n), random.integer(n));
        if (t > low && t < high) sample.push(t);
      }
      const t = sample.sort((a, b) => a - b)[Math.floor(((rank - left) / (right - left)) * SAMPLE)]!;
      const lower = below(t);
      const notAbove = count - above(t);
      if (rank < lower) [high, right] = [t, lower];
      else if (rank >= notAbove) [low, left] = [t, notAbove];
      else return t;
    }
    return between(low, high)[rank - left]!;
  }

  return { count, atRank };
}

function farthest(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}

/** Pairs of places a before b with values[a] > values[b] + gap, counted by merge sort. */
function inversions(values: readonly number[], gap: number): number {
  let from = Float64Array.from(values);
  let to = new Float64Array(from.length);
  let count = 0;
  for (let width = 1; width < from.length; width *= 2) {
    for (let start = 0; start < from.length; start += 2 * width) {
      const middle = Math.min(start + width, from.length);
      const end = Math.min(start + 2 * width, from.length);
      for (let a = start, b = middle; a < middle; a++) {
        while (b < end && from[a]! > from[b]! + gap) b++;
        count += b - middle;
      }
      for (let a = start, b = middle, k = start; k < end; k++) {
        to[k] = b >= end || (a < middle && from[a]! <= from[b]!) ? from[a++]! : from[b++]!;
      }
    }
    [from, to] = [to, from];
  }
  return count;
}

interface Point {
  readonly i: number;
  readonly atLow: number;
  readonly atHigh: number;
}

/** Visits the pairs a before b whose `atHigh` falls, by merge sort; returns the points in the order of `atHigh`. */
function forEachInversion(points: readonly Point[], visit: (a: Point, b: Point) => void): readonly Point[] {
  if (points.length < 2) return points;
  const half = points.length >> 1;
  const before = forEachInversion(points.slice(0, half), visit);
  const after = forEachInversion(points.slice(half), visit);
  const merged: Point[] = [];
  let a = 0;
  for (const b of after) {
    while (a < before.length && before[a]!.atHigh <= b.atHigh) merged.push(before[a++]!);
    for (let k = a; k < before.length; k++) visit(before[k]!, b);
    merged.push(b);
  }
  return [...merged, ...before.slice(a)];
}
