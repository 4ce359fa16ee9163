import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { Stream } from '../../../src/numerics/stream.js';

/** Ways in which a file goes wrong on a disk. */
const DAMAGES: readonly ((bytes: Buffer, random: Stream) => Buffer)[] = [
  // A flipped bit.
  (bytes, random) => {
    const at = random.integer(bytes.length);
    bytes[at] = (bytes[at] as number) ^ (1 << random.integer(8));
    return bytes;
  },
  // Cut short.
  (bytes, random) => bytes.subarray(0, random.integer(bytes.length)),
  // NULs in a stretch, as after a power cut.
  (bytes, random) => bytes.fill(0, random.integer(bytes.length)),
  // A sector of another file.
  (bytes, random) => {
    const at = random.integer(bytes.length);
    for (let i = at; i < Math.min(bytes.length, at + 512); i++) bytes[i] = random.integer(256);
    return bytes;
  },
  // Something behind the end.
  (bytes, random) => Buffer.concat([bytes, Buffer.from('{"rows":1}\nnull\n\0'.slice(random.integer(9)))]),
  // Two pieces exchanged.
  (bytes, random) => {
    const at = random.integer(bytes.length);
    return Buffer.concat([bytes.subarray(at), bytes.subarray(0, at)]);
  },
  // All of it gone.
  () => Buffer.alloc(0),
];

/** Damages a file; true when it is no longer what it was. */
export function damage(path: string, random: Stream): boolean {
  if (!existsSync(path)) return false;
  const before = readFileSync(path);
  if (before.length === 0) return false;
  const kind = random.integer(DAMAGES.length + 1);
  const harm = DAMAGES[kind];
  if (harm === undefined) {
    rmSync(path);
    return true;
  }
  const after = harm(Buffer.from(before), random);
  writeFileSync(path, after);
  return !after.equals(before);
}
