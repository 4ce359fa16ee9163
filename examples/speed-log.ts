/**
 * The speed log: practice sessions over weeks in one file. Is the gain in club speed real, what did it bring, did
 * scatter grow, and what is a sensible next target?
 *
 * `npm run speed-log` works on invented data; `npm run speed-log -- my-log.csv` on your own. `--help` lists the options.
 */

import { basename, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Command, type Given, oneOf, runCommand, UsageError, writeFiles } from './lib/command.js';
import { displays } from './lib/display.js';
import { progress } from './lib/progress.js';
import { codeAfterReading, oneClub, readShotFile } from './lib/reading.js';
import { SCENE_OPTIONS, sceneFrom } from './lib/scene-options.js';
import { trainingLog, WORK } from './log/log.js';
import { logPage } from './log/page.js';
import { logRecord } from './log/record.js';
import { terminalReport } from './log/terminal.js';

const DEMO = fileURLToPath(new URL('data/speed-log-demo.csv', import.meta.url));

const OPTIONS = {
  out: { type: 'string', value: 'DIR', help: 'folder for the page and the JSON (default out/speed-log)' },
  json: { type: 'boolean', help: 'print JSON instead of the table' },
  units: {
    type: 'string',
    value: 'NAME',
    help: 'imperial (mph, yd, ft) or metric (km/h, m); default imperial',
  },
  club: {
    type: 'string',
    value: 'NAME',
    help: 'which club, when the file holds several (as written in its club column)',
  },
  block: {
    type: 'string',
    value: 'N',
    help: 'sessions averaged at each end (default a third of them)',
  },
  'keep-outliers': { type: 'boolean', help: 'count outliers' },
  ...SCENE_OPTIONS,
} as const;
type OptionName = keyof typeof OPTIONS;

const command: Command<OptionName> = {
  name: 'speed-log',
  summary: 'practice sessions over weeks: is the gain in speed real, and what is it worth?',
  usage: '[file.csv] [options]',
  options: OPTIONS,
  more: [
    'The CSV holds one shot a line, with club speed and a date (2026-03-31) or the name of a session, for example',
    '  date,club speed (mph),ball speed (mph),launch angle (deg),spin (rpm),carry (yd)',
    'Club speed alone is enough to judge the gain; the rest says what it brought.',
    'Without a file, invented demo data is used.',
  ].join('\n'),
};

await runCommand(command, (given) => {
  if (given.files.length > 1) throw new UsageError(`one file at a time; got ${given.files.join(', ')}`);
  const file = given.files[0] ?? DEMO;
  const display = displays[oneOf('units', given.text('units') ?? 'imperial', ['imperial', 'metric'])];
  const scene = sceneFrom(given);
  const block = blockFrom(given);
  const table = oneClub(readShotFile(file, { needs: 'club-speed' }), given.text('club'));
  const bar = progress(WORK, 'speed-log');
  const question = { shots: table.shots, block, scene, keepOutliers: given.flag('keep-outliers') };
  const log = trainingLog(question, bar);
  bar.stop();

  const name = basename(file);
  const json = `${JSON.stringify(logRecord(log, table, name, display), null, 2)}\n`;
  const paths = writeFiles(given.text('out') ?? join('out', 'speed-log'), {
    'speed-log.html': logPage(log, table, name, display),
    'speed-log.json': json,
  });
  process.stdout.write(given.flag('json') ? json : terminalReport(log, table, display));
  if (!given.flag('json')) {
    process.stdout.write(`\nWritten: ${paths.map((path) => relative('.', path) || path).join(', ')}\n`);
  }
  return codeAfterReading(command.name, table);
});

function blockFrom(given: Given<OptionName>): number | undefined {
  const text = given.text('block');
  if (text === undefined) return undefined;
  const block = Number(text);
  if (Number.isInteger(block) && block >= 1) return block;
  throw new UsageError(`--block needs a whole number from 1, got ${JSON.stringify(text)}`);
}
