import { describe } from '../errors.js';
import { type CustomField, choice, custom, type Declared, optional, text } from '../inputs/field.js';
import { frozen } from '../inputs/frozen.js';
import type { MeasuredShot } from '../inputs/measured-shot.js';
import { readField, readOptions } from '../inputs/read.js';
import { refusal, refuseType } from '../inputs/refuse.js';
import type { HelperName } from './column-names.js';
import { type CsvRecord, readCsv } from './csv.js';
import { type DecimalMark, findDecimalMark } from './number-text.js';
import type { Rejection } from './rejection.js';
import { suspectApex, suspectLaunch } from './shot-checks.js';
import { type Column, headerNotes, headerOf, readHeader, type ShotNeeds } from './shot-header.js';
import { readRow } from './shot-row.js';

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
  /** Headers of the columns of numbers that were read, as they stand in the file, by field of a shot. */
  readonly headers: Readonly<Partial<Record<keyof MeasuredShot, string>>>;
  /** Rows below the header. */
  readonly rowsRead: number;
  /** Rows that gave no shot. */
  readonly rowsLeftOut: number;
}

/** Options of {@link readShots}. */
export interface ReadShotsOptions {
  /** Field separator; default found from the header. */
  readonly separator?: ',' | ';' | '\t';
  /** Decimal mark; default found from the numbers. */
  readonly decimalMark?: DecimalMark;
  /**
   * What a row must hold to be a shot: `flight` (default), a launch or a delivery that can be flown, or `club-speed`,
   * as in a log of speed training.
   */
  readonly needs?: ShotNeeds;
}

const SEPARATORS = [',', ';', '\t'] as const;

/** One of some signs, which a message must quote to be read. */
function sign(signs: readonly string[], label: string): CustomField & { readonly optional: true } {
  const wanted = `one of ${signs.map((one) => JSON.stringify(one)).join(' ')}`;
  return custom((value, path) => {
    if (value === undefined || signs.some((one) => one === value)) return value;
    throw refuseType(path, wanted, value);
  }, label);
}

/** Declaration of {@link ReadShotsOptions}. @internal */
export const readShotsOptionFields: Declared<ReadShotsOptions> = /* @__PURE__ */ frozen(() => ({
  separator: sign(SEPARATORS, 'separator'),
  decimalMark: sign(['.', ','], 'decimal mark'),
  needs: optional(choice<ShotNeeds>(['flight', 'club-speed'], 'what a shot must hold')),
}));

const textField = /* @__PURE__ */ frozen(() => text('club speed (mph)', 'text of the table'));

/**
 * Reads measured shots from CSV text. The first line names the columns in plain words with the unit in brackets, in
 * any order: `club speed (mph), ball speed (mph), launch angle (deg), spin (rpm), carry (yd), apex (ft)`. A shot
 * needs ball speed, launch angle and spin, or club speed, attack angle and loft (or what `options.needs` says);
 * everything else may be missing.
 * Lines that start with `#` ahead of the header are comments. Nothing is dropped silently: every row or column left
 * out is listed with its line, its column and the reason, and the good rows are still returned.
 * @throws `FairflightError` `invalid-input` when there is nothing to read: an empty file, no header, or columns
 * that cannot give a single shot; and for an unknown option
 */
