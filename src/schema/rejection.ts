/** Why a row or a column was left out. */
export type RejectionReason =
  | 'not-a-number'
  | 'impossible-value'
  | 'contradiction'
  | 'missing-value'
  | 'malformed-row'
  | 'unclear-header'
  | 'unknown-unit';

/** One row or column that was left out. */
export interface Rejection {
  /** What was left out. */
  readonly scope: 'row' | 'column';
  /** Kind of trouble, for counting. */
  readonly reason: RejectionReason;
  /** Line of the file, counted from 1. */
  readonly line: number;
  /** Header of the column; empty when the whole row is meant. */
  readonly column: string;
  /** What is wrong, for a person. */
  readonly message: string;
}
