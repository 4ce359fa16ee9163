import { type FileHandle, open } from 'node:fs/promises';
import { crc32 } from 'node:zlib';
import { isFairflightError } from '../errors.js';
import { refuseSystem, systemCode, writeAll } from './disk.js';
import type { EncodedChunk, PlacedChunk } from './formats/format.js';
import { sealed, sealState } from './formats/seal.js';
import { chunkLine, type Recovered, titleLine } from './journal.js';
import { type Partial, publish, requireOwn } from './partial.js';

/** The writer of an unfinished file. Each step ends in a `FairflightError` when the disk or another process is in its way. @internal */
export interface Unfinished {
  /** Rows that were there already. */
  readonly resumedAt: number;
  /** The chunks that are in the file. */
  readonly chunks: readonly PlacedChunk[];
  readonly append: (chunk: EncodedChunk, rows: number) => Promise<void>;
  /** Writes the end and gives the file its name; returns its size [bytes]. */
  readonly finish: (
    tail: (chunks: readonly PlacedChunk[], offset: number) => Uint8Array,
    overwrite: boolean,
  ) => Promise<number>;
  /** Ends what was not finished; what went wrong before matters more than what goes wrong here. */
  readonly close: () => Promise<void>;
}

/**
 * Opens an unfinished file: a new one, or one that was found whole up to a place. Nothing is ever cut off it, so that a
 * former writer who still holds it open can do no harm: what it writes, by the same study, are the same bytes.
 * @internal
 */
export async function openUnfinished(
  path: string,
  partial: Partial,
  identity: string,
  head: Uint8Array,
  found: Recovered | undefined,
): Promise<Unfinished> {
  const guarded = async <T>(step: Promise<T>): Promise<T> =>
    step.catch(async (error: unknown) => {
      if (isFairflightError(error) || systemCode(error) === undefined) throw error;
      if (systemCode(error) === 'ENOENT') await requireOwn(path, partial);
      throw refuseSystem(path, error);
    });
  const flags = found === undefined ? 'wx' : 'r+';
  const file = await guarded(open(partial.rows, flags));
  const journal = await guarded(open(partial.journal, flags)).catch(async (error: unknown) => {
    await file.close();
    throw error;
  });
  const chunks: PlacedChunk[] = [...(found?.chunks ?? [])];
  const resumedAt = chunks.reduce((sum, { rows }) => sum + rows, 0);
  let length = found?.length ?? 0;
  let crc = found?.crc ?? 0;
  let noted = found?.noted ?? 0;

  const write = async (bytes: Uint8Array): Promise<void> => {
    await requireOwn(path, partial);
    await writeAll(file, bytes, length);
    length += bytes.length;
    crc = crc32(bytes, crc);
  };
  const note = async (line: string): Promise<void> => {
    // A chunk is noted only when it is on the disk itself, not on its way there.
    await file.datasync();
    const bytes = Buffer.from(line);
    await writeAll(journal, bytes, noted);
    noted += bytes.length;
  };
  const append = async (encoded: EncodedChunk, rows: number): Promise<void> => {
    const offset = length;
    await write(encoded.bytes);
    await note(chunkLine(rows, encoded, crc));
    chunks.push({ offset, rows, warningCounts: encoded.warningCounts, note: encoded.note });
  };
  const close = (): Promise<void> => file.close().finally(() => journal.close());
  const finish: Unfinished['finish'] = async (tail, overwrite) => {
    await write(sealed(tail(chunks, length), crc));
    await file.truncate(length);
    await file.sync();
    if (found !== undefined) await requireWhole(file);
    await close();
    await publish(path, partial, overwrite);
    return length;
  };
  if (found === undefined) {
    const begin = write(head).then(() => note(titleLine(identity)));
    await guarded(begin).catch(async (error: unknown) => {
      await close().catch(() => undefined);
      throw error;
    });
  }
  return {
    resumedAt,
    chunks,
    append: (chunk, rows) => guarded(append(chunk, rows)),
    finish: (tail, overwrite) => guarded(finish(tail, overwrite)),
    close: () => close().catch(() => undefined),
  };
}

/** What others wrote before is read once more before it takes the final name. */
async function requireWhole(file: FileHandle): Promise<void> {
  if ((await sealState(file)) === 'whole') return;
  throw Object.assign(new Error('what is on the disk is not what was written'), { code: 'EIO' });
}
