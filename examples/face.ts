/**
 * The face map: what one delivery gives at every point of the face, with a player's strikes on it. Strikes are worked
 * out from ball and club readings, or taken from columns toe (mm) and high (mm).
 *
 * `npm run face` works on invented data; `npm run face -- my-shots.csv` on your own. `--help` lists the options.
 */

import { basename } from 'node:path';
import { clubheads } from 'fairflight';
import { type About, facePage, screenReport, terminalReport } from './face/report.js';
import { readStrikes, strikesIn } from './face/strikes.js';
import { type GivenDelivery, type Placed, placed, studyOf } from './face/study.js';
import { type Command, EXIT, type Given, runCommand, UsageError } from './lib/command.js';
import { driverFor } from './lib/driver.js';
import { type Progress, partOf, watched } from './lib/progress.js';
import { typedAngle, typedSpeed } from './lib/quantities.js';
import { handOf, oneClub, READING_OPTIONS, readingFrom, readShotFile } from './lib/reading.js';
import { CLUB_OPTION, deliver, displayFrom, fileFrom, REPORT_OPTIONS } from './lib/report.js';
import { HAND_OPTION, handFrom, SCENE_OPTIONS, sceneFrom } from './lib/scene-options.js';
import { readingSummary, rejectionLine } from './lib/shot-table.js';
import { demo, type Subject, subjectOf, today } from './lib/subject.js';
import { counted } from './lib/text.js';
import { readTextFile } from './lib/text-file.js';

const DEMO = demo('face-map-demo.csv', 'Tamsin Quillfeather', import.meta.url);

const OPTIONS = {
  ...REPORT_OPTIONS,
  hand: HAND_OPTION,
  club: CLUB_OPTION,
  strikes: {
    type: 'string',
    value: 'FILE',
    help: 'CSV of strikes measured on the face: toe (mm), high (mm)',
  },
  empty: {
    type: 'boolean',
    help: 'map the face alone, without strikes; the delivery comes from the options',
  },
  'club-speed': { type: 'string', value: '95mph', help: 'club speed of the map (default from the shots)' },
  attack: { type: 'string', value: '0deg', help: 'attack angle, + up (default from the shots)' },
  path: { type: 'string', value: '0deg', help: 'club path, + right (default from the shots)' },
  face: { type: 'string', value: '0deg', help: 'face angle, + right (default from the shots)' },
  'dynamic-loft': { type: 'string', value: '14deg', help: 'loft at impact (default from the shots)' },
  ...READING_OPTIONS,
  ...SCENE_OPTIONS,
} as const;
type OptionName = keyof typeof OPTIONS;

const command: Command<OptionName> = {
  name: 'face',
  usage: '[file.csv] [options]',
  options: OPTIONS,
  more: [
    'A file of shots names its columns in plain words with units. Strikes are worked out from club speed, attack, path,',
    'face, loft, ball speed, launch, direction, spin and spin axis, as far as they are there; columns toe (mm) and',
    'high (mm) are taken as measured. Without a file, invented demo data is used.',
  ].join('\n'),
};

interface Input extends Placed {
  readonly about: About;
  readonly clubhead: typeof clubheads.driver;
  readonly code: number;
  readonly hand: 'right' | 'left';
  readonly subject: Subject;
}

await runCommand(command, (given) => {
  const display = displayFrom(given);
  const { about, clubhead, code, study, subject } = watched(1, command.name, (bar) => {
    const { about, clubhead, code, subject, ...input } = inputOf(given, partOf(bar, 0, 0.5, 1));
    const scene = sceneFrom(given);
    const study = studyOf(input, deliveryFrom(given), clubhead, scene, input.hand);
    return { about, clubhead, code, study, subject };
  });
  const { map, report, advice, delivery, strikes, unplaced } = study;
  deliver(given, {
    program: 'face',
    subject,
    page: facePage(study, about, display),
    record: { about, clubhead, delivery, map, report, advice, strikes, unplaced },
    screen: screenReport(study, about, display),
    full: terminalReport(study, about, display),
  });
  return code;
});

function inputOf(given: Given<OptionName>, progress: Progress): Input {
  const strikeFile = given.text('strikes');
  const hand = handFrom(given.text('hand'));
  const subject = { who: given.text('player') ?? '', date: today() };
  const none = { clubhead: clubheads.driver, shots: [], unplaced: [], code: EXIT.done, hand, subject };
  if (given.flag('empty')) {
    if (strikeFile !== undefined || given.files.length > 0) throw new UsageError('--empty takes no file');
    return { ...none, strikes: [], about: { source: 'No strikes.', comments: [], notes: [] } };
  }
  if (strikeFile !== undefined) {
    if (given.files.length > 0) throw new UsageError('give either a file of shots or --strikes');
    const { strikes, leftOut } = readStrikes(strikeFile, readTextFile(strikeFile).text);
    const found = strikes.flatMap((offset, i) => (offset === undefined ? [] : [{ shot: i + 1, offset }]));
    const source = `${basename(strikeFile)}: ${counted(found.length, 'strike')} measured on the face.`;
    const code = leftOut.length === 0 ? EXIT.done : EXIT.partial;
    return { ...none, strikes: found, about: { source, comments: [], notes: leftOut }, code };
  }
  const file = fileFrom(given, DEMO);
  const scene = sceneFrom(given);
  const table = oneClub(readShotFile(file.path, { ...readingFrom(given), scene }), given.text('club'));
  const clubhead = driverFor(table, undefined);
  const player = handOf(table, given.text('hand'));
  const headers = Object.keys(table.aside[0] ?? {});
  const measured = strikesIn(table.aside, headers, (row) => table.shots[row]?.line ?? row + 2);
  const found = placed(
    table.shots,
    measured?.strikes ?? [],
    clubhead,
    scene,
    player,
    partOf(progress, 0, 1, table.shots.length),
  );
  const notes = [...table.rejected.map(rejectionLine), ...table.notes, ...(measured?.leftOut ?? [])];
  const code = table.rejected.length + (measured?.leftOut.length ?? 0) === 0 ? EXIT.done : EXIT.partial;
  const source = `${basename(file.path)}: ${readingSummary(table)}.`;
  const about = { source, comments: table.comments, notes };
  return { ...found, clubhead, about, code, hand: player, subject: subjectOf(given, file, table) };
}

function deliveryFrom(given: Given<OptionName>): GivenDelivery {
  const speed = given.text('club-speed');
  const angle = (name: 'attack' | 'path' | 'face' | 'dynamic-loft') => {
    const text = given.text(name);
    return text === undefined ? undefined : typedAngle(name, text);
  };
  const [attackAngle, clubPath, faceAngle, dynamicLoft] = [
    angle('attack'),
    angle('path'),
    angle('face'),
    angle('dynamic-loft'),
  ];
  return {
    ...(speed !== undefined && { clubSpeed: typedSpeed('club-speed', speed) }),
    ...(attackAngle !== undefined && { attackAngle }),
    ...(clubPath !== undefined && { clubPath }),
    ...(faceAngle !== undefined && { faceAngle }),
    ...(dynamicLoft !== undefined && { dynamicLoft }),
  };
}
