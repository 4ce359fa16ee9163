import { count, type RecordField, record } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import { refusal } from '../inputs/refuse.js';

/** Rows of a design: a share of it for one of several machines, say. They are the same, bit for bit, as in the whole. */
export interface RowRange {
  /** First row, counted from 0; 0 to 2⁵³ − 1. */
  readonly from: number;
  /** The row after the last, 1 to 2⁵³ − 1, at most the rows of the design. */
  readonly to: number;
}

/** Declaration of {@link RowRange}. @internal */
export const rowRangeField: RecordField = /* @__PURE__ */ frozen(() =>
  record<RowRange>(
    {
      from: count(0, Number.MAX_SAFE_INTEGER, 0, 'first row'),
      to: count(1, Number.MAX_SAFE_INTEGER, 4, 'row after the last'),
    },
    'rows',
    ({ from, to }, path) => {
      if (from >= to)
        throw refusal(`${path}.from`, `${path}.from must lie below ${path}.to`, {
          value: from,
          range: [0, to - 1],
        });
    },
  ),
);

/** Rows that fit in one result. @internal */
export const MOST_IN_MEMORY: number = 2 ** 28;

/**
 * The rows asked for, by default all.
 * @throws FairflightError `outside-range` for rows that the design does not have, or more than `most`
 * @internal
 */
export function requireRows(asked: RowRange | undefined, total: number, most: number = total): RowRange {
  const rows = asked ?? { from: 0, to: total };
  if (rows.to > total) {
    throw refusal(
      'options.rows.to',
      `options.rows.to must be at most ${total}, the rows of the design, got ${rows.to}`,
      { value: rows.to, range: [1, total] },
      'outside-range',
    );
  }
  const count = rows.to - rows.from;
  if (count > most) {
    throw refusal(
      'design',
      `${count} rows do not fit in one result; at most ${most}`,
      {
        value: count,
        range: [1, most],
        hint: 'stream them with sweepChunks, or ask for some with options.rows',
      },
      'outside-range',
    );
  }
  return rows;
}
