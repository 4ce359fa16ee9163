import { type Declared, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { readOptions } from '../inputs/read.js';
import type { Design } from './design.js';
import type { FactorName } from './factors.js';
import { designPoints } from './points.js';
import { readDesign } from './read-design.js';
import { MOST_IN_MEMORY, type RowRange, requireRows, rowRangeField } from './row-range.js';

/** Rows of a design, one array a factor. */
export interface DesignRows {
  /** Factors, in the order of the columns. */
  readonly names: readonly FactorName[];
  /** Index of the first row in the design. */
  readonly start: number;
  /** Number of rows here. */
  readonly count: number;
  /** Values in SI units, one array a factor. */
  readonly values: readonly Float64Array[];
}

/** Options of {@link designRows}. */
export interface DesignRowOptions {
  /** Which rows; default all. */
  readonly rows?: RowRange;
}

/** Declaration of {@link DesignRowOptions}. @internal */
export const designRowFields: Declared<DesignRowOptions> = /* @__PURE__ */ frozen(() => ({
  rows: optional(rowRangeField),
}));

/**
 * The inputs of a design without flying anything: for a model of one's own, another program or another machine. The rows
 * of a `sobol-indices` design are Saltelli's points; give `sobolIndicesOf` whatever was computed from them.
 * @throws `FairflightError` for a design that makes no sense, or rows it does not have; `outside-range` for more than 2²⁸
 * @example designRows({ kind: 'sobol-indices', base: 1024, factors }, { rows: { from: 0, to: 512 } }).values
 */
export function designRows(design: Design, options: DesignRowOptions = {}): DesignRows {
  const { rows } = readOptions(designRowFields, options);
  const points = designPoints(readDesign(design));
  const { from, to } = requireRows(rows, points.rows, MOST_IN_MEMORY);
  const count = to - from;
  const values = points.names.map(() => new Float64Array(count));
  points.fill(from, count, values);
  return { names: points.names, start: from, count, values };
}
