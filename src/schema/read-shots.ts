import type { MeasuredShot } from '../inputs/measured-shot.js';
import { readOptions } from '../inputs/read.js';
import { refusal } from '../inputs/refuse.js';
import { fromUnit, inUnit, type Unit } from '../units/unit.js';
import type { NumberName } from './column-names.js';
import type { Column } from './columns.js';
import { type CsvRecord, readCsv } from './csv.js';
import { readDates } from './dates.js';
import { findUnits } from './find-units.js';
import { checkText, findSeparator, splitComments } from './layout.js';
import { findDecimalMark } from './number-text.js';
import { plainText, squashed } from './plain-text.js';
import { type RawRow, rawRow, unitInCells, withoutZeros } from './raw-rows.js';
import { askedUnits, type ReadShotsOptions, readShotsOptionFields } from './read-shots-options.js';
import type { Rejection } from './rejection.js';
import { findHeader, headerNotes, type NamedColumns, readHeader, unitsBelow } from './shot-header.js';
import { readRow } from './shot-row.js';
import { summariesApart } from './summary-rows.js';
import { type Units, type Written, weighIn } from './unit-evidence.js';
import { symbolOf } from './unit-names.js';
import { wrongUnits } from './wrong-units.js';

/** What {@link readShots} found. */
export interface ShotTable {
  /** The good rows, in file order. */
  readonly shots: readonly MeasuredShot[];
  /** Texts of the columns that were not understood, by header, one record a shot. */
  readonly aside: readonly Readonly<Record<string, string>>[];
  /** Everything that was left out and why. */
  readonly rejected: readonly Rejection[];
  /** What a reader should know and need not mend: unknown columns, the separator, derived values. */
  readonly notes: readonly string[];
  /** Comment lines ahead of the header, without their `#`. */
  readonly comments: readonly string[];
  /** Line of the header, counted from 1. */
  readonly headerLine: number;
  /** All columns, in the order of the file, and what each was read as. */
  readonly columns: readonly ShotColumn[];
  /**
   * What was asked and what was found, as options: separator, decimal mark, and what each column of numbers is, with its
   * unit. Another part of the same file is read alike with them.
   */
  readonly readAs: ReadShotsOptions;
  /** Rows below the header. */
  readonly rowsRead: number;
  /** Rows that gave no shot. */
  readonly rowsLeftOut: number;
}

/** A column of the file. */
export interface ShotColumn {
  /** As it stands in the file. */
  readonly header: string;
  /** What it holds; absent where it is not understood or not used. */
  readonly field?: keyof MeasuredShot | 'smashFactor' | 'backspin' | 'sidespin';
  /** Unit in which its numbers are read, such as `mph`; absent for words and for a column left out. */
  readonly unit?: string;
}

/** Shots that units are judged by. */
const SAMPLE = 60;

/**
 * Reads measured shots from CSV text, as devices and spreadsheets write it. One line names the columns in words of the
 * trade, in any order: `club speed (mph), Ball Speed, launch_angle_deg, spin (rpm), carry, apex (ft)`. A shot needs
 * ball speed, launch angle and spin, or club speed, attack angle and loft (or what `options.needs` says); everything
 * else may be missing. Units stand in the header, in a row below it, in the cells or in `options.units`; where they
 * do not, they are found from the shots, whose readings must agree with their flight, and the first of the notes says
 * what was found.
 * Lines that start with `#` and lines of title ahead of the header are comments. Rows of averages and deviations are no shots.
 * Nothing is dropped silently: every row, column or cell left out is listed with its line, its column and the reason,
 * and the good rows are still returned.
 * @throws `FairflightError` `invalid-input` when there is nothing to read: an empty file, no header, columns that
 * cannot give a single shot, units that the shots leave open or contradict; and for an unknown option
 */
