import type { OutputName } from '../outputs.js';

/** Columns that the stages fill for one chunk: the outputs, and what the run needs of the landing. @internal */
export type WorkColumn =
  | OutputName
  | 'landing.x'
  | 'landing.z'
  | 'landing.vx'
  | 'landing.vy'
  | 'landing.vz'
  | 'axis.x'
  | 'axis.y'
  | 'axis.z';

/** Scratch columns of one chunk, made when first asked for and kept for the next chunk. @internal */
export interface Work {
  readonly column: (name: WorkColumn) => Float64Array;
  /** One of {@link STATUS_CODE} a row. */
  readonly status: Uint8Array;
  /** Bits of {@link rowWarnings} a row. */
  readonly warnings: Uint8Array;
  /** Row of the design that the chunk begins with. */
  first: number;
  /** Sets every column to NaN, every status to landed and every warning to none, for a chunk from row `first` on. */
  readonly clear: (first: number) => void;
}

/** Makes scratch for chunks of `rows` rows. @internal */
export function createWork(rows: number): Work {
  const columns = new Map<WorkColumn, Float64Array>();
  const status = new Uint8Array(rows);
  const warnings = new Uint8Array(rows);
  const work: Work = {
    first: 0,
    column: (name) => {
      let column = columns.get(name);
      if (column === undefined) {
        column = new Float64Array(rows).fill(Number.NaN);
        columns.set(name, column);
      }
      return column;
    },
    status,
    warnings,
    clear: (first) => {
      work.first = first;
      status.fill(0);
      warnings.fill(0);
      for (const column of columns.values()) column.fill(Number.NaN);
    },
  };
  return work;
}
