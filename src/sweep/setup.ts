import type { Delivery } from '../inputs/delivery.js';
import { choice, custom, type Declared, optional } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import type { Launch } from '../inputs/launch.js';
import { readQuantity, requireKnown } from '../inputs/read.js';
import { memberPath } from '../inputs/refuse.js';
import type { ShotOptions } from '../shot/index.js';
import { type ShotSettings, shotOptionFields, shotSettings } from '../shot/shot-options.js';
import { readStart, type Start } from '../shot/start.js';
import type { ListRow } from './design.js';
import { type FactorName, factorFields } from './factors.js';
import { type OutputName, outputsField } from './outputs.js';
import { type RowRange, rowRangeField } from './row-range.js';

/** What stays the same in every row of a sweep, and what is computed. */
export interface SweepBase extends ShotOptions {
  /**
   * The delivery or the launch around which the factors vary. Not needed when the factors and `fixed` give club speed,
   * attack angle and dynamic loft, or ball speed, launch angle and spin rate.
   */
  readonly from?: Delivery | Launch;
  /** Values of factors that do not vary. */
  readonly fixed?: ListRow;
  /** Outputs; default the carry, side, curve, apex, hang time, descent, total and side at rest, and the launch of a delivery. */
  readonly outputs?: readonly OutputName[];
  /**
   * What a sweep says of rows that leave the data of a model: `counts` by code (default), or also a `column` named
   * `warnings` with the codes of each row: the sum of 2ᵏ for the k-th of `rowWarnings`.
   */
  readonly warnings?: 'counts' | 'column';
  /** Rows of the design to compute; default all. Each is the same, bit for bit, as in the whole. */
  readonly rows?: RowRange;
}

/** Declaration of {@link SweepBase}. @internal */
export const sweepBaseFields: Declared<SweepBase> = /* @__PURE__ */ frozen(() => ({
  ...shotOptionFields,
  from: custom((value, path) => readStart(value, path, path), 'start'),
  fixed: custom(readFixed, 'fixed factors'),
  outputs: optional(outputsField),
  warnings: optional(choice(['counts', 'column'], 'warnings')),
  rows: optional(rowRangeField),
}));

function readFixed(value: unknown, path: string): ListRow {
  const given = requireKnown(factorFields, value, path);
  // In the order of the declarations, so that two that say the same are told alike.
  const numbers = Object.entries(factorFields).flatMap(([name, field]) => {
    const number = given[name];
    return number === undefined ? [] : [[name, readQuantity(field, number, memberPath(path, name))] as const];
  });
  return Object.fromEntries(numbers) as ListRow;
}

/** A {@link SweepBase} as read, with its defaults filled in. @internal */
export interface SweepSetup {
  readonly start: Start | undefined;
  readonly fixed: Readonly<Partial<Record<FactorName, number>>>;
  readonly outputs: readonly OutputName[] | undefined;
  readonly warnings: 'counts' | 'column';
  readonly rows: RowRange | undefined;
  /** Whether the caller named a clubhead, which makes it a sweep of strikes. */
  readonly struck: boolean;
  readonly settings: ShotSettings;
}

/** Fills in the defaults of options already read. @internal */
export function sweepSetup(base: SweepBase): SweepSetup {
  const { from, fixed = {}, outputs, warnings = 'counts', rows, ...options } = base;
  return {
    start: from as Start | undefined,
    fixed,
    outputs,
    warnings,
    rows,
    struck: options.clubhead !== undefined,
    settings: shotSettings(options),
  };
}
