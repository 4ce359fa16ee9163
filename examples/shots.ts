/**
 * Shots with what the model says of each: carry, apex, descent, total, and where on the face it was struck, as columns
 * beside those of the file. CSV or JSON Lines go in and come out on the standard output, row by row.
 *
 * `npx fairflight shots my-shots.csv > with-model.csv`. `--help` lists the options.
 */

import { createReadStream } from 'node:fs';
import { type Command, EXIT, type Given, oneOf, runCommand, UsageError, whyNot } from './lib/command.js';
import { READING_OPTIONS, readingFrom } from './lib/reading.js';
import { fileFrom } from './lib/report.js';
import { HAND_OPTION, handFrom, SCENE_OPTIONS, sceneFrom } from './lib/scene-options.js';
import { rejectionLine } from './lib/shot-table.js';
import { demo } from './lib/subject.js';
import { remark } from './lib/terminal.js';
import { counted } from './lib/text.js';
import { textOf } from './lib/text-file.js';
import { addedColumns, UNITS } from './shots/columns.js';
import { type Input, openShots, type Row, readBlock, rowOn } from './shots/input.js';
import { type Computed, computed } from './shots/model.js';
import { csvWriter, jsonWriter, write } from './shots/output.js';

const DEMO = demo('speed-ladder-demo.csv', 'Imo Feldspar', import.meta.url);

const OPTIONS = {
  to: { type: 'string', value: 'NAME', help: 'csv or jsonl (JSON Lines); default that of the input' },
  units: {
    type: 'string',
    value: 'NAME',
    help: 'units of the added columns: si (m, rad; default), imperial (yd, ft, deg, mm) or metric (m, deg, mm)',
  },
  hand: HAND_OPTION,
  ...READING_OPTIONS,
  ...SCENE_OPTIONS,
} as const;
type OptionName = keyof typeof OPTIONS;

const command: Command<OptionName> = {
  name: 'shots',
  usage: '[FILE or -] [options]',
  options: OPTIONS,
  more: [
    'FILE is CSV or JSON Lines, - the standard input; the rows come out in their order with the columns',
    ...[
      `  ${addedColumns('si')
        .map(({ name }) => name)
        .join(', ')}`,
    ],
    'added. A row that cannot be flown has them empty, and a line on the error stream says why.',
    'Units are settled by the first 256 rows. Without a file, invented demo data is used.',
  ].join('\n'),
};

/** Lines on the error stream about single rows; what comes after is counted. */
const MOST_NOTES = 20;

await runCommand(command, async (given) => {
  const scene = sceneFrom(given);
  const hand = handFrom(given.text('hand'));
  const added = addedColumns(oneOf('units', given.text('units') ?? 'si', UNITS));
  const input = await openShots(piecesOf(given), readingFrom(given));
  for (const { name } of added) {
    if (!input.columns.includes(name)) continue;
    throw new UsageError(`the input has a column ${JSON.stringify(name)} already`);
  }
  const to = oneOf('to', given.text('to') ?? input.format, ['csv', 'jsonl']);
  const writer = to === 'csv' ? csvWriter(input, added) : jsonWriter(input, added);
  const notes = noteTaker();
  for (const line of input.head.comments) remark(`${line}\n`);
  for (const each of input.head.rejected) if (each.scope === 'column') notes.left(rejectionLine(each));
  for (const note of input.head.notes) if (note.includes('gives no unit')) remark(`shots: ${note}\n`);

  // Whoever reads may stop, as head does: then the writing ends, and it is no fault.
  process.stdout.on('error', () => process.stdout.destroy());
  let reading = await write(writer.head);
  for await (const rows of input.blocks) {
    const found = computedFor(rows, input, notes, (shot) => computed(shot, scene, hand));
    if (to === 'csv') notes.beyond(rows, input);
    reading = reading && (await write(rows.map((row, i) => writer.line(row, found[i] ?? {})).join('')));
    if (!reading) break;
  }
  for (const { line, why } of input.unread) notes.left(`line ${line}: ${why}`);
  return notes.end();
});

/** What is computed for each row of a block; nothing for one that is no shot. */
function computedFor(
  rows: readonly Row[],
  { columns, readAs }: Input,
  notes: Notes,
  of: (shot: Parameters<typeof computed>[0]) => Computed,
): readonly Computed[] {
  const { shots, rejected } = readBlock(columns, rows, readAs);
  const lineOf = (line: number): number => rows[rowOn(columns, line)]?.line ?? line;
  for (const each of rejected) {
    if (each.scope !== 'column') notes.left(rejectionLine({ ...each, line: lineOf(each.line) }));
  }
  const found: Computed[] = rows.map(() => ({}));
  for (const shot of shots) {
    const at = rowOn(columns, shot.line ?? 0);
    const row = of(shot);
    found[at] = row;
    if (row.why !== undefined) notes.left(`line ${rows[at]?.line ?? 0}: ${row.why}`);
  }
  return found;
}

interface Notes {
  readonly left: (note: string) => void;
  /** Says which cells have no column in the output. */
  readonly beyond: (rows: readonly Row[], input: Input) => void;
  /** Says how many notes were not printed. @returns the exit code */
  readonly end: () => number;
}

function noteTaker(): Notes {
  let count = 0;
  const left = (note: string): void => {
    count += 1;
    if (count <= MOST_NOTES) remark(`shots: ${note}\n`);
  };
  return {
    left,
    beyond: (rows, { columns }) => {
      const known = new Set(columns);
      for (const { line, cells, object = {} } of rows) {
        const more = Object.keys(object).filter((name) => !known.has(name));
        if (more.length > 0)
          left(`line ${line}: no column for ${more.map((name) => JSON.stringify(name)).join(', ')}`);
        if (cells.slice(columns.length).some((cell) => cell.trim() !== '')) {
          left(`line ${line}: cells beyond the last column are left out`);
        }
      }
    },
    end: () => {
      if (count > MOST_NOTES)
        remark(`shots: ${counted(count - MOST_NOTES, 'line')} like these not printed\n`);
      return count === 0 ? EXIT.done : EXIT.partial;
    },
  };
}

function piecesOf(given: Given<OptionName>): AsyncIterable<string> {
  const { path } = fileFrom(given, DEMO);
  return path === '-' ? textOf(process.stdin) : readable(path);
}

async function* readable(path: string): AsyncIterable<string> {
  try {
    yield* textOf(createReadStream(path));
  } catch (error) {
    if (error instanceof UsageError) throw error;
    throw new UsageError(`cannot read ${path}: ${whyNot(error)}`);
  }
}