export function readShots(csvText: string, options: ReadShotsOptions = {}): ShotTable {
  const asked = readOptions(readShotsOptionFields, options);
  const { needs = 'flight' } = asked;
  const { comments, body, firstLine } = splitComments(checkText(csvText));
  const separator = asked.separator ?? findSeparator(body);
  const [head, ...records] = readCsv(body, separator, firstLine);
  if (head === undefined) throw refusal('csvText', 'the file is empty: it has no header line');
  const { columns, rejected: columnsLeftOut } = readHeader(head, needs);
  const notes = [...headerNotes(columns, separator)];
  const rows = records.filter((row) => !isBlank(row));
  if (rows.length < records.length) notes.push(blankNote(records.length - rows.length));
  const mark = asked.decimalMark ?? findDecimalMark(numberCells(columns, rows));
  if (mark === ',') notes.push('numbers are read with a decimal comma');

  const shots: MeasuredShot[] = [];
  const aside: Readonly<Record<string, string>>[] = [];
  const leftOut: Rejection[] = [];
  const derived = new Set<string>();
  for (const row of rows) {
    const reading = readRow(row, columns, mark, needs);
    if ('troubles' in reading) {
      leftOut.push(...reading.troubles.map((trouble) => ({ scope: 'row' as const, ...trouble })));
    } else {
      shots.push(reading.shot);
      aside.push(reading.aside);
      for (const note of reading.derived) derived.add(note);
    }
  }
  const rejected = [...columnsLeftOut];
  const launchTrouble = suspectLaunch(shots);
  if (launchTrouble !== undefined) {
    const header = headerOf(columns, 'launchAngle');
    throw refusal('csvText', `line ${head.line}, column ${describe(header)}: ${launchTrouble}`);
  }
  const apexTrouble = suspectApex(shots);
  if (apexTrouble !== undefined) {
    const column = headerOf(columns, 'apex');
    const scope = 'column' as const;
    rejected.push({ scope, reason: 'contradiction', line: head.line, column, message: apexTrouble });
  }
  const rowsLeftOut = rows.length - shots.length;
  if (rows.length === 0) notes.push('there are no rows below the header');
  return {
    shots: apexTrouble === undefined ? shots : shots.map(({ apex: _, ...rest }) => rest),
    aside,
    rejected: [...rejected, ...leftOut],
    notes: [...notes, ...derived],
    comments,
    headerLine: head.line,
    headers: headersByField(columns),
    rowsRead: rows.length,
    rowsLeftOut,
  };
}

function checkText(csvText: unknown): string {
  const given = readField(textField, csvText, 'csvText') as string;
  if (given.includes('\0')) {
    throw refusal('csvText', 'the file is not UTF-8 text; save it as CSV in UTF-8');
  }
  const plain = given.startsWith('\uFEFF') ? given.slice(1) : given;
  if (plain.trim() === '') {
    throw refusal('csvText', 'the file is empty: line 1 should hold the column names');
  }
  return plain;
}

function splitComments(text: string): { comments: readonly string[]; body: string; firstLine: number } {
  const comments: string[] = [];
  let body = text;
  let firstLine = 1;
  for (;;) {
    const match = /^[^\S\r\n]*"?#([^\r\n]*)(\r\n|\n|\r|$)|^[^\S\r\n]*(?:\r\n|\n|\r)/u.exec(body);
    if (match === null || match[0] === '') return { comments, body, firstLine };
    // A spreadsheet that saves the file again pads comment lines with quotes and separators.
    if (match[1] !== undefined) comments.push(withoutPadding(match[1]));
    body = body.slice(match[0].length);
    firstLine += 1;
  }
}

function withoutPadding(comment: string): string {
  let end = comment.length;
  while (end > 0 && /["\s;,]/u.test(comment.charAt(end - 1))) end -= 1;
  return comment.slice(0, end).trim();
}

/** The separator there is most of in the header, quoted parts left out. */
function findSeparator(body: string): (typeof SEPARATORS)[number] {
  const line = /^[^\r\n]*/u.exec(body)?.[0] ?? '';
  const counts = new Map<string, number>();
  for (let at = 0; at < line.length; at++) {
    const sign = line.charAt(at);
    counts.set(sign, (counts.get(sign) ?? 0) + 1);
    const close = sign === '"' ? line.indexOf('"', at + 1) : -1;
    if (close > 0) at = close;
  }
  const count = (separator: string): number => counts.get(separator) ?? 0;
  return SEPARATORS.reduce((kept, next) => (count(next) > count(kept) ? next : kept));
}

function blankNote(count: number): string {
  return count === 1 ? '1 blank row is skipped' : `${count} blank rows are skipped`;
}

function headersByField(columns: readonly Column[]): ShotTable['headers'] {
  const headers: Partial<Record<keyof MeasuredShot | HelperName, string>> = {};
  for (const { header, heading } of columns) {
    if (heading.kind === 'number') headers[heading.field] = header;
  }
  return headers;
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
