import { dsvFormat } from 'd3-dsv';
import { shownCell, shownJson } from '../lib/terminal.js';
import type { AddedColumn } from './columns.js';
import type { Input, Row } from './input.js';
import type { Computed } from './model.js';

/** Turns a row and what was computed for it into a line. */
export interface Writer {
  /** Lines ahead of the rows. */
  readonly head: string;
  readonly line: (row: Row, found: Computed) => string;
}

/** CSV with the separator and the decimal mark of the input, so that its own columns stay as they were. */
export function csvWriter(input: Input, added: readonly AddedColumn[]): Writer {
  const { columns, readAs } = input;
  const { formatRow } = dsvFormat(readAs.separator ?? ',');
  const number = (value: number | undefined): string => {
    const text = value === undefined ? '' : String(value);
    return readAs.decimalMark === ',' ? text.replace('.', ',') : text;
  };
  const own = ({ cells }: Row): string[] => columns.map((_, at) => shownCell(cells[at] ?? ''));
  return {
    head: `${formatRow([...columns.map(shownCell), ...added.map(({ name }) => name)])}\n`,
    line: (row, found) => `${formatRow([...own(row), ...added.map(({ of }) => number(of(found)))])}\n`,
  };
}

/** JSON Lines: an object of JSON as it came, a row of CSV by its header, its readings as numbers. */
export function jsonWriter({ columns, readAs }: Input, added: readonly AddedColumn[]): Writer {
  const readings = new Set(Object.keys(readAs.columns ?? {}));
  const value = (at: number, text: string): unknown => {
    if (!readings.has((columns[at] ?? '').trim())) return text;
    const plain = readAs.decimalMark === ',' ? text.trim().replace(',', '.') : text.trim();
    if (plain === '') return null;
    return Number.isFinite(Number(plain)) ? Number(plain) : text;
  };
  const own = ({ object, cells }: Row): object =>
    object ?? Object.fromEntries(columns.map((name, at) => [name, value(at, cells[at] ?? '')]));
  return {
    head: '',
    line: (row, found) => {
      const more = Object.fromEntries(added.map(({ name, of }) => [name, of(found) ?? null]));
      return shownJson({ ...own(row), ...more }, 0);
    },
  };
}

/** Writes to the standard output no faster than it is read; false once nobody reads any more. */
export async function write(text: string): Promise<boolean> {
  if (process.stdout.destroyed) return false;
  return new Promise((resolve) => process.stdout.write(text, (error) => resolve(!error)));
}
