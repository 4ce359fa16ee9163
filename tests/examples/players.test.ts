import { clubheads, type Scene, strike } from 'fairflight';
import { readShots } from 'fairflight/schema';
import type { ChangeRanking } from 'fairflight/session';
import { degrees, mph, si, toDegrees, toMph, toRpm, toYards, yards } from 'fairflight/units';
import { describe, expect, it } from 'vitest';
import { placed, studyOf } from '../../examples/face/study.js';
import { answers as faceAnswers } from '../../examples/face/words.js';
import { ladderOf } from '../../examples/ladder/ladder.js';
import { terminalReport as ladderReport } from '../../examples/ladder/terminal.js';
import { fitSentence, worthSentence } from '../../examples/ladder/words.js';
import { changeWords } from '../../examples/lib/advice.js';
import { type Display, displays } from '../../examples/lib/display.js';
import type { Progress } from '../../examples/lib/progress.js';
import { randomStream } from '../../examples/lib/random.js';
import { playerFrom } from '../../examples/tradeoff/player.js';
import { terminalReport as tradeoffReport } from '../../examples/tradeoff/terminal.js';
import { type Tradeoff, tradeoffOf } from '../../examples/tradeoff/tradeoff.js';
import { answerSentence } from '../../examples/tradeoff/words.js';
import { joined } from './run.js';

/** Players drawn through the whole chain, from the file to the words; `PLAYERS=200` draws as many. */
const { PLAYERS: GIVEN = '12' } = process.env;
const PLAYERS = Number(GIVEN);

const silent: Progress = { tick: () => undefined, stop: () => undefined };

type Draw = (low: number, high: number) => number;

interface Drawn {
  readonly text: string;
  readonly scene: Scene;
  readonly display: Display;
  readonly maximise: 'carry' | 'total';
}

/** A file of shots of an invented player, in one of the ways a device writes it. */
function drawn(seed: number): Drawn {
  const random = randomStream(7919 * (seed + 1));
  const between: Draw = (low, high) => low + (high - low) * random();
  const some = (share: number): boolean => random() < share;
  const normal = (): number => between(-1, 1) + between(-1, 1) + between(-1, 1);
  const player = {
    speed: between(62, 132),
    attack: between(-5, 6),
    loft: between(9, 19),
    share: between(0.92, 0.995),
    spin: between(0.75, 1.3),
  };
  const metric = some(0.3);
  const speed = metric ? 1.609344 : 1;
  const unit = metric ? 'km/h' : 'mph';
  const units = some(0.7);
  const head = (name: string, said: string): string => (units ? `${name} (${said})` : name);
  const withAttack = some(0.7);
  const withDirection = some(0.9);
  const launch = strike({
    clubSpeed: mph(player.speed),
    attackAngle: degrees(player.attack),
    dynamicLoft: degrees(player.loft),
  }).launch;
  const rows = Array.from({ length: Math.round(between(5, 16)) }, () => {
    const wobble = normal();
    return [
      (player.speed + 0.8 * wobble) * speed,
      toMph(launch.ballSpeed) * player.share * (1 + 0.006 * wobble + 0.006 * normal()) * speed,
      toDegrees(launch.launchAngle) + 0.8 * normal(),
      toRpm(launch.spinRate) * player.spin * (1 + 0.06 * normal()),
      ...(withDirection ? [1.2 * normal(), 3 * normal()] : []),
      ...(withAttack ? [player.attack + 0.7 * normal()] : []),
    ].map((value) => value.toFixed(1));
  });
  const header = [
    head('club speed', unit),
    head('ball speed', unit),
    head('launch angle', 'deg'),
    head('spin', 'rpm'),
    ...(withDirection ? [head('launch direction', 'deg'), head('spin axis', 'deg')] : []),
    ...(withAttack ? [head('attack angle', 'deg')] : []),
  ];
  return {
    text: [header, ...rows].map((row) => row.join(',')).join('\n'),
    scene: some(0.3) ? { wind: { along: si(between(-6, 6)), across: si(between(-4, 4)) }, turf: 'firm' } : {},
    display: metric ? displays.metric : displays.imperial,
    maximise: some(0.7) ? 'carry' : 'total',
  };
}

const verdicts = ({ changes }: ChangeRanking): readonly string[] =>
  changes.map(({ change, verdict }) => `${change} ${verdict}`);

/** What a ranking says must be in the words, and nothing else. */
function holdsTo(words: string, ranking: ChangeRanking, display: Display): void {
  const [trying = '', training = ''] = words.split('By training');
  for (const change of ranking.changes) {
    const named = changeWords(change, display);
    expect([named, trying.includes(named)]).toEqual([named, change.verdict === 'advised']);
    expect([named, training.includes(named)]).toEqual([named, change.verdict === 'by-training']);
  }
  const none = ranking.changes.every(({ verdict }) => verdict !== 'advised');
  expect(trying.includes('nothing that is clear')).toBe(none);
}

