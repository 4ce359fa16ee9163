import { readFileSync } from 'node:fs';
import { UsageError, whyNot } from './command.js';
import { type DecodedText, decodedText } from './decoded-text.js';

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
