/**
 * Faster or straighter? What more club speed is worth in strokes as shots scatter wider with it, the speed where more
 * stops paying, and the growth of scatter that cancels a mph.
 *
 * `npm run tradeoff` works on invented data; `npm run tradeoff -- my-shots.csv` on your own.
 * `--help` lists the options.
 */

import { basename } from 'node:path';
import type { GolferSkill } from 'fairflight/dispersion';
import type { Length, Speed } from 'fairflight/units';
import { type Command, type Given, runCommand, UsageError } from './lib/command.js';
import { driverFor, LOFT_OPTION } from './lib/driver.js';
import { partOf, watched } from './lib/progress.js';
import { typed, typedLength, typedLengths, typedSpeed, typedWhole } from './lib/quantities.js';
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
import { holesFor, USUAL_TREES } from './tradeoff/course.js';
import { tradeoffPage } from './tradeoff/page.js';
import { type LawChoice, playerFrom } from './tradeoff/player.js';
import { tradeoffRecord } from './tradeoff/record.js';
import { screenReport } from './tradeoff/screen.js';
import { terminalReport } from './tradeoff/terminal.js';
import { type Course, tradeoffOf, WORK } from './tradeoff/tradeoff.js';

const DEMO = demo('speed-ladder-demo.csv', 'Imo Feldspar', import.meta.url);

const OPTIONS = {
  ...REPORT_OPTIONS,
  hand: HAND_OPTION,
  club: CLUB_OPTION,
  loft: LOFT_OPTION,
  now: {
    type: 'string',
    value: '95mph',
    help: 'usual club speed (default that of the band with most shots)',
  },
  law: {
    type: 'string',
    value: 'HOW',
    help: 'how scatter changes with speed: constant, measured, or a growth a mph such as 3% (default measured where it is shown, else constant)',
  },
  score: {
    type: 'string',
    value: 'N',
    help: 'average score of the player for 18 holes, or professional (default 90)',
  },
  holes: {
    type: 'string',
    value: '380,520yd',
    help: 'lengths of the holes on which the driver is used (default 14 of an invented course, its tees set for the club speed)',
  },
  fairway: { type: 'string', value: '32yd', help: 'width of the fairways (default 32yd)' },
  trees: {
    type: 'string',
    value: '30yd',
    help: 'distance of trees from the middle of the fairway, or none (default 30yd)',
  },
  bounds: {
    type: 'string',
    value: '50yd',
    help: 'distance of out of bounds from the middle of the fairway, or none (default none)',
  },
  shots: { type: 'string', value: 'N', help: 'shots simulated at each speed and scatter (default 512)' },
  'keep-outliers': KEEP_OUTLIERS_OPTION,
  ...READING_OPTIONS,
  ...SCENE_OPTIONS,
} as const;
type OptionName = keyof typeof OPTIONS;

const command: Command<OptionName> = {
  name: 'tradeoff',
  usage: '[file.csv] [options]',
  options: OPTIONS,
  more: [
    'The CSV holds one driver shot a line, at one speed or several, for example',
    '  club speed (mph),ball speed (mph),launch angle (deg),launch direction (deg),spin (rpm),spin axis (deg),side (yd)',
    'Attack, path and face angle help to tell where on the face the ball was struck. Shots at several speeds show how',
    'scatter grows. Without a file, invented demo data is used.',
  ].join('\n'),
};

await runCommand(command, (given) => {
  const file = fileFrom(given, DEMO);
  const display = displayFrom(given);
  const scene = sceneFrom(given);
  const courseOf = courseFrom(given);
  const law = lawFrom(given.text('law'));
  const shots = typedWhole('shots', given.text('shots') ?? '512', 128, 100_000);
  const nowText = given.text('now');
  const now = nowText === undefined ? undefined : typedSpeed('now', nowText);
  const table = oneClub(readShotFile(file.path, { ...readingFrom(given), scene }), given.text('club'));
  const hand = handOf(table, given.text('hand'));
  const clubhead = driverFor(table, given.text('loft'));
  const keepOutliers = given.flag('keep-outliers');
  const tradeoff = watched(WORK, command.name, (bar) => {
    const question = { shots: table.shots, clubhead, hand, now, law, keepOutliers };
    const player = playerFrom(question, partOf(bar, 0, 0.15 * WORK, table.shots.length));
    const course = courseOf(player.usual.clubSpeed);
    return tradeoffOf({ player, course, clubhead, scene, shots }, partOf(bar, 0.15 * WORK, WORK, WORK));
  });

  const name = basename(file.path);
  deliver(given, {
    program: 'tradeoff',
    subject: subjectOf(given, file, table),
    page: tradeoffPage(tradeoff, table, name, display),
    record: tradeoffRecord(tradeoff, table, name, display),
    screen: screenReport(tradeoff, table, display),
    full: terminalReport(tradeoff, table, display),
  });
  return codeAfterReading(command.name, table);
});

/** The course of the options; the lengths of its holes go with the player's speed unless they are given. */
function courseFrom(given: Given<OptionName>): (now: Speed) => Course {
  const beside = (option: 'trees' | 'bounds', usual: Length | undefined): Length | undefined => {
    const text = given.text(option);
    if (text === undefined) return usual;
    return text === 'none' ? undefined : typedLength(option, text);
  };
  const holes = given.text('holes');
  const lengths = holes === undefined ? undefined : typedLengths('holes', holes);
  const rest = {
    fairway: typedLength('fairway', given.text('fairway') ?? '32yd'),
    trees: beside('trees', USUAL_TREES),
    bounds: beside('bounds', undefined),
    skill: skillFrom(given.text('score')),
  };
  return (now) => ({ lengths: lengths ?? holesFor(now), ...rest });
}

function skillFrom(text: string | undefined): GolferSkill {
  if (text === 'professional') return 'professional';
  const averageScore = text === undefined ? 90 : Number(text);
  if (averageScore >= 60 && averageScore <= 130) return { averageScore };
  throw new UsageError(
    `--score must be an average score from 60 to 130, or professional; got ${JSON.stringify(text)}`,
  );
}

function lawFrom(text: string | undefined): LawChoice {
  if (text === undefined || text === 'constant' || text === 'measured') return text;
  const growth = typed('law', text, '3%');
  if (growth.unit === '%' && Math.abs(growth.value) <= 25) return { perMph: growth.value / 100 };
  throw new UsageError(
    `--law must be constant, measured or a growth a mph up to 25%, got ${JSON.stringify(text)}`,
  );
}