function expectPlain(text: string): void {
  expect(text).not.toMatch(/NaN|undefined|Infinity|\[object|[+−]0 |−0\.0 /);
}

describe('no output contradicts another', () => {
  it.each(Array.from({ length: PLAYERS }, (_, seed) => seed))(
    'for drawn player %i, from the file to the words',
    { timeout: 120_000 },
    (seed) => {
      const { text, scene, display, maximise } = drawn(seed);
      const table = readShots(text, {
        scene,
        units: { speed: display === displays.metric ? 'km/h' : 'mph' },
      });
      const clubhead = clubheads.driver;
      const setup = { clubhead, scene, hand: 'right', maximise, keepOutliers: true } as const;
      const ladder = ladderOf(
        { shots: table.shots, setup, calibration: undefined, bands: 'one', mapBand: undefined, display },
        silent,
      );
      const [rung] = ladder.rungs;
      const advice = rung?.advice;
      if (rung === undefined || advice === undefined) throw new Error('no advice');

      // Verdict, gain and words.
      for (const change of advice.changes) {
        const { value, low } = change[maximise];
        if (change.verdict === 'advised') {
          expect(toYards(value)).toBeGreaterThanOrEqual(3);
          expect(low).toBeGreaterThan(0);
        }
      }
      holdsTo(worthSentence(ladder.rungs, display), advice, display);
      expectPlain(ladderReport(ladder, table, display));

      // Loft: verdict, direction, nominal to try and window.
      const loft = advice.changes.find(({ change }) => change === 'loft');
      const fit = fitSentence(ladder.rungs, maximise);
      const says = loft?.verdict === 'advised' ? (loft.step > 0 ? 'wants more loft' : 'wants less loft') : '';
      expect(/wants (more|less) loft/.exec(fit)?.[0] ?? '').toBe(says);
      if (rung.loft !== undefined) {
        const { optimum, delivered, nominalNow, nominalAdvised } = rung.loft;
        expect(nominalAdvised - nominalNow).toBeCloseTo(loft?.verdict === 'advised' ? loft.step : 0, 9);
        if (loft?.verdict === 'advised') {
          expect(Math.sign(optimum.dynamicLoft - delivered)).toBe(Math.sign(loft.step));
        }
      }

      // The other programs on the same shots.
      if (!table.columns.some(({ field }) => field === 'launchDirection')) return;
      const found = placed(table.shots, [], clubhead, scene, 'right', silent);
      const study = studyOf(found, {}, clubhead, scene, 'right');
      const carry = maximise === 'carry';
      if (carry && study.shots.length === table.shots.length) expect(study.advice).toEqual(advice);
      if (study.advice !== undefined && study.report !== undefined) {
        const words = joined(faceAnswers(study, display).join(' ')).replace(/(No single|The one) move.*/, '');
        holdsTo(words, study.advice, display);
        expectPlain(words);
      }
      expect(study.strikes.every(({ carryLost }) => carryLost >= 0)).toBe(true);

      const question = {
        shots: table.shots,
        clubhead,
        hand: 'right',
        now: undefined,
        law: undefined,
      } as const;
      const player = playerFrom({ ...question, keepOutliers: true }, silent);
      const course = {
        lengths: [yards(400)],
        fairway: yards(32),
        trees: yards(30),
        bounds: undefined,
        skill: { averageScore: 90 },
      };
      const tradeoff = tradeoffOf({ player, course, clubhead, scene, shots: 128 }, silent);
      if (carry && player.now.shots.length === table.shots.length) {
        expect(verdicts(tradeoff.advice as ChangeRanking)).toEqual(verdicts(advice));
      }
      expectPlain(tradeoffReport(tradeoff, table, display));
      expectLeads(tradeoff, display);
    },
  );
});

/** The answer leads with the step that saves more, and only where it shows. */
function expectLeads(tradeoff: Tradeoff, display: Display): void {
  const { oneMphFaster: faster, tenPercentStraighter: straighter } = tradeoff.answer;
  const answer = answerSentence(tradeoff, display);
  const saves = [3 * faster.value, straighter.value];
  if (answer.startsWith('Faster')) expect(faster.interval.high).toBeLessThan(0);
  if (answer.startsWith('Straighter')) {
    expect(straighter.interval.high).toBeLessThan(0);
    expect(saves[1]).toBeLessThanOrEqual(saves[0] ?? 0);
  }
  if (answer.startsWith('Neither')) {
    expect(Math.max(faster.interval.high, straighter.interval.high)).toBeGreaterThanOrEqual(0);
  }
}
