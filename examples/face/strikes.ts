import { csvParse } from 'd3-dsv';
import type { StrikeOffset } from 'fairflight';
import { inches, type Length, millimetres } from 'fairflight/units';
import { UsageError } from '../lib/usage-error.js';

const UNITS: Readonly<Record<string, (value: number) => Length>> = {
  mm: millimetres,
  in: inches,
  inch: inches,
  cm: (value) => millimetres(10 * value),
};
const NAMES: Readonly<Record<keyof StrikeOffset, RegExp>> = {
  toe: /^(?:strike |impact )?toe\b/i,
  high: /^(?:strike |impact )?(?:high|height)\b/i,
};

interface OffsetColumn {
  readonly header: string;
  readonly make: (value: number) => Length;
}

function columnFor(field: keyof StrikeOffset, headers: readonly string[]): OffsetColumn | undefined {
  const header = headers.find((each) => NAMES[field].test(each.trim()));
  if (header === undefined) return undefined;
  const open = header.indexOf('(');
  const close = header.indexOf(')', open);
  const unit =
    open < 0 || close < 0
      ? ''
      : header
          .slice(open + 1, close)
          .trim()
          .toLowerCase();
  const make = UNITS[unit];
  if (make !== undefined) return { header, make };
  throw new UsageError(`column ${JSON.stringify(header)} needs a unit in brackets: mm, cm or in`);
}

/** What was measured on the face itself, with impact tape or powder. */
export interface MeasuredStrikes {
  /** One entry a row; undefined where a row has none. */
  readonly strikes: readonly (StrikeOffset | undefined)[];
  /** Rows left out, and why. */
  readonly leftOut: readonly string[];
}

/** Finds toe and height in rows of text; undefined when there are no such columns. @throws UsageError without units */
export function strikesIn(
  rows: readonly Readonly<Record<string, string | undefined>>[],
  headers: readonly string[],
  lineOf: (row: number) => number,
): MeasuredStrikes | undefined {
  const toe = columnFor('toe', headers);
  const high = columnFor('high', headers);
  if (toe === undefined || high === undefined) return undefined;
  const leftOut: string[] = [];
  const strikes = rows.map((row, i) => {
    const texts = [row[toe.header]?.trim() ?? '', row[high.header]?.trim() ?? ''];
    if (texts.every((text) => text === '')) return undefined;
    const [x = Number.NaN, y = Number.NaN] = texts.map((text) => (text === '' ? Number.NaN : Number(text)));
    const offset = { toe: toe.make(x), high: high.make(y) };
    if (Math.abs(offset.toe) <= 0.06 && Math.abs(offset.high) <= 0.04) return offset;
    const what =
      Number.isFinite(x) && Number.isFinite(y) ? 'not on the face (60 mm by 40 mm)' : 'not two numbers';
    leftOut.push(`line ${lineOf(i)}: ${JSON.stringify(texts.join(', '))} is ${what}`);
    return undefined;
  });
  return { strikes, leftOut };
}

/** Reads a CSV of strikes: columns such as `toe (mm)` and `high (mm)`. @throws UsageError when there are none */
export function readStrikes(file: string, text: string): MeasuredStrikes {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/);
  const comments = lines.findIndex((line) => line.trim() !== '' && !line.startsWith('#'));
  const rows = csvParse(lines.slice(Math.max(0, comments)).join('\n'));
  const found = strikesIn(rows, rows.columns, (row) => comments + row + 2);
  if (found === undefined) {
    throw new UsageError(`${file} needs the columns toe (mm) and high (mm); + is toward the toe and up`);
  }
  if (found.strikes.some((strike) => strike !== undefined)) return found;
  throw new UsageError(`no usable strike in ${file}${found.leftOut.map((line) => `\n  ${line}`).join('')}`);
}
