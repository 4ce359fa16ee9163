import { type FileHandle, open, readFile } from 'node:fs/promises';
import { deserialize, serialize } from 'node:v8';
import { crc32 } from 'node:zlib';
import type { EncodedChunk, PlacedChunk } from './formats/format.js';
import { bytesAt, hexOf } from './formats/seal.js';

/**
 * Beside the rows of an unfinished file lies its journal: a line that tells which sweep it is, and one line for each chunk
 * that is safely in the file, with its length, the checksum of the file up to its end, and what the file's end will need
 * to know of it. Every line begins with a checksum of its own. After a crash the sweep goes on from the last chunk that is
 * whole; what follows is written over with the same bytes.
 */
interface JournalLine {
  readonly rows: number;
  readonly bytes: number;
  readonly crc: number;
  readonly warnings: readonly number[];
  readonly note: string;
}

/** How much of an unfinished file is whole. @internal */
export interface Recovered {
  readonly chunks: readonly PlacedChunk[];
  /** Length of the file that is whole [bytes]. */
  readonly length: number;
  /** Checksum of the file up to there. */
  readonly crc: number;
  /** Length of the journal that belongs to it [bytes]. */
  readonly noted: number;
}

/** First line of the journal. @internal */
export function titleLine(identity: string): string {
  return lineOf({ identity });
}

/** Line for a chunk. @param crc - checksum of the file up to its end @internal */
export function chunkLine(rows: number, { bytes, warningCounts, note }: EncodedChunk, crc: number): string {
  const line: JournalLine = {
    rows,
    bytes: bytes.length,
    crc,
    warnings: warningCounts,
    note: serialize(note).toString('base64'),
  };
  return lineOf(line);
}

function lineOf(content: object): string {
  const text = JSON.stringify(content);
  return `${hexOf(crc32(text))} ${text}\n`;
}

/** What a line says; undefined when any of it has changed. The line is of bytes, one a character. */
function contentOf(line: string): object | undefined {
  const text = Buffer.from(line.slice(9), 'latin1');
  return line.startsWith(`${hexOf(crc32(text))} `)
    ? (JSON.parse(text.toString('utf8')) as object)
    : undefined;
}

/** The lines of a journal; what follows the last line end was cut short. Nothing where it cannot be read. */
async function linesOf(journal: string): Promise<readonly string[]> {
  const text = await readFile(journal, 'latin1').catch(() => '');
  return text.split('\n').slice(0, -1);
}

/** The sweep that an unfinished file is of; undefined when its journal does not say. @internal */
export async function identityOf(journal: string): Promise<string | undefined> {
  const [title] = await linesOf(journal);
  return (title === undefined ? undefined : (contentOf(title) as { identity?: string } | undefined))
    ?.identity;
}

/**
 * Finds how much of an unfinished file is whole: every chunk has its line, its length and its checksum. Undefined when
 * not even the beginning is.
 * @internal
 */
export async function recover(
  rows: string,
  journal: string,
  head: Uint8Array,
): Promise<Recovered | undefined> {
  const file = await open(rows).catch(() => undefined);
  if (file === undefined) return undefined;
  try {
    return await wholePart(file, await linesOf(journal), head);
  } catch {
    // A disk that does not give the bytes back: they are computed anew.
    return undefined;
  } finally {
    await file.close();
  }
}

async function wholePart(
  file: FileHandle,
  [title = '', ...rest]: readonly string[],
  head: Uint8Array,
): Promise<Recovered | undefined> {
  if (!(await bytesAt(file, 0, head.length)).equals(head)) return undefined;
  const chunks: PlacedChunk[] = [];
  let length = head.length;
  let crc = crc32(head);
  let noted = title.length + 1;
  for (const raw of rest) {
    const line = contentOf(raw) as JournalLine | undefined;
    if (line === undefined) break;
    const bytes = await bytesAt(file, length, line.bytes);
    const here = crc32(bytes, crc);
    if (bytes.length !== line.bytes || here !== line.crc) break;
    const note: unknown = deserialize(Buffer.from(line.note, 'base64'));
    chunks.push({ offset: length, rows: line.rows, warningCounts: line.warnings, note });
    length += line.bytes;
    crc = here;
    noted += raw.length + 1;
  }
  return { chunks, length, crc, noted };
}
