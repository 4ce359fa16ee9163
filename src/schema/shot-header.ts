import { FairflightError } from '../errors.js';
import { type Heading, type HelperField, type QuantityField, readHeading } from './columns.js';
import type { CsvRecord } from './csv.js';
import type { Rejection } from './rejection.js';

/** One column of the file. */
export interface Column {
  readonly header: string;
  readonly heading: Heading;
}

/**
 * Reads the header line. Columns that cannot be used are listed.
 * @throws FairflightError `invalid-input` when the columns left cannot give a single shot.
 */
export function readHeader(
  head: CsvRecord,
  needs: ShotNeeds,
): { columns: readonly Column[]; rejected: readonly Rejection[] } {
  if (head.problem !== undefined) {
    throw new FairflightError(
      'invalid-input',
      `line ${head.line}: the header cannot be read: ${head.problem}`,
    );
  }
  const read = head.fields.map(({ text }) => ({ header: text.trim(), heading: readHeading(text) }));
  const columns = read.map((column, index): Column => {
    const twin = read.findIndex((other, place) => place !== index && sameColumn(column, other));
    if (twin < 0) return column;
    const message = `columns ${Math.min(index, twin) + 1} and ${Math.max(index, twin) + 1} both hold this quantity; neither is used, since which one is right cannot be known: rename or remove one`;
    return { header: column.header, heading: { kind: 'refused', reason: 'unclear-header', message } };
  });
  const rejected = columns.flatMap(({ header, heading }): Rejection[] => {
    if (heading.kind !== 'refused') return [];
    const { reason, message } = heading;
    return [{ scope: 'column', reason, line: head.line, column: header, message }];
  });
  requireEnough(head, columns, rejected, needs);
  return { columns, rejected };
}

function sameColumn(one: Column, other: Column): boolean {
  const a = one.heading;
  const b = other.heading;
  if (a.kind === 'unknown') return b.kind === 'unknown' && one.header !== '' && one.header === other.header;
  return (a.kind === 'number' || a.kind === 'text') && 'field' in b && a.field === b.field;
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
  const why = rejected
    .map(({ column, message }) => `column ${JSON.stringify(column)}: ${message}`)
    .join('; ');
  const seen = columns.map(({ header }) => JSON.stringify(header)).join(', ');
  throw new FairflightError(
    'invalid-input',
    `line ${head.line}: ${NEEDS[needs]}, each with its unit in the header; the columns are ${seen}${why === '' ? '' : `; ${why}`}`,
    {
      field: 'csvText',
      hint:
        needs === 'club-speed'
          ? 'name the column like "club speed (mph)"'
          : 'name the columns like "ball speed (mph)", "launch angle (deg)", "spin (rpm)"',
    },
  );
}

/** What a shot must hold to be used: what it takes to fly it, or club speed alone. */
export type ShotNeeds = 'flight' | 'club-speed';

/** The same in words. */
export const NEEDS: Readonly<Record<ShotNeeds, string>> = {
  flight: 'a shot needs ball speed, launch angle and spin, or club speed, attack angle and loft',
  'club-speed': 'a shot needs club speed',
};

/** True when a shot with these values can be used. */
export function enough(has: (field: QuantityField | HelperField) => boolean, needs: ShotNeeds): boolean {
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
      yield `column ${JSON.stringify(header)} is kept aside and not used`;
    }
  }
}
