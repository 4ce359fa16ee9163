import { open } from 'node:fs/promises';
import { rowStatuses, type SweepAbout, type SweepRows } from '../../sweep/index.js';
import { ABOUT_KEY, type Encoder, type Format, STATUS_COLUMN } from './format.js';

const ABOUT_LINE = `# ${ABOUT_KEY}: `;
const END = /\n# end, (\d+) rows\n$/;

/**
 * CSV: one comment line with everything the sweep says of itself, a header with units, the rows with every digit a
 * number needs to be read back exactly, a missing value as an empty field, and a comment line that ends the file.
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
      const last = await file.read(
        Buffer.alloc(Math.min(64, size)),
        0,
        Math.min(64, size),
        Math.max(0, size - 64),
      );
      const end = END.exec(last.buffer.toString('latin1'));
      const about = JSON.parse(first.slice(ABOUT_LINE.length)) as SweepAbout;
      return end !== null && Number(end[1]) === about.rows ? about : undefined;
    } finally {
      await file.close();
    }
  },
};

function csvEncoder(about: SweepAbout): Encoder {
  const header = about.columns.map(({ name, unit }) => (unit === '' ? name : `${name} (${unit})`));
  const text = `${ABOUT_LINE}${JSON.stringify(about)}\n${[...header, STATUS_COLUMN].join(',')}\n`;
  return {
    head: () => Buffer.from(text),
    chunk: (rows) => ({ bytes: Buffer.from(linesOf(rows)), note: null }),
    tail: (chunks) => Buffer.from(`# end, ${chunks.reduce((sum, { rows }) => sum + rows, 0)} rows\n`),
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
    const { buffer, bytesRead } = await file.read(
      Buffer.alloc(Math.min(length, size)),
      0,
      Math.min(length, size),
      0,
    );
    const end = buffer.indexOf(10);
    if (end >= 0) return buffer.toString('utf8', 0, end);
    if (bytesRead >= size) return '';
  }
}
