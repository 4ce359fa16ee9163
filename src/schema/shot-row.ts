import type { MeasuredShot } from '../session/index.js';
import { type HelperField, NUMBER_COLUMNS, type QuantityField, type TextField } from './columns.js';
import type { CsvRecord } from './csv.js';
import { type DecimalMark, readNumber } from './number-text.js';
import type { Rejection } from './rejection.js';
import { contradictions } from './shot-checks.js';
import { type Column, enough, headerOf, NEEDS, type ShotNeeds } from './shot-header.js';
import { fromSi, UNIT_NAMES, type UnitName } from './unit-names.js';

type Trouble = Omit<Rejection, 'scope'>;
type Numbers = Partial<Record<QuantityField | HelperField, number>>;

/** What one row gave: a shot, or what is wrong with it. */
export type RowReading =
  | { readonly troubles: readonly Trouble[] }
  | {
      readonly shot: MeasuredShot;
      readonly aside: Readonly<Record<string, string>>;
      readonly derived: readonly string[];
    };

/** Reads one row below the header. */
export function readRow(
  row: CsvRecord,
  head: CsvRecord,
  columns: readonly Column[],
  mark: DecimalMark,
  needs: ShotNeeds,
): RowReading {
  const broken = malformed(row, head, columns.length);
  if (broken !== undefined) return { troubles: [broken] };
  const troubles: Trouble[] = [];
  const numbers: Numbers = {};
  const texts: Partial<Record<TextField, string>> = {};
  const aside: Record<string, string> = {};
  for (const [index, { header, heading }] of columns.entries()) {
    const cell = row.fields[index];
    if (cell === undefined || cell.text.trim() === '') continue;
    if (heading.kind === 'text') texts[heading.field] = cell.text.trim();
    else if (heading.kind === 'number') {
      const reading = readNumber(cell.text, mark);
      const trouble = { line: cell.line, column: header };
      if (reading.kind === 'refused') {
        troubles.push({ ...trouble, reason: 'not-a-number', message: reading.message });
      } else if (reading.kind === 'number') {
        const message = impossible(heading.field, heading.unit, reading.value);
        if (message === undefined) numbers[heading.field] = heading.unit.toSi(reading.value);
        else troubles.push({ ...trouble, reason: 'impossible-value', message });
      }
    } else if (header !== '') aside[header] = cell.text;
  }
  const { shot, derived } = assemble(numbers, texts, row.line);
  for (const { field, message } of contradictions(shot, numbers.smashFactor)) {
    troubles.push({ line: row.line, column: headerOf(columns, field), reason: 'contradiction', message });
  }
  if (troubles.length === 0 && !enough((field) => numbers[field] !== undefined, needs)) {
    troubles.push({ line: row.line, column: '', reason: 'missing-value', message: missing(numbers, needs) });
  }
  return troubles.length > 0 ? { troubles } : { shot, aside, derived };
}

function malformed(row: CsvRecord, head: CsvRecord, width: number): Trouble | undefined {
  const trouble = { line: row.line, column: '' };
  if (row.problem !== undefined) return { ...trouble, reason: 'malformed-row', message: row.problem };
  if (
    row.fields.length === width &&
    row.fields.every(({ text }, i) => text.trim() === head.fields[i]?.text.trim())
  ) {
    return { ...trouble, reason: 'unclear-header', message: 'the header line is repeated here' };
  }
  if (row.fields.length !== width) {
    const hint =
      row.fields.length > width
        ? '; a decimal comma needs another separator (semicolon) or quotes'
        : '; a cell is missing, or the line was cut short';
    const message = `the row has ${row.fields.length} fields where the header has ${width}${hint}`;
    return { ...trouble, reason: 'malformed-row', message };
  }
  return undefined;
}

/** Says what is wrong with a value that no shot can have, and which unit would mend it. */
function impossible(field: QuantityField | HelperField, unit: UnitName, value: number): string | undefined {
  const { possible, usual, dimension } = NUMBER_COLUMNS[field];
  const within = (si: number, [low, high]: readonly [number, number]): boolean => si >= low && si <= high;
  if (within(unit.toSi(value), possible)) return undefined;
  const [low, high] = possible.map((end) => Number(fromSi(unit, end).toPrecision(3))) as [number, number];
  const symbol = dimension === 'ratio' ? '' : ` ${unit.symbol}`;
  const meant = UNIT_NAMES[dimension].filter((other) => other !== unit && within(other.toSi(value), usual));
  const first = meant[0];
  const hint = first === undefined ? '' : `; if the column is in ${first.symbol}, say so in its header`;
  return `${value}${symbol} is impossible: it must be between ${low} and ${high}${symbol}${hint}`;
}

function missing(numbers: Numbers, needs: ShotNeeds): string {
  const wanted =
    needs === 'club-speed' ? (['clubSpeed'] as const) : (['ballSpeed', 'launchAngle', 'spinRate'] as const);
  const gaps = wanted
    .filter((field) => numbers[field] === undefined)
    .map((field) => NUMBER_COLUMNS[field].names[0]);
  return `a value is missing (${gaps.join(', ')}): ${NEEDS[needs]}`;
}

/** Puts the shot together; what was not measured but follows exactly from what was is worked out and noted. */
function assemble(
  numbers: Numbers,
  texts: Partial<Record<TextField, string>>,
  line: number,
): { shot: MeasuredShot; derived: readonly string[] } {
  const { smashFactor, backspin, sidespin, ...measured } = numbers;
  const derived: string[] = [];
  if (measured.ballSpeed === undefined && measured.clubSpeed !== undefined && smashFactor !== undefined) {
    measured.ballSpeed = measured.clubSpeed * smashFactor;
    derived.push('ball speed is worked out from club speed and smash factor');
  }
  if (measured.spinRate === undefined && backspin !== undefined) {
    measured.spinRate = Math.hypot(backspin, sidespin ?? 0);
    if (sidespin !== undefined && measured.spinAxisTilt === undefined) {
      measured.spinAxisTilt = Math.atan2(sidespin, backspin);
    }
    derived.push('spin is worked out from backspin and sidespin');
  }
  return { shot: { ...measured, ...texts, line } as MeasuredShot, derived };
}
