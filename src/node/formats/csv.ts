import { open } from 'node:fs/promises';
import { rowStatuses, type SweepAbout, type SweepRows } from '../../sweep/index.js';
import {
  ABOUT_KEY,
  type Encoder,
  type Format,
  STATUS_COLUMN,
  type WarningCounts,
  warningsOf,
} from './format.js';
import { bytesAt, UNSEALED } from './seal.js';

/** What stands before the counts of warnings in the last line. */
const WARNINGS = ', warnings ';
const ABOUT_LINE = `# ${ABOUT_KEY}: `;

/**
 * CSV: one comment line with everything the sweep says of itself, a header, the rows with every digit a number needs to
 * be read back exactly, a missing value as an empty field, and a comment line that ends the file. A comment is a line
 * that begins with `#`, and no other line has one.
 * @internal
 */
export const csv: Format = {
  encoder: async (about) => csvEncoder(about),
  about: async (path) => {
    const file = await open(path);
    try {
      const { size } = await file.stat();
      const first = await firstLine(file, size);
      if (!first.startsWith(ABOUT_LINE)) return undefined;
      const about = JSON.parse(first.slice(ABOUT_LINE.length)) as SweepAbout;
      return { about, warnings: await warningsAtEnd(file, size) };
    } finally {
      await file.close();
    }
  },
};

function csvEncoder(about: SweepAbout): Encoder {
  const header = [...about.columns.map(({ column }) => column), STATUS_COLUMN].join(',');
  return {
    head: () => Buffer.from(`${ABOUT_LINE}${JSON.stringify(about)}\n${header}\n`),
    chunk: (rows) => ({ bytes: Buffer.from(linesOf(rows)), warningCounts: rows.warningCounts, note: null }),
    tail: (chunks) => {
      const rows = chunks.reduce((sum, chunk) => sum + chunk.rows, 0);
      return Buffer.from(
        `# end, ${rows} rows${WARNINGS}${JSON.stringify(warningsOf(chunks))}, ${UNSEALED}\n`,
      );
    },
  };
}

function linesOf({ values, status, count }: SweepRows): string {
  let text = '';
  for (let i = 0; i < count; i++) {
    for (const column of values) {
      const value = column[i] as number;
      text += Number.isNaN(value) ? ',' : `${value},`;
    }
    text += `${rowStatuses[status[i] as number]}\n`;
  }
  return text;
}

/** The last line is shorter: there are a dozen codes. */
const LONGEST_END = 4096;

async function warningsAtEnd(file: Awaited<ReturnType<typeof open>>, size: number): Promise<WarningCounts> {
  const from = Math.max(0, size - LONGEST_END);
  const end = (await bytesAt(file, from, size - from)).toString('utf8');
  const at = end.lastIndexOf(WARNINGS) + WARNINGS.length;
  return JSON.parse(end.slice(at, end.lastIndexOf('}') + 1)) as WarningCounts;
}

async function firstLine(file: Awaited<ReturnType<typeof open>>, size: number): Promise<string> {
  for (let length = 4096; ; length *= 4) {
    const bytes = await bytesAt(file, 0, Math.min(length, size));
    const end = bytes.indexOf(10);
    if (end >= 0) return bytes.toString('utf8', 0, end);
    if (length >= size) return '';
  }
}
