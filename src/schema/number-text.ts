import { describe } from '../errors.js';

/** Which mark separates the decimals. */
export type DecimalMark = '.' | ',';

/** What a cell in a column of numbers holds. */
export type CellReading =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'blank' }
  | { readonly kind: 'refused'; readonly message: string };

const PLACEHOLDERS: ReadonlySet<string> = new Set(['', '-', '--', '–', '—', 'n/a', 'na']);

// No two parts of an expression here may share a run of characters: what can be shared out in many ways is tried in all.
const WITH_POINT = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/iu;
const WITH_COMMA = /^[+-]?(?:\d+(?:,\d*)?|,\d+)$/u;

/** Reads one cell. Nothing is guessed: thousands marks, units and side letters in the cell are refused with a hint. */
export function readNumber(text: string, mark: DecimalMark): CellReading {
  const cell = text.trim().replace(/^[−–](?=[\d.,])/u, '-');
  if (PLACEHOLDERS.has(cell.toLowerCase())) return { kind: 'blank' };
  const decimal = mark === '.' ? WITH_POINT : WITH_COMMA;
  if (decimal.test(cell)) return { kind: 'number', value: Number(cell.replace(',', '.')) };
  return { kind: 'refused', message: `${describe(text.trim())} is not a number${hintFor(cell, mark)}` };
}

function hintFor(cell: string, mark: DecimalMark): string {
  if (/^[+-]?\d{1,3}([.,' ]\d{3})+([.,]\d+)?$/u.test(cell)) {
    return '; write numbers without a thousands mark';
  }
  if (/^[+-]?\d+[.,]\d+$/u.test(cell)) return `; the rest of this file writes decimals with "${mark}"`;
  if (/^[+-]?[\d.,]+\s*[lr]$/iu.test(cell)) return '; write sides with a sign: + right, - left';
  if (/^[+-]?[\d.,]+\s*[a-z°/%]+\d*$/iu.test(cell)) return '; units belong in the header';
  return '';
}

/**
 * Finds the decimal mark of a file from its cells: the one most cells use. `12,345` counts for neither, since it may
 * be twelve and a bit or twelve thousand.
 */
export function findDecimalMark(cells: Iterable<string>): DecimalMark {
  let points = 0;
  let commas = 0;
  for (const cell of cells) {
    if (/^\s*[+−-]?\d*\.\d+\s*$/u.test(cell)) points += 1;
    else if (/^\s*[+−-]?\d*,(\d{1,2}|\d{4,})\s*$/u.test(cell)) commas += 1;
  }
  return commas > points ? ',' : '.';
}
