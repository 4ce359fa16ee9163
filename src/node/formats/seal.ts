import type { FileHandle } from 'node:fs/promises';
import { crc32 } from 'node:zlib';

/**
 * The end of every file carries this mark, and in the place of the zeros the checksum (CRC-32) of all its bytes, taken
 * with the zeros in place. So a file in which any byte has changed, or that is cut short, is told from one that is whole.
 * @internal
 */
export const UNSEALED = 'fairflight-crc32:00000000';
const MARK = Buffer.from(UNSEALED.slice(0, -8));
/** The mark stands within so many bytes of the end. */
const REACH = 2 ** 20;
/** Bytes read at a time. */
const PIECE = 2 ** 22;

/**
 * The end of a file with the file's checksum in it.
 * @param crc - checksum of all bytes before the end
 * @internal
 */
export function sealed(tail: Uint8Array, crc: number): Uint8Array {
  const bytes = Buffer.from(tail);
  const at = bytes.lastIndexOf(UNSEALED);
  bytes.write(hexOf(crc32(bytes, crc)), at + MARK.length, 'latin1');
  return bytes;
}

/** Eight hexadecimal digits. @internal */
export function hexOf(crc: number): string {
  return crc.toString(16).padStart(8, '0');
}

/**
 * What the checksum says of a file: `cut-short` when there is none near its end, `damaged` when it is not that of the
 * bytes.
 * @internal
 */
export async function sealState(file: FileHandle): Promise<'whole' | 'damaged' | 'cut-short'> {
  const { size } = await file.stat();
  const from = Math.max(0, size - REACH);
  const end = await bytesAt(file, from, size - from);
  const mark = end.lastIndexOf(MARK);
  if (mark < 0) return 'cut-short';
  const zeros = from + mark + MARK.length;
  const written = end.toString('latin1', zeros - from, zeros - from + 8);
  let crc = 0;
  for (let at = 0; at < size; at += PIECE) {
    const bytes = await bytesAt(file, at, Math.min(PIECE, size - at));
    for (let i = Math.max(zeros, at); i < Math.min(zeros + 8, at + bytes.length); i++) bytes[i - at] = 48;
    crc = crc32(bytes, crc);
  }
  return written === hexOf(crc) ? 'whole' : 'damaged';
}

/** Bytes of a file; fewer where it ends. @internal */
export async function bytesAt(file: FileHandle, position: number, length: number): Promise<Buffer> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(length), 0, length, position);
  return buffer.subarray(0, bytesRead);
}
