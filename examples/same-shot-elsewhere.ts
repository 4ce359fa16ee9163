/**
 * The same shot elsewhere: a player's measured shots flown again in winter, in summer, up a mountain and in wind, as a
 * card to print.
 *
 * `npm run same-shot` works on invented data; `npm run same-shot -- my-bag.csv` on your own. `--help` lists the options.
 */

import { basename, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Command, oneOf, runCommand, UsageError, writeFiles } from './lib/command.js';
import { displays } from './lib/display.js';
import { progress } from './lib/progress.js';
import { codeAfterReading, readShotFile } from './lib/reading.js';
import { SCENE_OPTIONS } from './lib/scene-options.js';
import { clubOf, elsewhere } from './places/elsewhere.js';
import { elsewherePage } from './places/page.js';
import { elsewhereRecord } from './places/record.js';
import { PLACE_OPTIONS, placesFrom } from './places/scenes.js';
import { terminalReport } from './places/terminal.js';

const DEMO = fileURLToPath(new URL('data/bag-demo.csv', import.meta.url));
/** The weather of the bundled data. */
const DEMO_WEATHER = { temperature: '14C' } as const;

const OPTIONS = {
  out: { type: 'string', value: 'DIR', help: 'folder for the page and the JSON (default out/same-shot)' },
  json: { type: 'boolean', help: 'print JSON instead of the table' },
  units: { type: 'string', value: 'NAME', help: 'imperial (yd, ft) or metric (m); default imperial' },
  'keep-outliers': { type: 'boolean', help: 'count outliers in the means' },
  ...PLACE_OPTIONS,
  ...SCENE_OPTIONS,
} as const;
type OptionName = keyof typeof OPTIONS;

const command: Command<OptionName> = {
  name: 'same-shot',
  summary: 'a player’s distances in winter, in summer, at altitude and in wind, as a card to print',
  usage: '[file.csv] [options]',
  options: OPTIONS,
  more: [
    'Altitude, temperature, wind and turf are those of the day the shots were measured; cold, warm, height and breeze',
    'say where else they are flown. The CSV holds one shot a line, of one club or a whole bag, for example',
    '  club,ball speed (mph),launch angle (deg),spin (rpm),carry (yd)',
    'Without a file, invented demo data is used, measured at 14 C.',
  ].join('\n'),
};

await runCommand(command, (given) => {
  if (given.files.length > 1) throw new UsageError(`one file at a time; got ${given.files.join(', ')}`);
  const file = given.files[0] ?? DEMO;
  const display = displays[oneOf('units', given.text('units') ?? 'imperial', ['imperial', 'metric'])];
  const { home, places } = placesFrom(given, file === DEMO ? DEMO_WEATHER : {});
  const table = readShotFile(file);
  const bar = progress(new Set(table.shots.map(clubOf)).size, 'same-shot');
  const keepOutliers = given.flag('keep-outliers');
  const answer = elsewhere({ shots: table.shots, home, places, keepOutliers }, bar);
  bar.stop();

  const name = basename(file);
  const json = `${JSON.stringify(elsewhereRecord(answer, table, name, display), null, 2)}\n`;
  const paths = writeFiles(given.text('out') ?? join('out', 'same-shot'), {
    'same-shot-elsewhere.html': elsewherePage(answer, table, name, display),
    'same-shot-elsewhere.json': json,
  });
  process.stdout.write(given.flag('json') ? json : terminalReport(answer, table, display));
  if (!given.flag('json')) {
    process.stdout.write(`\nWritten: ${paths.map((path) => relative('.', path) || path).join(', ')}\n`);
  }
  return codeAfterReading(command.name, table);
});
