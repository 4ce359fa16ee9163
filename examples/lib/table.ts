import Table from 'cli-table3';
import type { Sheet } from './sheet.js';

/** A table for the terminal: first column left, the others right, no colours, so that it survives a pipe. */
export function terminalTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  left = 1,
): string {
  const table = new Table({
    head: [...head],
    colAligns: head.map((_, i) => (i < left ? 'left' : 'right')),
    style: { head: [], border: [], 'padding-left': 1, 'padding-right': 1, compact: true },
    chars: {
      top: '',
      'top-mid': '',
      'top-left': '',
      'top-right': '',
      bottom: '',
      'bottom-mid': '',
      'bottom-left': '',
      'bottom-right': '',
      left: '',
      'left-mid': '',
      right: '',
      'right-mid': '',
      mid: '─',
      'mid-mid': '─',
      middle: '',
    },
  });
  for (const row of rows) table.push([...row]);
  return table
    .toString()
    .split('\n')
    .map((each) => each.trimEnd())
    .join('\n');
}

/** A table of plain text, small print on the lines below. */
export function terminalSheet({ columns, rows }: Sheet): string {
  return terminalTable(
    columns.map(({ head, unit = '' }) => `${head}\n${unit}`.trimEnd()),
    rows.map((row) => row.map(({ value, small = [] }) => [value, ...small].join('\n'))),
    columns.findIndex(({ text }) => text !== true),
  );
}
