import type { Column } from './columns.js';
import { squashed } from './plain-text.js';
import { numberIn, type RawRow } from './raw-rows.js';

/** Words that name a row of averages or deviations wherever they stand. */
const SUMMARY: ReadonlySet<string> = new Set(
  [
    'average',
    'averages',
    'avg',
    'ave',
    'mean',
    'means',
    'median',
    'deviation',
    'standard deviation',
    'std deviation',
    'std dev',
    'stdev',
    'st dev',
    'std',
    'sd',
    'consistency',
    'variance',
  ].map(squashed),
);
/** Words that do so beside or below such a row: a player may call a group of shots "best" or "max". */
const BESIDE: ReadonlySet<string> = new Set(
  [
    'best',
    'worst',
    'max',
    'maximum',
    'min',
    'minimum',
    'count',
    'total',
    'totals',
    'sum',
    'n',
    'range',
    'shots',
    'summary',
  ].map(squashed),
);
/** Shots that an average must stand for before arithmetic alone can tell it. */
const FEWEST_SHOTS = 3;
/** Columns that must agree before it is one. */
const FEWEST_COLUMNS = 3;

/** Rows of shots, and those that sum shots up, with their line. */
export interface SummariesApart {
  readonly rows: readonly RawRow[];
  readonly summaries: readonly { readonly line: number; readonly why: string }[];
}

/**
 * Takes out the rows that are no shots but averages, deviations, counts or bests of shots: by what they are called, or
 * because every number in them is the mean or the deviation of the rows above (or, for a first row, below).
 */
export function summariesApart(rows: readonly RawRow[], columns: readonly Column[]): SummariesApart {
  const why = rows.map((row) => labelled(row, columns, SUMMARY));
  const beside = rows.map((row) => labelled(row, columns, BESIDE));
  for (const [i, found] of beside.entries()) {
    const alone = i === rows.length - 1 && beside.indexOf(found) === i && !isGrouped(rows[i], columns);
    if (why[i - 1] !== undefined || why[i + 1] !== undefined || alone) why[i] ??= found;
  }
  markByArithmetic(rows, why);
  return {
    rows: rows.filter((_, i) => why[i] === undefined),
    summaries: rows.flatMap(({ row }, i) => {
      const found = why[i];
      return found === undefined ? [] : [{ line: row.line, why: found }];
    }),
  };
}

function labelled(
  { row, cells }: RawRow,
  columns: readonly Column[],
  words: ReadonlySet<string>,
): string | undefined {
  for (const [at, { text }] of row.fields.entries()) {
    if (cells[at]?.kind === 'number' || columns[at] === undefined) continue;
    const word = text.trim();
    if (words.has(squashed(word))) return `it is called "${word}"`;
  }
  return undefined;
}

/** True when the row is one of a group of shots that has a name. */
function isGrouped(raw: RawRow | undefined, columns: readonly Column[]): boolean {
  return columns.some(
    ({ heading }, at) =>
      heading.kind === 'text' && heading.field === 'label' && raw?.row.fields[at]?.text.trim() !== '',
  );
}

/** Finds rows that are the mean or the deviation of the block of shots above them; the first row, of those below. */
function markByArithmetic(rows: readonly RawRow[], why: (string | undefined)[]): void {
  let block: Tally[] = [];
  let summed: readonly Tally[] = [];
  for (const [i, raw] of rows.entries()) {
    const found =
      why[i] ?? arithmetic(raw, block) ?? (block.length === 0 ? arithmetic(raw, summed) : undefined);
    why[i] = found;
    if (found === undefined) add(raw, block);
    else if (block.length > 0) {
      summed = block;
      block = [];
    }
  }
  const first = why.indexOf(undefined);
  const top = rows[first];
  if (top === undefined) return;
  const below: Tally[] = [];
  for (const [i, raw] of rows.entries()) if (i !== first && why[i] === undefined) add(raw, below);
  why[first] = arithmetic(top, below);
}

/** Numbers of one column so far: count, mean and sum of squares about it (Welford 1962, Technometrics 4). */
interface Tally {
  count: number;
  mean: number;
  squares: number;
  /** Most decimals written. */
  decimals: number;
}

function add({ row, cells }: RawRow, block: Tally[]): void {
  for (const [at, cell] of cells.entries()) {
    block[at] ??= { count: 0, mean: 0, squares: 0, decimals: 0 };
    const tally = block[at];
    const value = numberIn(cell);
    if (value === undefined) continue;
    tally.count += 1;
    const off = value - tally.mean;
    tally.mean += off / tally.count;
    tally.squares += off * (value - tally.mean);
    tally.decimals = Math.max(tally.decimals, decimalsOf(row.fields[at]?.text ?? ''));
  }
}

function arithmetic(raw: RawRow, block: readonly Tally[]): string | undefined {
  for (const what of ['mean', 'standard deviation'] as const) {
    const count = summed(raw, block, what);
    if (count > 0) return `its numbers are the ${what} of ${count} other rows`;
  }
  return undefined;
}

/** How many rows every number of a row sums up, 0 unless enough columns whose numbers differ agree. */
function summed(
  { row, cells }: RawRow,
  block: readonly Tally[],
  what: 'mean' | 'standard deviation',
): number {
  let agreeing = 0;
  let rows = 0;
  for (const [at, cell] of cells.entries()) {
    const value = numberIn(cell);
    const tally = block[at];
    if (value === undefined || tally === undefined || tally.count < FEWEST_SHOTS) continue;
    const spread = Math.sqrt(tally.squares / (tally.count - 1));
    // The row may sum up numbers that were not yet rounded: half a unit here, and what is left of theirs.
    const room =
      0.55 * 10 ** -decimalsOf(row.fields[at]?.text ?? '') + 10 ** -tally.decimals / Math.sqrt(tally.count);
    if (Math.abs((what === 'mean' ? tally.mean : spread) - value) > room) return 0;
    if (spread > 2 * room) agreeing += 1;
    rows = Math.max(rows, tally.count);
  }
  return agreeing >= FEWEST_COLUMNS ? rows : 0;
}

/** Figures behind the decimal mark. */
function decimalsOf(text: string): number {
  return Math.min(/[.,](\d*)/u.exec(text.slice(0, LONGEST_NUMBER))?.[1]?.length ?? 0, MOST_DECIMALS);
}

const LONGEST_NUMBER = 48;
const MOST_DECIMALS = 12;
