import { LAUNCH_NEEDS } from '../inputs/launch.js';
import { type MeasuredShot, measuredShotFields } from '../inputs/measured-shot.js';
import { allows } from '../inputs/read.js';
import { fromUnit, inUnit, type Unit } from '../units/unit.js';
import type { NumberName, TextName } from './column-names.js';
import { numberColumns } from './columns.js';
import type { CsvRecord } from './csv.js';
import { type DecimalMark, readNumber } from './number-text.js';
import type { Rejection } from './rejection.js';
import { contradictions } from './shot-checks.js';
import { type Column, enough, headerOf, NEEDS, type ShotNeeds } from './shot-header.js';
import { symbolOf, UNIT_KINDS } from './unit-names.js';

type Trouble = Omit<Rejection, 'scope'>;
type Numbers = Partial<Record<NumberName, number>>;

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
  columns: readonly Column[],
  mark: DecimalMark,
  needs: ShotNeeds,
): RowReading {
  const broken = malformed(row, columns);
  if (broken !== undefined) return { troubles: [broken] };
  const troubles: Trouble[] = [];
  const numbers: Numbers = {};
  const texts: Partial<Record<TextName, string>> = {};
  const aside: (readonly [header: string, text: string])[] = [];
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
        if (message === undefined) numbers[heading.field] = fromUnit(heading.unit, reading.value);
        else troubles.push({ ...trouble, reason: 'impossible-value', message });
      }
    } else if (header !== '') aside.push([header, cell.text]);
  }
  const { shot, derived } = assemble(numbers, texts, row.line);
  for (const { field, from, note } of derived) {
    const { said } = measuredShotFields[field];
    const value = Number(shot[field]);
    const message = beyondBounds(field, said, Number(inUnit(said, value).toPrecision(4)), value);
    if (message === undefined) continue;
    const column = headerOf(columns, from);
    troubles.push({ line: row.line, column, reason: 'impossible-value', message: `${note}: ${message}` });
  }
  for (const { field, message } of contradictions(shot, numbers.smashFactor)) {
    troubles.push({ line: row.line, column: headerOf(columns, field), reason: 'contradiction', message });
  }
  if (troubles.length === 0 && !enough((field) => numbers[field] !== undefined, needs)) {
    troubles.push({ line: row.line, column: '', reason: 'missing-value', message: missing(numbers, needs) });
  }
  return troubles.length > 0
    ? { troubles }
    : { shot, aside: Object.fromEntries(aside), derived: derived.map(({ note }) => note) };
}

function malformed(row: CsvRecord, columns: readonly Column[]): Trouble | undefined {
  const trouble = { line: row.line, column: '' };
  const width = columns.length;
  if (row.problem !== undefined) return { ...trouble, reason: 'malformed-row', message: row.problem };
  if (row.fields.length === width && row.fields.every(({ text }, i) => text.trim() === columns[i]?.header)) {
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
function impossible(field: NumberName, unit: Unit, value: number): string | undefined {
  const beyond = beyondBounds(field, unit, value, fromUnit(unit, value));
  if (beyond === undefined) return undefined;
  const { usual } = numberColumns[field];
  const meant = UNIT_KINDS[usual.si].units.find(
    (other) => other.unit !== unit && allows(usual, fromUnit(other.unit, value)),
  );
  const hint =
    meant === undefined ? '' : `; if the column is in ${symbolOf(meant.unit)}, say so in its header`;
  return `${beyond}${hint}`;
}

/** Says that a value lies outside what is possible, in a unit. */
function beyondBounds(field: NumberName, unit: Unit, value: number, si: number): string | undefined {
  const { possible } = numberColumns[field];
  if (allows(possible, si)) return undefined;
  const [low, high] = [possible.min, possible.max].map((end) => Number(inUnit(unit, end).toPrecision(3)));
  const symbol = unit.si === '' ? '' : ` ${unit.symbol}`;
  return `${value}${symbol} is impossible: it must be between ${low} and ${high}${symbol}`;
}

function missing(numbers: Numbers, needs: ShotNeeds): string {
  const wanted = needs === 'club-speed' ? (['clubSpeed'] as const) : LAUNCH_NEEDS;
  const gaps = wanted
    .filter((field) => numbers[field] === undefined)
    .map((field) => measuredShotFields[field].label);
  return `a value is missing (${gaps.join(', ')}): ${NEEDS[needs]}`;
}

/** A reading that follows from others. */
interface Derived {
  readonly field: 'ballSpeed' | 'spinRate';
  /** Column that it stands or falls with. */
  readonly from: NumberName;
  readonly note: string;
}

/** Puts the shot together; what was not measured but follows exactly from what was is worked out and noted. */
function assemble(
  numbers: Numbers,
  texts: Partial<Record<TextName, string>>,
  line: number,
): { shot: MeasuredShot; derived: readonly Derived[] } {
  const { smashFactor, backspin, sidespin, ...measured } = numbers;
  const derived: Derived[] = [];
  if (measured.ballSpeed === undefined && measured.clubSpeed !== undefined && smashFactor !== undefined) {
    measured.ballSpeed = measured.clubSpeed * smashFactor;
    const note = 'ball speed is worked out from club speed and smash factor';
    derived.push({ field: 'ballSpeed', from: 'smashFactor', note });
  }
  if (measured.spinRate === undefined && backspin !== undefined) {
    measured.spinRate = Math.hypot(backspin, sidespin ?? 0);
    if (sidespin !== undefined && measured.spinAxisTilt === undefined) {
      measured.spinAxisTilt = Math.atan2(sidespin, backspin);
    }
    const note = 'spin is worked out from backspin and sidespin';
    derived.push({ field: 'spinRate', from: 'backspin', note });
  }
  return { shot: { ...measured, ...texts, line } as MeasuredShot, derived };
}
