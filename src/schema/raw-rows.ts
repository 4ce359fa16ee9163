import { describe } from '../errors.js';
import type { Unit } from '../units/unit.js';
import type { NumberName } from './column-names.js';
import type { Column } from './columns.js';
import type { CsvRecord } from './csv.js';
import { type CellReading, type DecimalMark, readNumber } from './number-text.js';
import { siOf } from './shot-header.js';

/** A row below the header with its numbers read, not yet in SI; cells of other columns are left out. */
export interface RawRow {
  readonly row: CsvRecord;
  readonly cells: readonly (CellReading | undefined)[];
}

/** Columns where L and R stand for a sign. */
const SIDED: ReadonlySet<NumberName> = new Set<NumberName>([
  'clubPath',
  'faceAngle',
  'launchDirection',
  'spinAxisTilt',
  'side',
  'curve',
  'sidespin',
]);
/** Columns in which zero cannot be measured: a device that measured nothing writes it. */
const NEVER_ZERO: ReadonlySet<NumberName> = new Set<NumberName>([
  'clubSpeed',
  'dynamicLoft',
  'nominalLoft',
  'ballSpeed',
  'spinRate',
  'backspin',
  'smashFactor',
  'carry',
  'total',
  'apex',
  'descentAngle',
  'hangTime',
]);
/** A column of so many zeros and nothing else was not measured. */
const ZEROS = 3;

/** Reads the numbers of a row. */
export function rawRow(row: CsvRecord, columns: readonly Column[], mark: DecimalMark): RawRow {
  const cells = columns.map(({ heading }, i) => {
    const text = row.fields[i]?.text;
    if (heading.kind !== 'number' || text === undefined) return undefined;
    return readNumber(text, mark, siOf(heading.field), SIDED.has(heading.field));
  });
  return { row, cells };
}

/** The unit that the cells of a column say where its header says none. */
export function unitInCells(rows: readonly RawRow[], at: number): Unit | undefined {
  for (const { cells } of rows) {
    const cell = cells[at];
    if (cell?.kind === 'number' && cell.unit !== undefined) return cell.unit;
  }
  return undefined;
}

const BLANK: CellReading = { kind: 'blank' };

/** The rows without the zeros that stand for "not measured", and a note for each column that held some. */
export function withoutZeros(
  rows: readonly RawRow[],
  columns: readonly Column[],
): { readonly rows: readonly RawRow[]; readonly notes: readonly string[] } {
  const notes: string[] = [];
  const emptied = new Set<number>();
  for (const [at, { header, heading }] of columns.entries()) {
    if (heading.kind !== 'number') continue;
    const numbers = rows.flatMap(({ cells }) => numberIn(cells[at]) ?? []);
    const zeros = numbers.filter((value) => value === 0).length;
    if (zeros === 0) continue;
    const whole = zeros === numbers.length && zeros >= ZEROS;
    if (!whole && !NEVER_ZERO.has(heading.field)) continue;
    emptied.add(at);
    const what = whole ? 'every value is 0' : zeros === 1 ? '1 value is 0' : `${zeros} values are 0`;
    notes.push(`column ${describe(header)}: ${what}, which is taken as not measured`);
  }
  if (emptied.size === 0) return { rows, notes };
  const cleaned = rows.map(({ row, cells }) => ({
    row,
    cells: cells.map((cell, at) => (emptied.has(at) && numberIn(cell) === 0 ? BLANK : cell)),
  }));
  return { rows: cleaned, notes };
}

/** The number in a cell, in the unit it is written in. */
export function numberIn(cell: CellReading | undefined): number | undefined {
  return cell?.kind === 'number' ? cell.value : undefined;
}
