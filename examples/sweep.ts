/**
 * What does the carry of a drive depend on? A million flights over club speed, attack angle, loft and air go into a
 * file of Parquet or CSV, and the Sobol indices of carry come out of it.
 *
 * `npm run sweep` flies them; `npm run sweep -- --count 20000` fewer. After Ctrl-C, or a power cut, the same command
 * carries on where it stopped. `--help` lists the options.
 */

import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { isFairflightError } from 'fairflight';
import { sweepToFile } from 'fairflight/node';
import { sobolIndicesOf } from 'fairflight/sweep';
import { type Command, EXIT, oneOf, runCommand } from './lib/command.js';
import { makeFolder } from './lib/files.js';
import { progress } from './lib/progress.js';
import { typedWhole } from './lib/quantities.js';
import { deliver, displayFrom, folderFrom, noFile, REPORT_OPTIONS } from './lib/report.js';
import { remark } from './lib/terminal.js';
import { fixed, grouped } from './lib/text.js';
import { readColumns } from './sweep/columns.js';
import { mainEffect } from './sweep/effects.js';
import { type Findings, studyPage, terminalReport } from './sweep/report.js';
import { FACTORS, FLIGHTS_PER_BASE, type Study, study } from './sweep/study.js';

const MILLION = 2 ** 20;

const OPTIONS = {
  ...REPORT_OPTIONS,
  count: {
    type: 'string',
    value: 'N',
    help: `flights, made whole groups of ${FLIGHTS_PER_BASE} (default ${MILLION}; a power of two is best)`,
  },
  seed: { type: 'string', value: 'N', help: 'seed of the scramble (default 1)' },
  workers: { type: 'string', value: 'N', help: 'worker threads (default one for each processor)' },
  replace: { type: 'boolean', help: 'begin again, and write over files of the same name' },
  format: {
    type: 'string',
    value: 'NAME',
    help: 'parquet (default), which needs the packages hyparquet and hyparquet-writer, or csv, which needs none',
  },
} as const;
type OptionName = keyof typeof OPTIONS;

const command: Command<OptionName> = {
  name: 'sweep',
  usage: '[options]',
  options: OPTIONS,
  more: 'An unfinished sweep of the same count and seed is continued; a finished one is read again.',
};

await runCommand(command, async (given) => {
  noFile(given);
  const display = displayFrom(given);
  const whole = (
    option: 'count' | 'seed' | 'workers',
    usual: number,
    least: number,
    most?: number,
  ): number => {
    const text = given.text(option);
    return text === undefined ? usual : typedWhole(option, text, least, most);
  };
  const count = whole('count', MILLION, 4 * FLIGHTS_PER_BASE, 1e9);
  const seed = whole('seed', 1, 0);
  const workers = whole('workers', availableParallelism(), 0, 256);
  const design = study(Math.round(count / FLIGHTS_PER_BASE), seed);
  const folder = folderFrom(given);
  const format = oneOf('format', given.text('format') ?? 'parquet', ['parquet', 'csv']);
  const what = `${design.base * FLIGHTS_PER_BASE}-seed-${seed}`;
  const name = `sweep-${what}.${format}`;
  const path = join(folder, name);

  makeFolder(folder);
  const flown = await fly(path, design, workers, given.flag('replace'));
  if (flown === undefined) {
    remark('sweep: stopped; the same command carries on from here\n');
    return EXIT.partial;
  }
  const findings = await findingsOf(path, design, seed, flown.about);
  const text = `${terminalReport(findings, display)}\n${flown.note}\n`;
  deliver(given, {
    program: 'sweep',
    subject: { who: what, date: '' },
    page: studyPage(findings, name, display),
    record: { file: name, ...findings, factors: FACTORS },
    screen: text,
    full: text,
    before: [path],
  });
  return EXIT.done;
});

/** Flies what is not in the file yet; undefined when the user stopped it. */
async function fly(
  path: string,
  design: Study,
  workers: number,
  overwrite: boolean,
): Promise<{ readonly about: Findings['about']; readonly note: string } | undefined> {
  const stop = new AbortController();
  const onInterrupt = (): void => stop.abort('interrupted');
  process.once('SIGINT', onInterrupt);
  const bar = progress(design.base * FLIGHTS_PER_BASE, 'flying');
  const start = performance.now();
  try {
    const { about, resumedAt, rows, bytes } = await sweepToFile(
      path,
      design,
      {},
      {
        ...(overwrite ? { overwrite } : { resume: true }),
        workers,
        signal: stop.signal,
        onProgress: ({ done }) => bar.tick(done),
      },
    );
    const seconds = (performance.now() - start) / 1000;
    const before = resumedAt === 0 ? '' : ` (${grouped(resumedAt)} were there)`;
    const size = `${fixed(bytes / 1e6, 1)} MB`;
    return {
      about,
      note: `${grouped(rows - resumedAt)} flights${before} in ${fixed(seconds, 1)} s; ${size}.`,
    };
  } catch (error) {
    if (isFairflightError(error) && error.code === 'aborted') return undefined;
    throw error;
  } finally {
    bar.stop();
    process.off('SIGINT', onInterrupt);
  }
}

/** Reads the sweep back from its file: what is reported is what is in it. */
async function findingsOf(
  path: string,
  design: Study,
  seed: number,
  about: Findings['about'],
): Promise<Findings> {
  const bar = progress(3, 'reading back', 0);
  try {
    bar.tick(0);
    const columns = await readColumns(path, about);
    const column = (name: string): Float64Array => columns.get(name) ?? new Float64Array(0);
    const carry = column('carry');
    bar.tick(1);
    const indices = sobolIndicesOf(design, carry);
    bar.tick(2);
    return {
      about,
      seed,
      indices,
      effects: design.factors.map(({ name, from, to }) => mainEffect(column(name), carry, from, to)),
      without: carry.reduce((sum, value) => sum + (Number.isFinite(value) ? 0 : 1), 0),
    };
  } finally {
    bar.stop();
  }
}
