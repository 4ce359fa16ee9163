/**
 * The speed ladder: one driver hit at several club speeds. What does each step of speed bring, is this driver right for
 * each speed, what is left on the table, and when does more speed stop paying?
 *
 * `npm run ladder` works on invented data; `npm run ladder -- my-shots.csv` on your own. `--help` lists the options.
 */

import { basename, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { SessionOptions } from 'fairflight';
import { type Speed, si } from 'fairflight/units';
import { calibratedSetup } from './ladder/calibration.js';
import { ladderOf, WORK } from './ladder/ladder.js';
import { ladderPage } from './ladder/page.js';
import { ladderRecord } from './ladder/record.js';
import { terminalReport } from './ladder/terminal.js';
import { type Command, type Given, oneOf, runCommand, UsageError, writeFiles } from './lib/command.js';
import { displays } from './lib/display.js';
import { driverFor } from './lib/driver.js';
import { progress } from './lib/progress.js';
import { typedSpeed } from './lib/quantities.js';
import { codeAfterReading, oneClub, readShotFile } from './lib/reading.js';
import { handFrom, SCENE_OPTIONS, sceneFrom } from './lib/scene-options.js';

const DEMO = fileURLToPath(new URL('data/speed-ladder-demo.csv', import.meta.url));

const OPTIONS = {
  out: { type: 'string', value: 'DIR', help: 'folder for the page and the JSON (default out/ladder)' },
  json: { type: 'boolean', help: 'print JSON instead of the table' },
  units: {
    type: 'string',
    value: 'NAME',
    help: 'imperial (mph, yd, ft) or metric (km/h, m); default imperial',
  },
  hand: { type: 'string', value: 'NAME', help: 'right or left (default right)' },
  club: {
    type: 'string',
    value: 'NAME',
    help: 'which club, when the file holds several (as written in its club column)',
  },
  loft: {
    type: 'string',
    value: '10.5deg',
    help: 'nominal loft of the driver (default from the file, else 10.5deg)',
  },
  bands: {
    type: 'string',
    value: 'HOW',
    help: 'found, labels, one, or edges such as 75,85,95,105mph (default: by label if every shot has one, else found)',
  },
  maximise: {
    type: 'string',
    value: 'NAME',
    help: 'what the best loft is best for: total or carry (default total)',
  },
  'map-band': {
    type: 'string',
    value: 'N',
    help: 'band of the launch and spin map, slowest is 1 (default the one with most to gain)',
  },
  calibrate: {
    type: 'boolean',
    help: 'fit restitution, drag and lift to these shots first, and use what comes out',
  },
  'keep-outliers': { type: 'boolean', help: 'count outliers in the means' },
  ...SCENE_OPTIONS,
} as const;
type OptionName = keyof typeof OPTIONS;

const command: Command<OptionName> = {
  name: 'ladder',
  summary: 'one driver at several club speeds: what speed brings, and whether the loft fits',
  usage: '[file.csv] [options]',
  options: OPTIONS,
  more: [
    'The CSV names its columns in plain words with units, in any order, for example',
    '  club speed (mph),ball speed (mph),launch angle (deg),spin (rpm),carry (yd),apex (ft)',
    'A shot needs ball speed, launch angle and spin, or club speed, attack angle and loft.',
    'Without a file, invented demo data is used.',
  ].join('\n'),
};

await runCommand(command, (given) => {
  if (given.files.length > 1) throw new UsageError(`one file at a time; got ${given.files.join(', ')}`);
  const file = given.files[0] ?? DEMO;
  const display = displays[oneOf('units', given.text('units') ?? 'imperial', ['imperial', 'metric'])];
  const scene = sceneFrom(given);
  const table = oneClub(readShotFile(file), given.text('club'));
  const plain = {
    clubhead: driverFor(table, given.text('loft')),
    scene,
    hand: handFrom(given.text('hand')),
    maximise: oneOf('maximise', given.text('maximise') ?? 'total', ['total', 'carry']),
    keepOutliers: given.flag('keep-outliers'),
  };
  const { setup, calibration } = given.flag('calibrate')
    ? calibratedSetup(table.shots, plain)
    : { setup: plain, calibration: undefined };
  const question = {
    display,
    shots: table.shots,
    setup,
    calibration,
    bands: bandsFrom(given),
    mapBand: mapBandFrom(given),
  };
  const bar = progress(WORK, 'ladder');
  const ladder = ladderOf(question, bar);
  bar.stop();

  const name = basename(file);
  const record = ladderRecord(ladder, table, name, display);
  const json = `${JSON.stringify(record, null, 2)}\n`;
  const paths = writeFiles(given.text('out') ?? join('out', 'ladder'), {
    'speed-ladder.html': ladderPage(ladder, table, name, display),
    'speed-ladder.json': json,
  });
  process.stdout.write(given.flag('json') ? json : terminalReport(ladder, table, display));
  if (!given.flag('json')) {
    process.stdout.write(`\nWritten: ${paths.map((path) => relative('.', path) || path).join(', ')}\n`);
  }
  return codeAfterReading('ladder', table);
});

function bandsFrom(given: Given<OptionName>): SessionOptions['bands'] {
  const text = given.text('bands');
  if (text === undefined || text === 'found' || text === 'labels' || text === 'one') return text;
  const match = /^\s*([\d.\s,]+?)\s*([a-z/]+)\s*$/i.exec(text);
  const edges = (match?.[1] ?? '')
    .split(',')
    .map((edge) => typedSpeed('bands', `${edge.trim()}${match?.[2] ?? ''}`));
  if (edges.length < 2) throw new UsageError('--bands needs two edges or more, such as 75,85,95mph');
  return edges.slice(1).map((to, i) => ({ from: edges[i] ?? si<Speed>(0), to }));
}

function mapBandFrom(given: Given<OptionName>): number | undefined {
  const text = given.text('map-band');
  if (text === undefined) return undefined;
  const band = Number(text);
  if (Number.isInteger(band) && band >= 1) return band;
  throw new UsageError(`--map-band needs a whole number from 1, got ${JSON.stringify(text)}`);
}
