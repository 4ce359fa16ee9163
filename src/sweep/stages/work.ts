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
  /** Sets every column to NaN and every status to landed. */
  readonly clear: () => void;
}

/** Makes scratch for chunks of `rows` rows. @internal */
export function createWork(rows: number): Work {
  const columns = new Map<WorkColumn, Float64Array>();
  const status = new Uint8Array(rows);
  return {
    column: (name) => {
      let column = columns.get(name);
      if (column === undefined) {
        column = new Float64Array(rows).fill(Number.NaN);
        columns.set(name, column);
      }
      return column;
    },
    status,
    clear: () => {
      status.fill(0);
      for (const column of columns.values()) column.fill(Number.NaN);
    },
  };
}
