import { sobol, sobolIndices, sobolIndicesDesign } from '../../src/numerics/index.js';
import { holds, type Outcome, type Study } from './study.js';

/** First-order and total indices of the function of Ishigami and Homma (1990), a = 7 and b = 0.1, from their variances. */
const A = 7;
const B = 0.1;
const PARTS = [0.5 * (1 + (B * Math.PI ** 4) / 5) ** 2, A ** 2 / 8, 0] as const;
const TOGETHER = (8 * B ** 2 * Math.PI ** 8) / 225;
const VARIANCE = PARTS[0] + PARTS[1] + TOGETHER;
const FIRST = PARTS.map((part) => part / VARIANCE);
const TOTAL = [PARTS[0] + TOGETHER, PARTS[1], TOGETHER].map((part) => part / VARIANCE);

function ishigami(point: ArrayLike<number>): number {
  const [x = 0, y = 0, z = 0] = Array.from(point, (u) => Math.PI * (2 * u - 1));
  return Math.sin(x) + A * Math.sin(y) ** 2 + B * z ** 4 * Math.sin(x);
}

/** Studies of `sobolIndicesOf`, through the estimator it calls. */
export const indexStudies: readonly Study[] = [256, 1024].map(
  (base): Study => ({
    call: 'sobolIndicesOf',
    conditions: `the function of Ishigami, ${base} base rows`,
    stated: true,
    draws: 1000,
    draw: (random) => {
      const points = sobolIndicesDesign(sobol(6, { scramble: 'owen', seed: random.integer(2 ** 40) }));
      const values = Float64Array.from({ length: base * 5 }, (_, i) => ishigami(points.point(i)));
      const { firstIntervals, totalIntervals } = sobolIndices(values, 3, { resamples: 400 });
      const of = (intervals: readonly { low: number; high: number }[], truth: readonly number[]): Outcome[] =>
        intervals.map((interval, j) => holds(interval, truth[j] ?? 0));
      return { 'first-order index': of(firstIntervals, FIRST), 'total index': of(totalIntervals, TOTAL) };
    },
  }),
);
