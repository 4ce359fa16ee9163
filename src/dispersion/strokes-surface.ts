import { leastSquares, mean } from '../numerics/index.js';

/** Strokes as a smooth function of how much faster [mph] and how much wider [ln of the factor] than today. @internal */
export interface StrokesSurface {
  readonly at: (faster: number, wider: number) => number;
  /** Slope with speed today, a mph. */
  readonly perMph: number;
  /** Slope with the logarithm of the scatter today. */
  readonly perWider: number;
}

/**
 * Strokes counted from a finite number of shots jump where a ball crosses the edge of a fairway; a quadratic surface
 * through all clouds together evens that out. Fitted to every replicate as well, so that answers carry their error.
 * @internal
 */
export function strokesSurface(
  points: readonly { readonly faster: number; readonly wider: number; readonly strokes: readonly number[] }[],
): {
  readonly all: StrokesSurface;
  readonly replicates: readonly StrokesSurface[];
  readonly residual: number;
} {
  const rows = points.map(({ faster, wider }) => terms(faster, wider));
  const fitted = (strokes: readonly number[]): StrokesSurface => {
    const b = leastSquares(rows, strokes)?.x ?? [mean(strokes), 0, 0, 0, 0, 0];
    return {
      at: (faster, wider) => terms(faster, wider).reduce((sum, term, k) => sum + term * (b[k] ?? 0), 0),
      perMph: b[1] ?? 0,
      perWider: b[2] ?? 0,
    };
  };
  const all = fitted(points.map((point) => mean(point.strokes)));
  const misses = points.map((point) => mean(point.strokes) - all.at(point.faster, point.wider));
  const count = Math.min(...points.map((point) => point.strokes.length));
  return {
    all,
    replicates: Array.from({ length: count }, (_, r) => fitted(points.map((point) => point.strokes[r] ?? 0))),
    residual: Math.sqrt(mean(misses.map((miss) => miss * miss))),
  };
}

function terms(faster: number, wider: number): number[] {
  return [1, faster, wider, faster * faster, faster * wider, wider * wider];
}

/**
 * A parabola through the strokes at several speeds: where it is lowest, or which way it falls to the end of the range
 * (an infinite answer), and its slope today, replicate by replicate.
 * @internal
 */
export function strokesCurve(
  points: readonly { readonly faster: number; readonly strokes: readonly number[] }[],
): { readonly best: number; readonly slopes: readonly number[] } {
  const rows = points.map(({ faster }) => [1, faster, faster * faster]);
  const fitted = (strokes: readonly number[]): readonly number[] =>
    leastSquares(rows, strokes)?.x ?? [0, 0, 0];
  const [a = 0, b = 0, c = 0] = fitted(points.map((point) => mean(point.strokes)));
  const count = Math.min(...points.map((point) => point.strokes.length));
  const ends = points.map((point) => point.faster);
  const at = (x: number): number => a + b * x + c * x * x;
  const falls = at(Math.max(...ends)) < at(Math.min(...ends));
  const best = c > 0 ? -b / (2 * c) : falls ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  return {
    best,
    slopes: Array.from(
      { length: count },
      (_, r) => fitted(points.map((point) => point.strokes[r] ?? 0))[1] ?? 0,
    ),
  };
}
