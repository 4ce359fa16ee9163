import { readFileSync } from 'node:fs';
import { UsageError, whyNot } from './command.js';
import { type DecodedText, decodedText, encodingOf } from './decoded-text.js';

/**
 * Reads a text file.
 * @throws UsageError when it cannot be read
 */
export function readTextFile(path: string): DecodedText {
  try {
    return decodedText(readFileSync(path));
  } catch (error) {
    throw new UsageError(`cannot read ${path}: ${whyNot(error)}`);
  }
}

/** The text of a stream of bytes, in the encoding that its first piece shows. */
export async function* textOf(bytes: AsyncIterable<Uint8Array>): AsyncIterable<string> {
  let decode: ((piece?: Uint8Array) => string) | undefined;
  for await (const piece of bytes) {
    decode ??= decoderOf(encodingOf(piece, true));
    yield decode(piece);
  }
  yield decode?.() ?? '';
}

function decoderOf(encoding: string): (piece?: Uint8Array) => string {
  const decoder = new TextDecoder(encoding);
  return (piece) => decoder.decode(piece, { stream: piece !== undefined });
}
