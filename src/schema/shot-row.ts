import { describe } from '../errors.js';
import { LAUNCH_NEEDS } from '../inputs/launch.js';
import { type MeasuredShot, measuredShotFields } from '../inputs/measured-shot.js';
import { allows } from '../inputs/read.js';
import { fromUnit, inUnit, type Unit } from '../units/unit.js';
import type { NumberName, WordName } from './column-names.js';
import { type Column, numberColumns } from './columns.js';
import type { CsvRecord } from './csv.js';
import { plainText } from './plain-text.js';
import type { RawRow } from './raw-rows.js';
import type { Rejection } from './rejection.js';
import { contradictions } from './shot-checks.js';
import { enough, headerOf, NEEDS, type ShotNeeds } from './shot-header.js';
import type { Units } from './unit-evidence.js';
import { symbolOf, UNIT_KINDS } from './unit-names.js';

type Trouble = Omit<Rejection, 'scope'>;
type Numbers = Partial<Record<NumberName, number>>;

/** What one row gave: a shot, and what of it could not be used; no shot when too little is left. */
export interface RowReading {
  readonly troubles: readonly Rejection[];
  readonly shot?: MeasuredShot;
  readonly aside: Readonly<Record<string, string>>;
  readonly derived: readonly string[];
}

/** How a table is read. */
export interface TableReading {
  readonly columns: readonly Column[];
  /** Unit of each column of numbers; one without is not used. */
  readonly units: Units;
  /** What the texts of dates stand for. */
  readonly days: ReadonlyMap<string, string>;
  readonly needs: ShotNeeds;
}

/** Readings that a row stands or falls with when they contradict each other; any other costs itself alone. */
const ROW_CONTRADICTIONS: ReadonlySet<NumberName> = new Set<NumberName>(['ballSpeed', 'spinRate', 'carry']);

/** Reads one row below the header. A cell that cannot be read costs that cell, unless the shot is worthless without it. */
export function readRow({ row, cells }: RawRow, table: TableReading): RowReading {
  const { columns, units, needs } = table;
  const broken = malformed(row, columns);
  if (broken !== undefined) return { troubles: [{ scope: 'row', ...broken }], aside: {}, derived: [] };
  const troubles: Rejection[] = [];
  const numbers: Numbers = {};
  const words: Partial<Record<WordName, string>> = {};
  const aside: (readonly [header: string, text: string])[] = [];
  const lose = (column: string, reason: Rejection['reason'], message: string): void => {
    troubles.push({ scope: 'cell', line: row.line, column, reason, message });
  };
  for (const [index, { header, heading }] of columns.entries()) {
    const field = row.fields[index];
    if (field === undefined || field.text.trim() === '') continue;
    const cell = cells[index];
    if (heading.kind === 'text') {
      const word = wordOf(heading.field, field.text, table.days);
      if (word === undefined)
        lose(header, 'not-a-number', `${describe(plainText(field.text))} is neither right nor left`);
      else words[heading.field] = word;
    } else if (heading.kind !== 'number') {
      if (header !== '' && heading.kind !== 'twin')
        aside.push([header, field.text.replace(/[\p{Cc}\p{Cf}]/gu, ' ')]);
    } else if (cell?.kind === 'refused') lose(header, 'not-a-number', cell.message);
    else if (cell?.kind === 'number') {
      const unit = cell.unit ?? units[heading.field];
      if (unit === undefined) continue;
      const message = impossible(heading.field, unit, cell.value);
      if (message === undefined) numbers[heading.field] = fromUnit(unit, cell.value);
      else lose(header, 'impossible-value', message);
    }
  }
  const { derived, problems } = deriveInto(numbers, columns);
  for (const { column, message } of problems) lose(column, 'impossible-value', message);
  const measured = withoutHelpers(numbers);
  const shot = { ...measured, ...words, line: row.line } as MeasuredShot;
  const left: Partial<Record<keyof MeasuredShot, unknown>> = { ...shot };
  let whole = true;
  for (const { field, message } of contradictions(shot, numbers.smashFactor)) {
    const wholeRow = ROW_CONTRADICTIONS.has(field);
    if (wholeRow) whole = false;
    else delete left[field as keyof MeasuredShot];
    troubles.push({
      scope: wholeRow ? 'row' : 'cell',
      line: row.line,
      column: headerOf(columns, field),
      reason: 'contradiction',
      message,
    });
  }
  if (!enough((field) => measured[field] !== undefined, needs)) whole = false;
  if (whole) return { troubles, shot: left as MeasuredShot, aside: Object.fromEntries(aside), derived };
  if (troubles.length === 0) {
    const message = missing(numbers, needs);
    troubles.push({ scope: 'row', line: row.line, column: '', reason: 'missing-value', message });
  }
  return { troubles: troubles.map((trouble) => ({ ...trouble, scope: 'row' })), aside: {}, derived: [] };
}

/** What a word of a column stands for; undefined for a hand that is neither. */
function wordOf(field: WordName, text: string, days: ReadonlyMap<string, string>): string | undefined {
  const word = plainText(text);
  if (field === 'date') return days.get(text.trim()) ?? word;
  if (field !== 'hand') return word;
  if (/^r(?:ight|h)?\b/iu.test(word)) return 'right';
  return /^l(?:eft|h)?\b/iu.test(word) ? 'left' : undefined;
}

function malformed(row: CsvRecord, columns: readonly Column[]): Trouble | undefined {
  const trouble = { line: row.line, column: '' };
  const width = columns.length;
  if (row.problem !== undefined) return { ...trouble, reason: 'malformed-row', message: row.problem };
  if (
    row.fields.length === width &&
    row.fields.every(({ text }, i) => plainText(text) === columns[i]?.header)
  ) {
    return { ...trouble, reason: 'unclear-header', message: 'the header line is repeated here' };
  }
  const extra = row.fields.slice(width);
  if (row.fields.length < width || extra.some(({ text }) => text.trim() !== '')) {
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

/** Works out what was not measured but follows exactly from what was, and holds it to the bounds of its column. */
function deriveInto(
  numbers: Numbers,
  columns: readonly Column[],
): { derived: readonly string[]; problems: readonly { column: string; message: string }[] } {
  const derived: string[] = [];
  const problems: { column: string; message: string }[] = [];
  const take = (field: 'ballSpeed' | 'spinRate', value: number, from: NumberName, note: string): void => {
    const { said } = measuredShotFields[field];
    const message = beyondBounds(field, said, Number(inUnit(said, value).toPrecision(4)), value);
    if (message === undefined) {
      numbers[field] = value;
      derived.push(note);
    } else problems.push({ column: headerOf(columns, from), message: `${note}: ${message}` });
  };
  const { clubSpeed, smashFactor, backspin, sidespin } = numbers;
  if (numbers.ballSpeed === undefined && clubSpeed !== undefined && smashFactor !== undefined) {
    take(
      'ballSpeed',
      clubSpeed * smashFactor,
      'smashFactor',
      'ball speed is worked out from club speed and smash factor',
    );
  }
  if (numbers.spinRate === undefined && backspin !== undefined) {
    if (sidespin !== undefined) numbers.spinAxisTilt ??= Math.atan2(sidespin, backspin);
    take(
      'spinRate',
      Math.hypot(backspin, sidespin ?? 0),
      'backspin',
      'spin is worked out from backspin and sidespin',
    );
  }
  return { derived, problems };
}

function withoutHelpers({ smashFactor: _, backspin: __, sidespin: ___, ...measured }: Numbers): Numbers {
  return measured;
}
