/**
 * The same shot elsewhere: a player's measured shots flown again in winter, in summer, up a mountain and in wind, as a
 * card to print.
 *
 * `npm run places` works on invented data; `npm run places -- my-bag.csv` on your own. `--help` lists the options.
 */

import { basename } from 'node:path';
import { type Command, runCommand } from './lib/command.js';
import { watched } from './lib/progress.js';
import { codeAfterReading, READING_OPTIONS, readingFrom, readShotFile } from './lib/reading.js';
import { deliver, displayFrom, fileFrom, KEEP_OUTLIERS_OPTION, REPORT_OPTIONS } from './lib/report.js';
import { SCENE_OPTIONS } from './lib/scene-options.js';
import { demo, subjectOf } from './lib/subject.js';
import { clubOf, elsewhere } from './places/elsewhere.js';
import { elsewherePage } from './places/page.js';
import { elsewhereRecord } from './places/record.js';
import { PLACE_OPTIONS, placesFrom } from './places/scenes.js';
import { screenReport } from './places/screen.js';
import { terminalReport } from './places/terminal.js';

const DEMO = demo('bag-demo.csv', 'Perrin Vantongue', import.meta.url);
/** The weather of the bundled data. */
const DEMO_WEATHER = { temperature: '14C' } as const;

const OPTIONS = {
  ...REPORT_OPTIONS,
  'keep-outliers': KEEP_OUTLIERS_OPTION,
  ...PLACE_OPTIONS,
  ...READING_OPTIONS,
  ...SCENE_OPTIONS,
} as const;
type OptionName = keyof typeof OPTIONS;

const command: Command<OptionName> = {
  name: 'places',
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
  const file = fileFrom(given, DEMO);
  const display = displayFrom(given);
  const { home, places } = placesFrom(given, file === DEMO ? DEMO_WEATHER : {});
  const table = readShotFile(file.path, { ...readingFrom(given), scene: home });
  const question = { shots: table.shots, home, places, keepOutliers: given.flag('keep-outliers') };
  const clubs = new Set(table.shots.map(clubOf)).size;
  const answer = watched(clubs, command.name, (bar) => elsewhere(question, bar));

  const name = basename(file.path);
  deliver(given, {
    program: 'places',
    subject: subjectOf(given, file, table),
    page: elsewherePage(answer, table, name, display),
    record: elsewhereRecord(answer, table, name, display),
    screen: screenReport(answer, table, display),
    full: terminalReport(answer, table, display),
  });
  return codeAfterReading(command.name, table);
});
