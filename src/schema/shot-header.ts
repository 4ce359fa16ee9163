import { describe } from '../errors.js';
import { memberPath, refusal } from '../inputs/refuse.js';
import type { SiUnit, Unit } from '../units/unit.js';
import type { NumberName } from './column-names.js';
import { type Column, type Heading, numberColumns, readHeading, unitIn } from './columns.js';
import type { CsvRecord } from './csv.js';
import { plainText } from './plain-text.js';
import type { Rejection } from './rejection.js';
import { withoutTwins } from './twin-columns.js';
import { findUnit } from './unit-names.js';

/** Names of columns that the caller gives: the header as the file has it, and what it is in plain words, with its unit. */
export type NamedColumns = Readonly<Record<string, string>>;

/** Lines in which the header is looked for: titles stand above it. */
const FARTHEST_HEADER = 40;

/** The header among the first records: the one that names most columns known here, the first of them. */
export function findHeader(records: readonly CsvRecord[], named: NamedColumns): number {
  let best = 0;
  let most = 0;
  for (const [at, record] of records.slice(0, FARTHEST_HEADER).entries()) {
    const known = knownIn(record, named);
    if (known > most) [best, most] = [at, known];
  }
  return best;
}

/** Columns of a record that are known here. */
export function knownIn(record: CsvRecord | undefined, named: NamedColumns): number {
  if (record === undefined || record.problem !== undefined) return 0;
  return record.fields.filter(({ text }) => headingFor(text, named).kind !== 'unknown').length;
}

function headingFor(text: string, named: NamedColumns): Heading {
  const name = text.trim();
  return readHeading(Object.hasOwn(named, name) ? (named[name] ?? '') : text);
}

/** Units that the row below the header gives, by column; undefined when it is no row of units. */
export function unitsBelow(
  row: CsvRecord | undefined,
  columns: readonly Column[],
): readonly (Unit | undefined)[] | undefined {
  if (row === undefined || row.problem !== undefined || row.fields.length > columns.length) return undefined;
  const units: (Unit | undefined)[] = [];
  for (const [index, { heading }] of columns.entries()) {
    const text = (row.fields[index]?.text ?? '').trim().replace(/^[([]|[)\]]$/gu, '');
    const si = heading.kind === 'number' ? siOf(heading.field) : undefined;
    // A digit makes it a row of shots, but for units like 1/min.
    if (si !== undefined && /\d/u.test(text) && findUnit(si, text) === undefined) return undefined;
    const unit = si === undefined || text === '' ? undefined : unitIn(si, text);
    units.push(unit);
  }
  return units.some((unit) => unit !== undefined) ? units : undefined;
}

/**
 * Reads the header line. Columns that cannot be used are listed; of columns that hold the same one is left.
 * @param below - the rows below it
 * @throws FairflightError `invalid-input` when the columns left cannot give a single shot.
 */
export function readHeader(
  head: CsvRecord,
  needs: ShotNeeds,
  named: NamedColumns,
  below: readonly CsvRecord[],
): {
  readonly columns: readonly Column[];
  readonly rows: readonly CsvRecord[];
  readonly rejected: readonly Rejection[];
  readonly notes: readonly string[];
} {
  if (head.problem !== undefined) {
    throw refusal('csvText', `line ${head.line}: the header cannot be read: ${head.problem}`);
  }
  const read = head.fields.map(({ text }) => ({ header: plainText(text), heading: headingFor(text, named) }));
  for (const name of Object.keys(named)) {
    if (head.fields.some(({ text }) => text.trim() === name)) continue;
    const there = listed(read, ({ header }) => describe(header), ', ');
    throw refusal(
      memberPath('options.columns', name),
      `no column is called ${describe(name)}; there are ${there}`,
    );
  }
  const { columns, rows, notes } = withoutTwins(read, below);
  const rejected: Rejection[] = [];
  for (const { header, heading } of columns) {
    if (heading.kind !== 'refused') continue;
    const { reason, message } = heading;
    rejected.push({ scope: 'column', reason, line: head.line, column: header, message });
  }
  requireEnough(head, columns, rejected, needs);
  return { columns, rows, rejected, notes };
}

/** Columns that a message lists; more would bury what it says. */
const MOST_LISTED = 24;

function listed<T>(items: readonly T[], text: (item: T) => string, separator: string): string {
  const rest = items.length - MOST_LISTED;
  const shown = items.slice(0, MOST_LISTED).map(text).join(separator);
  return rest > 0 ? `${shown}${separator}and ${rest} more` : shown;
}

/** Refuses a file whose columns cannot give a single shot, with every reason at once. */
function requireEnough(
  head: CsvRecord,
  columns: readonly Column[],
  rejected: readonly Rejection[],
  needs: ShotNeeds,
): void {
  const present = new Set<string>();
  for (const { heading } of columns) if (heading.kind === 'number') present.add(heading.field);
  if (enough((field) => present.has(field), needs)) return;
  const seen = listed(columns, ({ header }) => describe(header), ', ');
  const why = listed(rejected, ({ column, message }) => `column ${describe(column)}: ${message}`, '; ');
  throw refusal(
    'csvText',
    `line ${head.line}: ${NEEDS[needs]}; the columns are ${seen}${why === '' ? '' : `; ${why}`}`,
    {
      hint:
        needs === 'club-speed'
          ? 'name the column like "club speed (mph)"'
          : 'name the columns like "ball speed (mph)", "launch angle (deg)", "spin (rpm)"',
    },
  );
}

/** Kind of quantity a column of numbers holds. */
export function siOf(field: NumberName): SiUnit {
  return numberColumns[field].possible.si;
}

/** What a shot must hold to be used: what it takes to fly it, or club speed alone. */
export type ShotNeeds = 'flight' | 'club-speed';

/** The same in words. */
export const NEEDS: Readonly<Record<ShotNeeds, string>> = {
  flight: 'a shot needs ball speed, launch angle and spin, or club speed, attack angle and loft',
  'club-speed': 'a shot needs club speed',
};

/** True when a shot with these values can be used. */
export function enough(has: (field: NumberName) => boolean, needs: ShotNeeds): boolean {
  if (needs === 'club-speed') return has('clubSpeed');
  const ball = has('ballSpeed') || (has('clubSpeed') && has('smashFactor'));
  const spin = has('spinRate') || has('backspin');
  const loft = has('dynamicLoft') || has('nominalLoft');
  return (ball && has('launchAngle') && spin) || (has('clubSpeed') && has('attackAngle') && loft);
}

/** Header of the column that holds a field; empty when there is none. */
export function headerOf(columns: readonly Column[], field: string): string {
  return columns.find(({ heading }) => 'field' in heading && heading.field === field)?.header ?? '';
}

/** What a reader should know about the columns and need not mend. */
export function* headerNotes(columns: readonly Column[], separator: string): Iterable<string> {
  if (separator !== ',') yield `fields are separated by ${separator === ';' ? 'semicolons' : 'tabs'}`;
  for (const { header, heading } of columns) {
    if (heading.kind === 'unknown' && header !== '') {
      yield `column ${describe(header)} is kept aside and not used`;
    }
  }
}
