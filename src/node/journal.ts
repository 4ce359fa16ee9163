import { type FileHandle, open, readFile } from 'node:fs/promises';
import { deserialize, serialize } from 'node:v8';
import { crc32 } from 'node:zlib';
import { refusal } from '../inputs/refuse.js';
import type { EncodedChunk, PlacedChunk } from './formats/format.js';

/**
 * Beside an unfinished file lies its journal: a line of JSON that tells which sweep it is, and one line for each chunk
 * that is safely in the file, with its length, checksum and what the file's end will need to know of it. After a crash
 * the file is cut back to the last chunk that is whole, and the sweep goes on from there.
 */
interface JournalLine {
  readonly rows: number;
  readonly bytes: number;
  readonly crc: number;
  readonly note: string;
}

/** An unfinished file that can be resumed. @internal */
export interface Recovered {
  readonly chunks: readonly PlacedChunk[];
  /** Length of the file that is whole [bytes]. */
  readonly length: number;
  /** Length of the journal that belongs to it [bytes]. */
  readonly journalLength: number;
}

/** First line of the journal. @internal */
export function titleLine(identity: string, headLength: number): string {
  return `${JSON.stringify({ identity, headLength })}\n`;
}

/** Line for a chunk. @internal */
export function chunkLine(rows: number, { bytes, note }: EncodedChunk): string {
  const line: JournalLine = {
    rows,
    bytes: bytes.length,
    crc: crc32(bytes),
    note: serialize(note).toString('base64'),
  };
  return `${JSON.stringify(line)}\n`;
}

/**
 * Finds how much of an unfinished file is whole: every chunk has its line, its length and its checksum. Undefined when
 * not even the beginning is.
 * @throws `FairflightError` `invalid-input` when the file belongs to another sweep
 * @internal
 */
export async function recover(
  partial: string,
  journal: string,
  identity: string,
  head: Uint8Array,
): Promise<Recovered | undefined> {
  const text = await readFile(journal, 'utf8').catch(() => '');
  // What follows the last line end was cut short.
  const lines = text
    .slice(0, text.lastIndexOf('\n') + 1)
    .split('\n')
    .slice(0, -1);
  const [title = '', ...rest] = lines;
  if (title === '') return undefined;
  if (`${title}\n` !== titleLine(identity, head.length)) {
    throw refusal(
      'path',
      `${partial} is an unfinished file of another sweep: design, scene, options or library version differ`,
      { value: partial, hint: 'pass overwrite: true, or another path' },
    );
  }
  const file = await open(partial).catch(() => undefined);
  if (file === undefined) return undefined;
  try {
    const begin = await bytesAt(file, 0, head.length);
    if (!begin?.equals(head)) return undefined;
    const chunks: PlacedChunk[] = [];
    let length = head.length;
    let journalLength = Buffer.byteLength(title) + 1;
    for (const raw of rest) {
      const line = parsed(raw);
      if (line === undefined) break;
      const bytes = await bytesAt(file, length, line.bytes);
      if (bytes === undefined || crc32(bytes) !== line.crc) break;
      chunks.push({
        offset: length,
        rows: line.rows,
        note: deserialize(Buffer.from(line.note, 'base64')),
      });
      length += line.bytes;
      journalLength += Buffer.byteLength(raw) + 1;
    }
    return { chunks, length, journalLength };
  } finally {
    await file.close();
  }
}

function parsed(raw: string): JournalLine | undefined {
  try {
    return JSON.parse(raw) as JournalLine;
  } catch {
    return undefined;
  }
}

async function bytesAt(file: FileHandle, position: number, length: number): Promise<Buffer | undefined> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(length), 0, length, position);
  return bytesRead === length ? buffer : undefined;
}
