/**
 * The speed log: practice sessions over weeks in one file. Is the gain in club speed real, what did it bring, did
 * scatter grow, and what is a sensible next target?
 *
 * `npm run log` works on invented data; `npm run log -- my-log.csv` on your own. `--help` lists the options.
 */

import { basename } from 'node:path';
import { type Command, runCommand } from './lib/command.js';
import { watched } from './lib/progress.js';
import { typedWhole } from './lib/quantities.js';
import { codeAfterReading, oneClub, READING_OPTIONS, readingFrom, readShotFile } from './lib/reading.js';
import {
  CLUB_OPTION,
  deliver,
  displayFrom,
  fileFrom,
  KEEP_OUTLIERS_OPTION,
  REPORT_OPTIONS,
} from './lib/report.js';
import { SCENE_OPTIONS, sceneFrom } from './lib/scene-options.js';
import { demo, subjectOf } from './lib/subject.js';
import { trainingLog, WORK } from './log/log.js';
import { logPage } from './log/page.js';
import { logRecord } from './log/record.js';
import { screenReport } from './log/screen.js';
import { terminalReport } from './log/terminal.js';

const DEMO = demo('speed-log-demo.csv', 'Juno Tallowby', import.meta.url);

const OPTIONS = {
  ...REPORT_OPTIONS,
  club: CLUB_OPTION,
  block: {
    type: 'string',
    value: 'N',
    help: 'sessions averaged at each end (default a third of them)',
  },
  'keep-outliers': KEEP_OUTLIERS_OPTION,
  ...READING_OPTIONS,
  ...SCENE_OPTIONS,
} as const;
type OptionName = keyof typeof OPTIONS;

const command: Command<OptionName> = {
  name: 'log',
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
  const file = fileFrom(given, DEMO);
  const display = displayFrom(given);
  const scene = sceneFrom(given);
  const block = given.text('block');
  const table = oneClub(
    readShotFile(file.path, { ...readingFrom(given), scene, needs: 'club-speed' }),
    given.text('club'),
  );
  const question = {
    shots: table.shots,
    block: block === undefined ? undefined : typedWhole('block', block, 1),
    scene,
    keepOutliers: given.flag('keep-outliers'),
  };
  const log = watched(WORK, command.name, (bar) => trainingLog(question, bar));

  const name = basename(file.path);
  deliver(given, {
    program: 'log',
    subject: subjectOf(given, file, table),
    page: logPage(log, table, name, display),
    record: logRecord(log, table, name, display),
    screen: screenReport(log, table, display),
    full: terminalReport(log, table, display),
  });
  return codeAfterReading(command.name, table);
});
