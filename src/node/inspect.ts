import { isFairflightError } from '../errors.js';
import type { SweepAbout } from '../sweep/index.js';
import { openToRead, refusePath } from './disk.js';
import type { SelfDescription, SweepFormat, WarningCounts } from './formats/format.js';
import { FORMATS, formatOf } from './formats/index.js';
import { sealState } from './formats/seal.js';

/** What {@link inspectSweepFile} found. */
export interface SweepFileState {
  /** Format of the file. */
  readonly format: SweepFormat;
  /**
   * `whole`: it has its end, and every byte is as it was written. `cut-short`: it has no end. `damaged`: a byte has
   * changed. Only what is whole may be used.
   */
  readonly state: 'whole' | 'cut-short' | 'damaged';
  /** What the file says of itself; only when it is whole. */
  readonly about?: SweepAbout;
  /** Rows that raise a warning, by its code; only when it is whole. */
  readonly warnings?: WarningCounts;
}

/**
 * Tells whether a file of {@link sweepToFile} is whole, by its checksum, and reads which sweep it holds. The file is read
 * through once.
 * @throws `FairflightError` `invalid-input` for an unknown ending, or where no file can be read at the path; `unsupported`
 *   when the package that reads the format is missing (hyparquet, apache-arrow)
 */
export async function inspectSweepFile(path: string, format?: SweepFormat): Promise<SweepFileState> {
  const known = formatOf(path, format, 'format');
  const file = await openToRead(path);
  const state = await sealState(file)
    .catch((error: unknown) => {
      throw refusePath(path, error);
    })
    .finally(() => file.close());
  if (state !== 'whole') return { format: known, state };
  const found: SelfDescription | undefined = await FORMATS[known].about(path).catch((error: unknown) => {
    if (isFairflightError(error)) throw error;
    // A file of another format has a checksum too.
    return undefined;
  });
  return found === undefined ? { format: known, state: 'damaged' } : { format: known, state, ...found };
}
