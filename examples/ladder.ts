/**
 * The speed ladder: one driver hit at several club speeds. What does each step of speed bring, is this driver right for
 * each speed, what is still to gain, and when does more speed stop paying?
 *
 * `npm run ladder` works on invented data; `npm run ladder -- my-shots.csv` on your own. `--help` lists the options.
 */

import { basename } from 'node:path';
import type { SessionOptions } from 'fairflight/session';
import { type Speed, si } from 'fairflight/units';
import { calibratedSetup } from './ladder/calibration.js';
import { type Ladder, ladderOf, WORK } from './ladder/ladder.js';
import { ladderPage } from './ladder/page.js';
import { ladderRecord } from './ladder/record.js';
import { screenReport } from './ladder/screen.js';
import { terminalReport } from './ladder/terminal.js';
import { type Command, type Given, oneOf, runCommand, UsageError } from './lib/command.js';
import { driverFor, LOFT_OPTION } from './lib/driver.js';
import { type Progress, partOf, watched } from './lib/progress.js';
import { typedSpeed, typedWhole, unitAtEnd } from './lib/quantities.js';
import {
  codeAfterReading,
  handOf,
  oneClub,
  READING_OPTIONS,
  readingFrom,
  readShotFile,
} from './lib/reading.js';
import {
  CLUB_OPTION,
  deliver,
  displayFrom,
  fileFrom,
  KEEP_OUTLIERS_OPTION,
  REPORT_OPTIONS,
} from './lib/report.js';
import { HAND_OPTION, SCENE_OPTIONS, sceneFrom } from './lib/scene-options.js';
import { demo, subjectOf } from './lib/subject.js';

const DEMO = demo('speed-ladder-demo.csv', 'Imo Feldspar', import.meta.url);

const OPTIONS = {
  ...REPORT_OPTIONS,
  hand: HAND_OPTION,
  club: CLUB_OPTION,
  loft: LOFT_OPTION,
  bands: {
    type: 'string',
    value: 'HOW',
    help: 'found, labels, one, or edges such as 75,85,95,105mph (default: by label if every shot has one, else found)',
  },
  maximise: {
    type: 'string',
    value: 'NAME',
    help: 'what the best loft is best for: carry or total (default carry)',
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
  'keep-outliers': KEEP_OUTLIERS_OPTION,
  ...READING_OPTIONS,
  ...SCENE_OPTIONS,
} as const;
type OptionName = keyof typeof OPTIONS;

const command: Command<OptionName> = {
  name: 'ladder',
  usage: '[file.csv] [options]',
  options: OPTIONS,
  more: [
    'The CSV names its columns in plain words with units, in any order, for example',
    '  club speed (mph),ball speed (mph),launch angle (deg),spin (rpm),carry (yd),apex (ft)',
    'A shot needs ball speed, launch angle and spin, or club speed, attack angle and loft.',
    'Shots are grouped by a column "band" where there is one, else by club speed.',
    'Without a file, invented demo data is used.',
  ].join('\n'),
};

await runCommand(command, (given) => {
  const file = fileFrom(given, DEMO);
  const display = displayFrom(given);
  const scene = sceneFrom(given);
  const table = oneClub(readShotFile(file.path, { ...readingFrom(given), scene }), given.text('club'));
  const plain = {
    clubhead: driverFor(table, given.text('loft')),
    scene,
    hand: handOf(table, given.text('hand')),
    maximise: oneOf('maximise', given.text('maximise') ?? 'carry', ['carry', 'total']),
    keepOutliers: given.flag('keep-outliers'),
  };
  const calibrated = given.flag('calibrate');
  const mapBand = given.text('map-band');
  const question = {
    display,
    shots: table.shots,
    bands: bandsFrom(given),
    mapBand: mapBand === undefined ? undefined : typedWhole('map-band', mapBand, 1),
  };
  const work = (bar: Progress): Ladder => {
    if (!calibrated) return ladderOf({ ...question, setup: plain, calibration: undefined }, bar);
    bar.tick(0);
    const fitted = calibratedSetup(table.shots, plain);
    return ladderOf({ ...question, ...fitted }, partOf(bar, 0.6 * WORK, WORK, WORK));
  };
  const ladder = watched(WORK, command.name, work, calibrated ? 0 : undefined);

  const name = basename(file.path);
  deliver(given, {
    program: 'ladder',
    subject: subjectOf(given, file, table),
    page: ladderPage(ladder, table, name, display),
    record: ladderRecord(ladder, table, name, display),
    screen: screenReport(ladder, table, display),
    full: terminalReport(ladder, table, display),
  });
  return codeAfterReading(command.name, table);
});

function bandsFrom(given: Given<OptionName>): SessionOptions['bands'] {
  const text = given.text('bands');
  if (text === undefined || text === 'found' || text === 'labels' || text === 'one') return text;
  const typedEdges = unitAtEnd(text);
  const wrong = new UsageError(
    `--bands must be found, labels, one, or two edges or more that rise, such as 75,85,95mph; got ${JSON.stringify(text)}`,
  );
  if (typedEdges === undefined) throw wrong;
  const { numbers, unit } = typedEdges;
  const edges = numbers.split(',').map((edge) => typedSpeed('bands', `${edge.trim()}${unit}`));
  const bands = edges.slice(1).map((to, i) => ({ from: edges[i] ?? si<Speed>(0), to }));
  if (bands.length === 0 || bands.some(({ from, to }) => to <= from)) throw wrong;
  return bands;
}
