import { open } from 'node:fs/promises';
import { rowStatuses, type SweepAbout, type SweepRows } from '../../sweep/index.js';
import { ABOUT_KEY, type Encoder, type Format, STATUS_COLUMN } from './format.js';
import { bytesAt, UNSEALED } from './seal.js';

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
      const first = await firstLine(file, (await file.stat()).size);
      return first.startsWith(ABOUT_LINE)
        ? (JSON.parse(first.slice(ABOUT_LINE.length)) as SweepAbout)
        : undefined;
    } finally {
      await file.close();
    }
  },
};

function csvEncoder(about: SweepAbout): Encoder {
  const header = [...about.columns.map(({ column }) => column), STATUS_COLUMN].join(',');
  return {
    head: () => Buffer.from(`${ABOUT_LINE}${JSON.stringify(about)}\n${header}\n`),
    chunk: (rows) => ({ bytes: Buffer.from(linesOf(rows)), note: null }),
    tail: (chunks) =>
      Buffer.from(`# end, ${chunks.reduce((sum, { rows }) => sum + rows, 0)} rows, ${UNSEALED}\n`),
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

async function firstLine(file: Awaited<ReturnType<typeof open>>, size: number): Promise<string> {
  for (let length = 4096; ; length *= 4) {
    const bytes = await bytesAt(file, 0, Math.min(length, size));
    const end = bytes.indexOf(10);
    if (end >= 0) return bytes.toString('utf8', 0, end);
    if (length >= size) return '';
  }
}
