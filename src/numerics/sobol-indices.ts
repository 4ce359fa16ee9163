import { FairflightError } from '../errors.js';
import { type BootstrapOptions, bootstrap } from './bootstrap.js';
import type { Interval } from './moments.js';
import { requireWithin } from './require.js';
import type { PointSet } from './sobol.js';

/** Share of a variance that inputs account for. */
export interface SobolIndices {
  /** First-order index of each input: what it does on its own. */
  readonly first: readonly number[];
  /** Total index of each input: what it does alone and together with others. */
  readonly total: readonly number[];
  /** Bootstrap intervals of the first-order indices. */
  readonly firstIntervals: readonly Interval[];
  /** Bootstrap intervals of the total indices. */
  readonly totalIntervals: readonly Interval[];
  /** Mean of the values. */
  readonly mean: number;
  /** Variance of the values. */
  readonly variance: number;
}

/**
 * The points at which a function is to be evaluated for {@link sobolIndices}: for each base point k + 2 of them in a
 * row: A, B, and A with coordinate j taken from B for each of the k inputs.
 *
 * Source: Saltelli A, Annoni P, Azzini I, Campolongo F, Ratto M, Tarantola S (2010) Variance based sensitivity
 * analysis of model output, Comput. Phys. Commun. 181, 259–270, table 2 and sec. 4.
 * @param base - points with 2k dimensions: the first k are A, the others B
 * @param sizes - coordinates of each input, one after another; default one each. An input of several is exchanged whole,
 *   so that its indices are those of the group (ibid., sec. 2)
 */
export function sobolIndicesDesign(base: PointSet, sizes?: readonly number[]): PointSet {
  const k = base.dimensions / 2;
  if (!Number.isInteger(k)) {
    throw new FairflightError(
      'invalid-input',
      `the base needs twice as many dimensions as inputs, got ${base.dimensions}`,
      {
        field: 'base.dimensions',
        value: base.dimensions,
      },
    );
  }
  const pair = new Float64Array(2 * k);
  const inputs = sizes?.length ?? k;
  const inputOf = sizes?.flatMap((size, input) => Array.from({ length: size }, () => input));
  return {
    dimensions: k,
    point: (index, out = new Float64Array(k)) => {
      const which = index % (inputs + 2);
      base.point(Math.floor(index / (inputs + 2)), pair);
      for (let j = 0; j < k; j++) {
        const input = inputOf?.[j] ?? j;
        out[j] = which === 1 || which === input + 2 ? pair[k + j]! : pair[j]!;
      }
      return out;
    },
  };
}

/**
 * First-order and total Sobol indices from the values of a function at the points of {@link sobolIndicesDesign}, in
 * their order. First order: Saltelli et al. (2010) eq. (b) of table 2; total: Jansen M J W (1999) Comput. Phys.
 * Commun. 117, 35–43, eq. (f) of the same table.
 * @param values - n (inputs + 2) values
 * @throws FairflightError `invalid-input` when the number of values does not fit or they do not vary
 */
export function sobolIndices(
  values: ArrayLike<number>,
  inputs: number,
  options: BootstrapOptions = {},
): SobolIndices {
  requireWithin('inputs', inputs, 1, 1000, '');
  const row = inputs + 2;
  const n = values.length / row;
  if (!Number.isInteger(n) || n < 4) {
    throw new FairflightError(
      'invalid-input',
      `expected a multiple of ${row} values, 4 rows or more, got ${values.length}`,
      {
        field: 'values',
        value: values.length,
      },
    );
  }
  const rows = Array.from({ length: n }, (_, i) => i * row);
  let shift = 0;
  for (let i = 0; i < values.length; i++) shift += values[i]! / values.length;
  const whole = fromSums(sums(values, inputs, rows, shift), inputs);
  if (!(whole.variance > 0)) {
    throw new FairflightError(
      'invalid-input',
      'the values do not vary, so there is no variance to share out',
      {
        field: 'values',
      },
    );
  }
  // Blocks of rows stand in for rows where there are many: their spread is the same and a resample stays cheap.
  const size = Math.max(1, Math.floor(n / 500));
  const blocks = Array.from({ length: Math.floor(n / size) }, (_, b) =>
    sums(values, inputs, rows.slice(b * size, (b + 1) * size), shift),
  );
  const intervals = bootstrap(
    [blocks],
    ([sample = []]) => {
      const { first, total } = fromSums(addUp(sample), inputs);
      return [...first, ...total];
    },
    { resamples: 1000, ...options },
  );
  return {
    ...whole,
    mean: whole.mean + shift,
    firstIntervals: intervals.slice(0, inputs).map(intervalOnly),
    totalIntervals: intervals.slice(inputs).map(intervalOnly),
  };
}

function intervalOnly({ low, high, level }: Interval): Interval {
  return { low, high, level };
}

/** Sums over rows of values less their mean, which keeps the estimators' variance low: count, Σ(A + B)/2, Σ(A² + B²)/2, then Σ B (AB − A) and Σ (A − AB)²/2 for each input. */
function sums(
  values: ArrayLike<number>,
  inputs: number,
  rows: readonly number[],
  shift: number,
): Float64Array {
  const total = new Float64Array(3 + 2 * inputs);
  for (const at of rows) {
    const a = values[at]! - shift;
    const b = values[at + 1]! - shift;
    total[0]! += 1;
    total[1]! += 0.5 * (a + b);
    total[2]! += 0.5 * (a * a + b * b);
    for (let j = 0; j < inputs; j++) {
      const ab = values[at + 2 + j]! - shift;
      total[3 + 2 * j]! += b * (ab - a);
      total[4 + 2 * j]! += 0.5 * (a - ab) ** 2;
    }
  }
  return total;
}

function addUp(parts: readonly Float64Array[]): Float64Array {
  const total = new Float64Array(parts[0]?.length ?? 0);
  for (const part of parts) for (let i = 0; i < total.length; i++) total[i]! += part[i]!;
  return total;
}

function fromSums(
  total: Float64Array,
  inputs: number,
): { first: number[]; total: number[]; mean: number; variance: number } {
  const n = total[0]!;
  const mean = total[1]! / n;
  const variance = total[2]! / n - mean * mean;
  const share =
    (offset: number) =>
    (_: unknown, j: number): number =>
      total[offset + 2 * j]! / n / variance;
  return {
    first: Array.from({ length: inputs }, share(3)),
    total: Array.from({ length: inputs }, share(4)),
    mean,
    variance,
  };
}
