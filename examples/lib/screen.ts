import type { ShotTable } from 'fairflight/schema';
import type { Sheet } from './sheet.js';
import { readingSummary } from './shot-table.js';
import { terminalSheet } from './table.js';
import { wrapped } from './text.js';

/** Rows that a table may take of a screen. */
const MOST_ROWS = 10;

/** Lines for one screen: sentences broken, tables as they are; what has nothing to say is left out. */
export function screenText(blocks: readonly string[]): string {
  return `${blocks.map((block) => (block.includes('\n') ? block : wrapped(block).trimEnd())).join('\n')}\n`;
}

/** Sentences of a screen, each indented, those with nothing to say left out. */
export function said(sentences: readonly string[]): readonly string[] {
  return sentences.flatMap((each) => (each === '' ? [] : [`  ${each}`]));
}

/** What must be known before anything is believed: what the file says of itself, how it was read, what was left out. */
export function readingHead(table: ShotTable): readonly string[] {
  const units = table.notes.filter((note) => note.includes('the header gives no unit'));
  return [
    ...table.comments.slice(0, 1),
    `${readingSummary(table)}.`,
    ...units.map((note) => `  note: ${note}`),
  ];
}

/** The figures of a table without their small print, as many rows as a screen takes. */
export function screenTable({ columns, rows }: Sheet): string {
  const shown = rows.slice(0, MOST_ROWS).map((row) => row.map(({ value }) => ({ value })));
  const more = rows.length - shown.length;
  const table = terminalSheet({ columns, rows: shown });
  return more === 0 ? table : `${table}\n and ${more} more: see --full`;
}

/** What full effort asks for, in the few words that a screen has for it. */
export const SPEED_CAUTION =
  'Speed work: warm up, build up over weeks, rest between hard sessions, keep others clear, stop at pain; with an injury, a heart condition, in youth or in doubt ask a doctor first.';
