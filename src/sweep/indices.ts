import { isList } from '../errors.js';
import { isTyped } from '../inputs/columns.js';
import { refusal, refuseType } from '../inputs/refuse.js';
import { sobolIndices } from '../numerics/sobol-indices.js';
import type { IndexDesign } from './design.js';
import type { FactorName } from './factors.js';
import { designPoints } from './points.js';
import { isNormal } from './random-factors.js';
import { readDesign } from './read-design.js';

/** A 95 % interval. */
export interface IndexInterval {
  /** Lower end. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
}

/** What one factor does to the variance of an output. */
export interface FactorIndices {
  /** The factor, or those of one normal distribution. */
  readonly names: readonly FactorName[];
  /** First-order index: the share of the variance that goes away when the factor alone is known. */
  readonly firstOrder: number;
  /** Bootstrap interval of the first-order index. */
  readonly firstOrderInterval: IndexInterval;
  /** Total index: the share that stays when everything but the factor is known. */
  readonly total: number;
  /** Bootstrap interval of the total index. */
  readonly totalInterval: IndexInterval;
}

/** Sobol indices of an output. */
export interface OutputIndices {
  /** One entry a factor, in the order of the design. */
  readonly factors: readonly FactorIndices[];
  /** Mean of the output. */
  readonly mean: number;
  /** Variance of the output. */
  readonly variance: number;
  /** Base rows left out because a value in them is not finite; the indices describe the others. */
  readonly excluded: number;
}

/**
 * First-order and total Sobol indices of an output from the rows of a `sobol-indices` design.
 *
 * Estimators: Saltelli et al. (2010) Comput. Phys. Commun. 181, 259–270, table 2, eq. (b) for the first order and
 * eq. (f) (Jansen 1999) for the total. The factors are taken as
 * independent of each other, but for those of one normal distribution, which have indices as one. Intervals
 * are bootstrap ones, which for the evenly spread rows of this design are on the wide side.
 * @param design - the design that was swept
 * @param values - the output in every row, in order
 * @throws `FairflightError` `invalid-input` when the number of values does not fit the design, fewer than four
 *   base rows are complete, or the values do not vary
 */
export function sobolIndicesOf(design: IndexDesign, values: ArrayLike<number>): OutputIndices {
  const read = readDesign(design);
  if (read.kind !== 'sobol-indices') throw refuseType('design', 'a design of kind sobol-indices', design);
  const { rows } = designPoints(read);
  const inputs = read.factors.map((factor) => (isNormal(factor) ? factor.names : [factor.name]));
  if (!isTyped(values) && !isList(values)) {
    throw refuseType('values', 'a Float64Array or a list of numbers', values);
  }
  if (values.length !== rows) {
    throw refusal('values', `values must number ${rows}, got ${values.length}`, { value: values.length });
  }
  const group = inputs.length + 2;
  const kept = new Float64Array(rows);
  let length = 0;
  for (let at = 0; at < rows; at += group) {
    let complete = true;
    for (let j = 0; j < group; j++) {
      const value = values[at + j];
      if (typeof value !== 'number') throw refuseType(`values[${at + j}]`, 'a number', value);
      kept[length + j] = value;
      complete &&= Number.isFinite(value);
    }
    if (complete) length += group;
  }
  const found = sobolIndices(kept.subarray(0, length), inputs.length);
  const interval = (all: readonly IndexInterval[], j: number): IndexInterval => {
    const { low, high } = all[j] as IndexInterval;
    return { low, high };
  };
  return {
    factors: inputs.map((names, j) => ({
      names,
      firstOrder: found.first[j] as number,
      firstOrderInterval: interval(found.firstIntervals, j),
      total: found.total[j] as number,
      totalInterval: interval(found.totalIntervals, j),
    })),
    mean: found.mean,
    variance: found.variance,
    excluded: (rows - length) / group,
  };
}
