import { rowWarnings, type SweepAbout, type SweepRows } from '../../sweep/index.js';

/** Names of the file formats. */
export type SweepFormat = 'csv' | 'parquet' | 'arrow';

/** A chunk as bytes, and what the end of the file will need to know of it. @internal */
export interface EncodedChunk {
  readonly bytes: Uint8Array;
  /** Rows of the chunk that raise each of `rowWarnings`. */
  readonly warningCounts: readonly number[];
  /** Structured-clonable; positions in it count from the first byte of the chunk. */
  readonly note: unknown;
}

/** A chunk that has its place in the file. @internal */
export interface PlacedChunk {
  readonly offset: number;
  readonly rows: number;
  readonly warningCounts: readonly number[];
  readonly note: unknown;
}

/**
 * Writes a sweep as a file in three parts. No part depends on where in the file a chunk lies, so that chunks can be
 * made on any thread, and the end can be made from notes after a restart.
 * @internal
 */
export interface Encoder {
  readonly head: () => Uint8Array;
  readonly chunk: (rows: SweepRows) => EncodedChunk;
  /** Holds `UNSEALED` once. @param offset - length of the file so far */
  readonly tail: (chunks: readonly PlacedChunk[], offset: number) => Uint8Array;
}

/** Rows that raise a warning, by its code; a code that no row raises is left out. */
export type WarningCounts = Readonly<Record<string, number>>;

/** What a file says of itself. @internal */
export interface SelfDescription {
  readonly about: SweepAbout;
  readonly warnings: WarningCounts;
}

/** Sums up the chunks of a file. @internal */
export function warningsOf(chunks: readonly PlacedChunk[]): WarningCounts {
  const counts = rowWarnings.map((code, k) => {
    return [code, chunks.reduce((sum, { warningCounts }) => sum + (warningCounts[k] ?? 0), 0)] as const;
  });
  return Object.fromEntries(counts.filter(([, rows]) => rows > 0));
}

/** A file format. @internal */
export interface Format {
  /** Makes an encoder for one sweep. @throws FairflightError `unsupported` when a package is missing */
  readonly encoder: (about: SweepAbout) => Promise<Encoder>;
  /** What a whole file says of itself; undefined where it does not. */
  readonly about: (path: string) => Promise<SelfDescription | undefined>;
}

/** Key under which files carry the {@link SweepAbout} as JSON. @internal */
export const ABOUT_KEY = 'fairflight.sweep';

/** Key under which files carry their {@link WarningCounts} as JSON, where the format has keys. @internal */
export const WARNINGS_KEY = 'fairflight.warnings';

/** Key under which files carry their checksum, where the format has keys. @internal */
export const CHECKSUM_KEY = 'fairflight.checksum';

/** Name of the column that says how a row ended. @internal */
export const STATUS_COLUMN = 'status';
