import { describe } from '../errors.js';
import type { SiUnit, Unit } from '../units/unit.js';
import { findUnit } from './unit-names.js';

/** Which mark separates the decimals. */
export type DecimalMark = '.' | ',';

/** What a cell in a column of numbers holds; `unit` where the cell itself says one. */
export type CellReading =
  | { readonly kind: 'number'; readonly value: number; readonly unit?: Unit }
  | { readonly kind: 'blank' }
  | { readonly kind: 'refused'; readonly message: string };

const PLACEHOLDERS: ReadonlySet<string> = new Set([
  '',
  '-',
  '--',
  '---',
  '–',
  '—',
  'n/a',
  'na',
  '#n/a',
  'nan',
  'null',
  'none',
]);

/** A number has fewer characters, with its unit and side. */
const LONGEST_CELL = 48;

// No two parts of an expression here may share a run of characters: what can be shared out in many ways is tried in all.
const WITH_POINT = /^(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/iu;
const WITH_COMMA = /^(?:\d+(?:,\d*)?|,\d+)$/u;
const THOUSANDS = /^[1-9]\d{0,2}([,.'’ \u00a0\u202f])\d{3}(?:\1\d{3})*(?=$|[.,])/u;
/** Side, sign, number, and what stands behind it; the cell is short, so that shared runs cost nothing. */
const PARTS =
  /^(left|right|[lr])?\s*([+-])?\s*([\d.,]+(?:['’ \u00a0\u202f]\d{3})*[\d.,]*(?:e[+-]?\d+)?)(.*)$/isu;
const SIDE = /^(?:left|right|[lr])$/iu;

/**
 * Reads one cell of a column of numbers: `2600`, `2,600`, `138.9 mph`, `12.3 L`, `147%`.
 * @param si - kind of quantity, which says what units the cell may name
 * @param sided - true where L and R stand for a sign: − left, + right
 */
export function readNumber(text: string, mark: DecimalMark, si: SiUnit, sided: boolean): CellReading {
  const cell = text.trim().replace(/^[−–](?=[\d.,])/u, '-');
  if (PLACEHOLDERS.has(cell.toLowerCase())) return { kind: 'blank' };
  const refused = (hint = ''): CellReading => ({
    kind: 'refused',
    message: `${describe(text.trim())} is not a number${hint}`,
  });
  if (cell.length > LONGEST_CELL) return refused();
  const parts = PARTS.exec(cell);
  if (parts === null) return refused();
  const [, before, sign, digits = '', behind = ''] = parts;
  const size = sizeOf(digits.trim(), mark);
  if (size === undefined) return refused(hintFor(digits.trim(), mark));
  const { unit, side, rest } = unitAndSide(behind, si);
  if (rest !== undefined) return refused(`; ${describe(rest)} is neither a unit nor a side known here`);
  const sides = [before, side].filter((each) => each !== undefined);
  if (sides.length > 0 && (!sided || sides.length > 1 || sign !== undefined)) {
    return refused(
      sided ? '; it says its side twice' : '; left and right are no part of what this column holds',
    );
  }
  const negative = sign === '-' || /^l/iu.test(sides[0] ?? '');
  return { kind: 'number', value: negative ? -size : size, ...(unit && { unit }) };
}

/** The number that digits with marks stand for; undefined where they don't. */
function sizeOf(digits: string, mark: DecimalMark): number | undefined {
  const thousands = THOUSANDS.exec(digits);
  const separator = thousands?.[1];
  const plain =
    thousands === null || separator === mark
      ? digits
      : thousands[0].replaceAll(separator ?? '', '') + digits.slice(thousands[0].length);
  const decimal = mark === '.' ? WITH_POINT : WITH_COMMA;
  return decimal.test(plain) ? Number(plain.replace(',', '.')) : undefined;
}

function unitAndSide(text: string, si: SiUnit): { unit?: Unit; side?: string; rest?: string } {
  const trimmed = text.trim();
  if (trimmed === '') return {};
  // A unit first: `m` is metres, and no unit is called l or r.
  const whole = findUnit(si, trimmed);
  if (whole !== undefined) return { unit: whole };
  if (SIDE.test(trimmed)) return { side: trimmed };
  const split = /^(\S+)\s+(\S+)$/u.exec(trimmed);
  const [first = '', second = ''] = split === null ? [] : [split[1], split[2]];
  for (const [unitText, side] of [
    [first, second],
    [second, first],
  ] as const) {
    const unit = findUnit(si, unitText);
    if (unit !== undefined && SIDE.test(side)) return { unit, side };
  }
  return { rest: trimmed };
}

function hintFor(digits: string, mark: DecimalMark): string {
  return /^\d+[.,]\d+$/u.test(digits) ? `; the rest of this file writes decimals with "${mark}"` : '';
}

/**
 * Finds the decimal mark of a file from its cells: the one most cells use. `12,345` counts for neither, since it may
 * be twelve and a bit or twelve thousand.
 */
export function findDecimalMark(cells: Iterable<string>): DecimalMark {
  let points = 0;
  let commas = 0;
  for (const cell of cells) {
    if (cell.length > LONGEST_CELL) continue;
    const digits = /[\d.,]+/u.exec(cell)?.[0] ?? '';
    if (/^\d*\.\d+$/u.test(digits)) points += 1;
    else if (/^\d*,(?:\d{1,2}|\d{4,})$/u.test(digits)) commas += 1;
  }
  return commas > points ? ',' : '.';
}