export function readShots(csvText: string, options: ReadShotsOptions = {}): ShotTable {
  const asked = readOptions(readShotsOptionFields, options);
  const { needs = 'flight', columns: named = {} } = asked;
  const { comments, body, firstLine } = splitComments(checkText(csvText));
  const separator = asked.separator ?? findSeparator(body, named);
  const records = readCsv(body, separator, firstLine);
  const headAt = findHeader(records, named);
  const head = records[headAt];
  if (head === undefined) throw refusal('csvText', 'the file is empty: it has no header line');
  const titles = records.slice(0, headAt).map(({ fields }) => titleOf(fields));
  const header = readHeader(head, needs, named, records.slice(headAt + 1));
  const { columns, rejected: columnsLeftOut } = header;
  const notes = [...headerNotes(columns, separator), ...header.notes];
  const unitsRow = unitsBelow(header.rows[0], columns);
  const below = header.rows.slice(unitsRow === undefined ? 0 : 1);
  const rows = below.filter((row) => !isBlank(row));
  if (rows.length < below.length) notes.push(blankNote(below.length - rows.length));
  const mark = asked.decimalMark ?? findDecimalMark(numberCells(columns, rows));
  if (mark === ',') notes.push('numbers are read with a decimal comma');

  const written = rows.map((row) => rawRow(row, columns, mark));
  const { rows: shotRows, summaries } = summariesApart(written, columns);
  const measured = withoutZeros(shotRows, columns);
  notes.push(...measured.notes);
  const stated: Partial<Record<NumberName, Unit>> = {};
  for (const [at, { heading }] of columns.entries()) {
    if (heading.kind !== 'number') continue;
    const unit = heading.unit ?? unitsRow?.[at] ?? unitInCells(measured.rows, at);
    if (unit !== undefined) stated[heading.field] = unit;
  }
  const sample = sampleOf(measured.rows, columns, stated);
  const weigh = weighIn(asked.scene ?? {});
  const fields = columns.flatMap(({ heading }) => (heading.kind === 'number' ? [heading.field] : []));
  const found = findUnits(fields, stated, askedUnits(asked.units), sample, weigh);
  const wrong = wrongUnits(sample, found.units, columns, head.line, weigh);
  const units: Partial<Record<NumberName, Unit>> = { ...found.units };
  for (const { field } of wrong) delete units[field];
  const dates = readDates(datesIn(columns, measured.rows), asked.dateOrder);
  notes.push(...dates.notes);

  const shots: MeasuredShot[] = [];
  const aside: Readonly<Record<string, string>>[] = [];
  const rejected: Rejection[] = [...columnsLeftOut, ...wrong.map(({ field: _, ...rejection }) => rejection)];
  for (const { line, why } of summaries) {
    const message = `the row sums up other rows: ${why}; it is no shot`;
    rejected.push({ scope: 'row', reason: 'summary-row', line, column: '', message });
  }
  const derived = new Set<string>();
  const spelling = oneSpelling();
  for (const row of measured.rows) {
    const reading = readRow(row, { columns, units, days: dates.days, needs });
    rejected.push(...reading.troubles);
    if (reading.shot === undefined) continue;
    shots.push(spelling(reading.shot));
    aside.push(reading.aside);
    for (const note of reading.derived) derived.add(note);
  }
  if (rows.length === 0) notes.push('there are no rows below the header');
  const seen = columns.map((column) => shotColumn(column, units));
  return {
    shots,
    aside,
    rejected,
    notes: [...found.notes, ...notes, ...derived],
    comments: [...comments.map(plainText), ...titles],
    headerLine: head.line,
    columns: seen,
    readAs: {
      ...asked,
      separator,
      decimalMark: mark,
      columns: { ...named, ...settled(head, columns, seen) },
    },
    rowsRead: rows.length,
    rowsLeftOut: rows.length - shots.length,
  };
}

/** Shots spread over the file that can serve to judge units, their numbers as written. */
function sampleOf(rows: readonly RawRow[], columns: readonly Column[], stated: Units): readonly Written[] {
  const step = Math.max(1, Math.floor(rows.length / SAMPLE));
  const sample: Written[] = [];
  for (let i = 0; i < rows.length && sample.length < SAMPLE; i += step) {
    const numbers: Partial<Record<NumberName, number>> = {};
    for (const [at, { heading }] of columns.entries()) {
      const cell = rows[i]?.cells[at];
      if (heading.kind !== 'number' || cell?.kind !== 'number') continue;
      const unit = stated[heading.field];
      numbers[heading.field] =
        cell.unit === undefined || unit === undefined || cell.unit === unit
          ? cell.value
          : inUnit(unit, fromUnit(cell.unit, cell.value));
    }
    sample.push(numbers);
  }
  return sample;
}

function* datesIn(columns: readonly Column[], rows: readonly RawRow[]): Iterable<string> {
  const at = columns.findIndex(({ heading }) => heading.kind === 'text' && heading.field === 'date');
  if (at < 0) return;
  for (const { row } of rows) yield (row.fields[at]?.text ?? '').trim();
}

/** Gives clubs, groups and sessions that differ in case and blanks only the spelling that came first. */
function oneSpelling(): (shot: MeasuredShot) => MeasuredShot {
  const first = new Map<string, string>();
  const spell = (field: string, text: string): string => {
    const key = `${field} ${squashed(text) || text}`;
    const known = first.get(key);
    if (known === undefined) first.set(key, text);
    return known ?? text;
  };
  return (shot) => ({
    ...shot,
    ...(shot.club !== undefined && { club: spell('club', shot.club) }),
    ...(shot.label !== undefined && { label: spell('label', shot.label) }),
    ...(shot.session !== undefined && { session: spell('session', shot.session) }),
  });
}

function titleOf(fields: CsvRecord['fields']): string {
  return plainText(
    fields
      .map(({ text }) => text.trim())
      .filter((text) => text !== '')
      .join(', '),
  );
}

function blankNote(count: number): string {
  return count === 1 ? '1 blank row is skipped' : `${count} blank rows are skipped`;
}

function shotColumn({ header, heading }: Column, units: Units): ShotColumn {
  if (heading.kind !== 'number')
    return heading.kind === 'text' ? { header, field: heading.field } : { header };
  const unit = units[heading.field];
  return unit === undefined ? { header } : { header, field: heading.field, unit: symbolOf(unit) };
}

/** What each column of numbers is, by its header; one whose unit is not known is not used. */
function settled(head: CsvRecord, columns: readonly Column[], seen: readonly ShotColumn[]): NamedColumns {
  const names = seen.flatMap(({ field, unit }, at) =>
    columns[at]?.heading.kind === 'number'
      ? [[(head.fields[at]?.text ?? '').trim(), unit === undefined ? 'not used' : `${field} (${unit})`]]
      : [],
  );
  return Object.fromEntries(names);
}

/** A row of separators only, as spreadsheets leave below the last one. */
function isBlank({ fields, problem }: CsvRecord): boolean {
  return problem === undefined && fields.every(({ text }) => text.trim() === '');
}

function* numberCells(columns: readonly Column[], rows: readonly CsvRecord[]): Iterable<string> {
  for (const row of rows) {
    for (const [index, field] of row.fields.entries()) {
      if (columns[index]?.heading.kind === 'number') yield field.text;
    }
  }
}
