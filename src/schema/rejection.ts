/** Why a row, a column or a cell was left out. */
export type RejectionReason =
  | 'not-a-number'
  | 'impossible-value'
  | 'contradiction'
  | 'missing-value'
  | 'malformed-row'
  | 'unclear-header'
  | 'unknown-unit'
  | 'summary-row';

/** One row, column or cell that was left out. */
export interface Rejection {
  /** What was left out: a `cell` alone where the shot is of use without it. */
  readonly scope: 'row' | 'column' | 'cell';
  /** Kind of trouble, for counting. */
  readonly reason: RejectionReason;
  /** Line of the file, counted from 1. */
  readonly line: number;
  /** Header of the column; empty when the whole row is meant. */
  readonly column: string;
  /** What is wrong, for a person. */
  readonly message: string;
}
