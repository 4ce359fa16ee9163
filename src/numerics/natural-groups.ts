import { requireSample } from './moments.js';

/**
 * Splits numbers into groups that lie apart. For every number of groups k it finds the split with the least sum of
 * squares within the groups. Then it takes the k that best explains the numbers as normal groups of one spread
 * (integrated classification likelihood; the variance has the divisor n − k, so that a few numbers are not split without
 * cause). A single normal or uniform heap stays whole. There are at most half as many groups as numbers.
 *
 * Sources: Fisher W D (1958) On grouping for maximum homogeneity, J. Am. Stat. Assoc. 53, 789–798; Biernacki C,
 * Celeux G, Govaert G (2000) IEEE Trans. Pattern Anal. 22, 719–725; the dynamic programme: Wang H, Song M (2011) R Journal 3(2), 29–33.
 * @param values - any order
 * @param leastSd - spread below which differences do not count, > 0
 * @param most - largest number of groups; default 10
 * @returns for each value the number of its group, counted from 0 for the smallest values
 */
export function naturalGroups(values: readonly number[], leastSd: number, most = 10): number[] {
  requireSample('values', values, 1);
  const n = values.length;
  const order = values.map((_, i) => i).sort((i, j) => values[i]! - values[j]!);
  const shift = values[order[0]!]!;
  const sum = new Float64Array(n + 1);
  const square = new Float64Array(n + 1);
  order.forEach((index, i) => {
    const value = values[index]! - shift;
    sum[i + 1] = sum[i]! + value;
    square[i + 1] = square[i]! + value * value;
  });
  const within = (from: number, to: number): number => {
    const total = sum[to]! - sum[from]!;
    return Math.max(0, square[to]! - square[from]! - (total * total) / (to - from));
  };

  // best[i]: least sum of squares of the first i values in k groups; starts[k][i]: where the last group begins.
  let best = Float64Array.from({ length: n + 1 }, (_, i) => (i === 0 ? 0 : within(0, i)));
  const starts: Int32Array[] = [new Int32Array(n + 1)];
  let chosen = { score: Number.POSITIVE_INFINITY, cuts: [0] };
  for (let k = 1; k <= Math.min(most, Math.floor(n / 2)); k++) {
    if (k > 1) {
      const next = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
      const start = new Int32Array(n + 1);
      const before = best;
      // The best last cut moves right as i grows, so the cut for the middle i bounds those on either side.
      const fill = (low: number, high: number, first: number, last: number): void => {
        if (low > high) return;
        const i = (low + high) >> 1;
        for (let from = first; from <= Math.min(last, i - 1); from++) {
          const cost = before[from]! + within(from, i);
          if (cost < next[i]!) {
            next[i] = cost;
            start[i] = from;
          }
        }
        fill(low, i - 1, first, start[i]!);
        fill(i + 1, high, start[i]!, last);
      };
      fill(k, n, k - 1, n - 1);
      best = next;
      starts.push(start);
    }
    const cuts: number[] = [];
    for (let j = k - 1, to = n; j >= 0; j--) {
      to = starts[j]![to]!;
      cuts.unshift(to);
    }
    const sizes = cuts.map((from, j) => (cuts[j + 1] ?? n) - from);
    const spread = Math.max(best[n]! / (n - k), leastSd * leastSd);
    const score =
      n * Math.log(spread) - 2 * sizes.reduce((s, m) => s + m * Math.log(m / n), 0) + 2 * k * Math.log(n);
    if (score < chosen.score) chosen = { score, cuts };
  }
  const group = new Array<number>(n).fill(0);
  order.forEach((index, i) => {
    group[index] = chosen.cuts.filter((from) => from <= i).length - 1;
  });
  return group;
}
