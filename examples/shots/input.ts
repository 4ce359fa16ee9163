import { dsvFormat } from 'd3-dsv';
import { type ReadShotsOptions, readShots, type ShotTable } from 'fairflight/schema';
import { UsageError } from '../lib/command.js';
import { linesOf, recordsOf, type TextRecord } from './records.js';

/** One row of the input. */
export interface Row {
  /** Line of the input it starts on, counted from 1. */
  readonly line: number;
  /** Texts by column. */
  readonly cells: readonly string[];
  /** The object of a line of JSON; a row of CSV has none. */
  readonly object?: Readonly<Record<string, unknown>>;
}

/** A stream of shots, in blocks of rows. */
export interface Input {
  readonly format: 'csv' | 'jsonl';
  readonly columns: readonly string[];
  /** How every block is to be read. */
  readonly readAs: ReadShotsOptions;
  /** What was found in the first rows. */
  readonly head: ShotTable;
  readonly blocks: AsyncIterable<readonly Row[]>;
  /** Lines that are no rows, and why; filled as the blocks come. */
  readonly unread: readonly { readonly line: number; readonly why: string }[];
}

/** Rows that are read together. The first block settles units and columns for all. */
const BLOCK = 256;

/** Opens a stream of CSV or of JSON Lines. @throws UsageError or FairflightError when its top cannot be read */
export async function openShots(pieces: AsyncIterable<string>, options: ReadShotsOptions): Promise<Input> {
  const lines = linesOf(pieces)[Symbol.asyncIterator]();
  const top: string[] = [];
  for (let next = await lines.next(); next.done !== true; next = await lines.next()) {
    top.push(top.length === 0 ? next.value.replace(/^\uFEFF/u, '') : next.value);
    if (next.value.trim() !== '') break;
  }
  const all = (async function* () {
    yield* top;
    for (let next = await lines.next(); next.done !== true; next = await lines.next()) yield next.value;
  })();
  return top.at(-1)?.trimStart().startsWith('{') ? openJson(all, options) : openCsv(all, options);
}

async function openCsv(lines: AsyncIterable<string>, options: ReadShotsOptions): Promise<Input> {
  const records = recordsOf(lines)[Symbol.asyncIterator]();
  const first = await take(records, BLOCK);
  // The line by which spreadsheets name the separator is found without.
  const named = /^sep=/iu.test(first[0]?.text ?? '') ? 1 : 0;
  const above = first.slice(named);
  const head = readShots(textOf(above), options);
  const start = (above[0]?.line ?? 1) - 1;
  const at = above.findIndex(({ line }) => line - start >= head.headerLine);
  const header = above[at];
  if (header === undefined) throw new UsageError('no line names the columns');
  const { parseRows } = dsvFormat(head.readAs.separator ?? ',');
  const columns = parseRows(header.text)[0] ?? [];
  const row = ({ text, line }: TextRecord): Row => ({ line, cells: parseRows(text)[0] ?? [] });
  const isRow = ({ cells }: Row): boolean => cells.some((cell) => cell.trim() !== '');
  const blocks = (async function* () {
    const rows = above
      .slice(at + 1)
      .map(row)
      .filter(isRow);
    // A row of units below the header is no shot; the reader counts it out.
    const unitsRow = readBlock(columns, rows, head.readAs).rowsRead < rows.length ? 1 : 0;
    if (rows.length > unitsRow) yield rows.slice(unitsRow);
    for (let next = await take(records, BLOCK); next.length > 0; next = await take(records, BLOCK)) {
      yield next.map(row).filter(isRow);
    }
  })();
  return { format: 'csv', columns, readAs: head.readAs, head, blocks, unread: [] };
}

/** The records as one text, blank lines in their places, so that lines count as they did. */
function textOf(records: readonly TextRecord[]): string {
  let line = records[0]?.line ?? 1;
  return records
    .map((record) => {
      const gap = '\n'.repeat(record.line - line);
      line = record.line + record.text.split('\n').length;
      return `${gap}${record.text}`;
    })
    .join('\n');
}

async function openJson(lines: AsyncIterable<string>, options: ReadShotsOptions): Promise<Input> {
  const unread: { line: number; why: string }[] = [];
  const objects = objectsOf(lines, unread)[Symbol.asyncIterator]();
  const first = await take(objects, BLOCK);
  const columns = [...new Set(first.flatMap(({ object }) => Object.keys(object)))];
  const row = ({ line, object }: JsonLine): Row => ({
    line,
    object,
    cells: columns.map((name) => (Object.hasOwn(object, name) ? cellOf(object[name]) : '')),
  });
  const rows = first.map(row);
  const head = readBlock(columns, rows, { ...options, separator: ',' });
  const blocks = (async function* () {
    yield rows;
    for (let next = await take(objects, BLOCK); next.length > 0; next = await take(objects, BLOCK)) {
      yield next.map(row);
    }
  })();
  return { format: 'jsonl', columns, readAs: head.readAs, head, blocks, unread };
}

interface JsonLine {
  readonly line: number;
  readonly object: Readonly<Record<string, unknown>>;
}

async function* objectsOf(
  lines: AsyncIterable<string>,
  unread: { line: number; why: string }[],
): AsyncIterable<JsonLine> {
  let line = 0;
  for await (const text of lines) {
    line += 1;
    if (text.trim() === '') continue;
    let value: unknown;
    try {
      value = JSON.parse(text);
    } catch {
      unread.push({ line, why: 'this is no JSON' });
      continue;
    }
    if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
      yield { line, object: value as Readonly<Record<string, unknown>> };
    } else unread.push({ line, why: 'this is no JSON object' });
  }
}

function cellOf(value: unknown): string {
  if (value === null || value === undefined) return '';
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}

async function take<T>(from: AsyncIterator<T>, most: number): Promise<T[]> {
  const taken: T[] = [];
  while (taken.length < most) {
    const next = await from.next();
    if (next.done === true) break;
    taken.push(next.value);
  }
  return taken;
}

/** Reads rows below their header; row i stands on line {@link lineOf} of the text that is read. */
export function readBlock(columns: readonly string[], rows: readonly Row[], as: ReadShotsOptions): ShotTable {
  const { formatRow } = dsvFormat(as.separator ?? ',');
  const width = columns.length;
  const body = rows.map(({ cells }) => {
    const flat = cells.map((cell) => cell.replace(/[\r\n]+/gu, ' '));
    return formatRow(flat.length < width ? [...flat, ...Array<string>(width - flat.length).fill('')] : flat);
  });
  return readShots([formatRow([...columns]), ...body].join('\n'), as);
}

/** Index of the row that stands on a line of the text {@link readBlock} reads. */
export function rowOn(columns: readonly string[], line: number): number {
  return line - 1 - columns.join('').split(/\r\n|\n|\r/u).length;
}
