import { readFileSync } from 'node:fs';
import { UsageError, whyNot } from './command.js';

/** A text file, and notes on how it was read. */
export interface TextFile {
  readonly text: string;
  readonly notes: readonly string[];
}

/**
 * Reads a text file in UTF-8 or, as spreadsheets write them too, in UTF-16 or Windows-1252.
 * @throws UsageError when it cannot be read
 */
export function readTextFile(path: string): TextFile {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    throw new UsageError(`cannot read ${path}: ${whyNot(error)}`);
  }
  const encoding = encodingOf(bytes);
  const text = new TextDecoder(encoding).decode(bytes);
  return { text, notes: encoding === 'utf-8' ? [] : [`the file is read as ${encoding}`] };
}

function encodingOf(bytes: Uint8Array): 'utf-8' | 'utf-16le' | 'windows-1252' {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}
