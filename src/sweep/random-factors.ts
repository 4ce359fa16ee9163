import { normalQuantile } from '../numerics/distributions.js';
import { cholesky } from '../numerics/linear-algebra.js';
import type { NormalFactors, RandomFactor, RangeFactor } from './design.js';
import type { FactorName } from './factors.js';

/** One entry of a random design, as coordinates of the unit cube become values. @internal */
export interface Draw {
  readonly names: readonly FactorName[];
  /** True where a value may lie outside the range of its factor. */
  readonly open: boolean;
  /** Writes the values of row i from the coordinates `at`, `at + 1` … of a point. */
  readonly write: (point: Float64Array, at: number, columns: readonly Float64Array[], i: number) => void;
}

/** True for factors that are drawn together. @internal */
export function isNormal(factor: RandomFactor): factor is NormalFactors {
  return 'covariance' in factor;
}

/** @internal */
export function drawOf(factor: RandomFactor): Draw {
  return isNormal(factor) ? normalDraw(factor) : rangeDraw(factor);
}

function rangeDraw({ name, from, to }: RangeFactor): Draw {
  const width = to - from;
  return {
    names: [name],
    open: false,
    write: (point, at, columns, i) => {
      (columns[at] as Float64Array)[i] = from + (point[at] as number) * width;
    },
  };
}

/** Half of the finest step of a Sobol coordinate, so that no coordinate stands for an infinite value. */
const EDGE = 2 ** -33;

/** x = mean + L z with L Lᵀ the covariance and z standard normal (Golub and Van Loan 2013, algorithm 4.2.1, for L). */
function normalDraw({ names, mean, covariance }: NormalFactors): Draw {
  const l = cholesky(covariance) ?? [];
  const z = new Float64Array(names.length);
  return {
    names,
    open: true,
    write: (point, at, columns, i) => {
      for (let j = 0; j < names.length; j++) {
        const u = point[at + j] as number;
        z[j] = normalQuantile(Math.min(Math.max(u, EDGE), 1 - EDGE));
        let value = mean[j] as number;
        for (let k = 0; k <= j; k++) value += (l[j]?.[k] as number) * (z[k] as number);
        (columns[at + j] as Float64Array)[i] = value;
      }
    },
  };
}
