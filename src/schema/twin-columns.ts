import { describe } from '../errors.js';
import type { Column } from './columns.js';
import type { CsvRecord } from './csv.js';

/** A table whose columns hold each quantity once. */
interface Untwinned {
  readonly columns: readonly Column[];
  readonly rows: readonly CsvRecord[];
  readonly notes: readonly string[];
}

/**
 * Columns that hold the same, as `Carry, Carry`, are read as one where they agree cell for cell, a blank beside a number
 * counting as agreement. Where they differ neither is used, since which one is right cannot be known.
 */
export function withoutTwins(columns: readonly Column[], rows: readonly CsvRecord[]): Untwinned {
  const places = new Map<string, number[]>();
  for (const [at, column] of columns.entries()) {
    const key = quantityOf(column);
    if (key === undefined) continue;
    const twins = places.get(key);
    if (twins === undefined) places.set(key, [at]);
    else twins.push(at);
  }
  const kept = [...columns];
  const notes: string[] = [];
  let merged = rows;
  for (const twins of places.values()) {
    const [first, ...others] = twins;
    if (first === undefined || others.length === 0) continue;
    const names = `columns ${twins.map((at) => at + 1).join(' and ')}`;
    const differing = rows.filter((row) => !agree(row, twins)).length;
    if (sameUnit(columns, twins) && differing === 0) {
      notes.push(`${names}, ${describe(columns[first]?.header)}, hold the same and are read as one`);
      for (const at of others) kept[at] = { header: columns[at]?.header ?? '', heading: { kind: 'twin' } };
      merged = merged.map((row) => filledFrom(row, first, others));
      continue;
    }
    const how = differing === 0 ? 'in different units' : `and differ in ${differing} of ${rows.length} rows`;
    const message = `${names} both hold this quantity ${how}; neither is used, since which one is right cannot be known: rename or remove one`;
    for (const at of twins) {
      kept[at] = {
        header: columns[at]?.header ?? '',
        heading: { kind: 'refused', reason: 'unclear-header', message },
      };
    }
  }
  return { columns: kept, rows: merged, notes };
}

/** The same text for columns that hold the same; undefined for one that holds nothing known and has no name. */
function quantityOf({ header, heading }: Column): string | undefined {
  if (heading.kind === 'unknown') return header === '' ? undefined : `unknown ${header}`;
  return 'field' in heading ? `field ${heading.field}` : undefined;
}

function sameUnit(columns: readonly Column[], twins: readonly number[]): boolean {
  const units = twins.map((at) => {
    const heading = columns[at]?.heading;
    return heading?.kind === 'number' ? heading.unit : undefined;
  });
  return new Set(units).size === 1;
}

/** Texts of some cells of a row that are not blank, each once. */
function textsOf({ fields }: CsvRecord, at: readonly number[]): readonly string[] {
  return [...new Set(at.map((i) => (fields[i]?.text ?? '').trim()).filter((text) => text !== ''))];
}

function agree(row: CsvRecord, twins: readonly number[]): boolean {
  return row.problem !== undefined || textsOf(row, twins).length <= 1;
}

/** A row whose blank cell takes what its twin says. */
function filledFrom(row: CsvRecord, first: number, others: readonly number[]): CsvRecord {
  const own = row.fields[first];
  const [text] = textsOf(row, others);
  if (own === undefined || own.text.trim() !== '' || text === undefined) return row;
  return { ...row, fields: row.fields.map((field, at) => (at === first ? { ...own, text } : field)) };
}
