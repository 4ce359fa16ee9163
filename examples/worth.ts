/**
 * What is it worth? One shot, from a delivery or a launch, and what one more mph, degree, 100 rpm, 5 mm off centre,
 * 10 °C, 1000 ft or 5 m/s of wind does to it.
 *
 * `npm run worth` takes a usual drive; `npm run worth -- --club-speed 88mph --attack -1deg --dynamic-loft 15deg` yours.
 * `--help` lists the options.
 */

import { clubheads, type Delivery, type Launch, sensitivities } from 'fairflight';
import { rpm } from 'fairflight/units';
import { type Command, EXIT, type Given, runCommand, UsageError } from './lib/command.js';
import { typed, typedAngle, typedSpeed } from './lib/quantities.js';
import { deliver, displayFrom, noFile, REPORT_OPTIONS } from './lib/report.js';
import { HAND_OPTION, handFrom, SCENE_OPTIONS, sceneFrom } from './lib/scene-options.js';
import { today } from './lib/subject.js';
import { screenReport, terminalReport, worthPage } from './worth/report.js';

const OPTIONS = {
  ...REPORT_OPTIONS,
  club: { type: 'string', value: 'NAME', help: `${Object.keys(clubheads).join(', ')} (default driver)` },
  hand: HAND_OPTION,
  'club-speed': { type: 'string', value: '100mph', help: 'club speed (default 100mph)' },
  attack: { type: 'string', value: '0deg', help: 'attack angle, + up (default 0deg)' },
  path: { type: 'string', value: '0deg', help: 'club path, + right (default 0deg)' },
  face: { type: 'string', value: '0deg', help: 'face angle, + right (default 0deg)' },
  'dynamic-loft': { type: 'string', value: '14deg', help: 'loft at impact (default 14deg)' },
  'ball-speed': { type: 'string', value: '145mph', help: 'start from a launch instead: ball speed' },
  launch: { type: 'string', value: '12deg', help: 'launch angle; goes with --ball-speed' },
  spin: { type: 'string', value: '2600rpm', help: 'spin; goes with --ball-speed' },
  ...SCENE_OPTIONS,
} as const;
type OptionName = keyof typeof OPTIONS;

const command: Command<OptionName> = {
  name: 'worth',
  usage: '[options]',
  options: OPTIONS,
};

await runCommand(command, (given) => {
  noFile(given);
  const display = displayFrom(given);
  const scene = sceneFrom(given);
  const clubhead = clubheadFrom(given);
  const from = given.text('ball-speed') === undefined ? deliveryFrom(given) : launchFrom(given);
  const worth = { from, clubhead, scene, found: sensitivities(from, scene, { clubhead }) };
  const { base, rows } = worth.found;
  deliver(given, {
    program: 'worth',
    subject: { who: given.text('player') ?? '', date: today() },
    page: worthPage(worth, display),
    record: { from, base, rows },
    screen: screenReport(worth, display),
    full: terminalReport(worth, display),
  });
  return EXIT.done;
});

function clubheadFrom(given: Given<OptionName>): (typeof clubheads)[keyof typeof clubheads] {
  const name = given.text('club') ?? 'driver';
  const found = Object.entries(clubheads).find(([each]) => each.toLowerCase() === name.toLowerCase());
  if (found !== undefined) return found[1];
  throw new UsageError(
    `--club must be one of ${Object.keys(clubheads).join(', ')}; got ${JSON.stringify(name)}`,
  );
}

function deliveryFrom(given: Given<OptionName>): Delivery {
  for (const name of ['launch', 'spin'] as const) {
    if (given.text(name) !== undefined) throw new UsageError(`--${name} goes with --ball-speed`);
  }
  const angle = (name: 'attack' | 'path' | 'face' | 'dynamic-loft', usual: string) =>
    typedAngle(name, given.text(name) ?? usual);
  return {
    clubSpeed: typedSpeed('club-speed', given.text('club-speed') ?? '100mph'),
    attackAngle: angle('attack', '0deg'),
    clubPath: angle('path', '0deg'),
    faceAngle: angle('face', '0deg'),
    dynamicLoft: angle('dynamic-loft', '14deg'),
    hand: handFrom(given.text('hand')),
  };
}

function launchFrom(given: Given<OptionName>): Launch {
  for (const name of ['club', 'hand', 'club-speed', 'attack', 'path', 'face', 'dynamic-loft'] as const) {
    if (given.text(name) !== undefined) throw new UsageError(`--${name} does not go with --ball-speed`);
  }
  const spin = typed('spin', given.text('spin') ?? '2600rpm', '2600rpm');
  if (spin.unit.toLowerCase() !== 'rpm')
    throw new UsageError(`--spin must be in rpm, got ${JSON.stringify(spin.unit)}`);
  return {
    ballSpeed: typedSpeed('ball-speed', given.text('ball-speed') ?? '145mph'),
    launchAngle: typedAngle('launch', given.text('launch') ?? '12deg'),
    spinRate: rpm(spin.value),
  };
}
