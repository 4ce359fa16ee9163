import { describe, expect, it } from 'vitest';
import { drawnShots } from '../../src/dispersion/drawn-shots.js';
import {
  type ClearAnswer,
  type ClearOptions,
  type ClearQuestion,
  disperse,
  speedToClear,
} from '../../src/dispersion/index.js';
import { playShot, type Scene, speedForCarry } from '../../src/index.js';
import { resolveScene } from '../../src/scene/scene.js';
import { shotSettings } from '../../src/shot/shot-options.js';
import {
  type Angle,
  degrees,
  millimetres,
  mph,
  type Speed,
  si,
  toMph,
  yards,
} from '../../src/units/index.js';
import { caught } from '../caught.js';

const delivery = { clubSpeed: mph(95), attackAngle: degrees(1), dynamicLoft: degrees(15) };
const sd = {
  clubSpeed: mph(1.5),
  attackAngle: degrees(0.5),
  dynamicLoft: degrees(1),
  faceAngle: degrees(2),
  clubPath: degrees(2),
  toe: millimetres(8),
  high: millimetres(6),
};
const often: ClearQuestion = {
  delivery,
  spread: { kind: 'student-t', sd },
  carry: yards(200),
  share: 0.9,
};
type Found = Extract<ClearAnswer, { outcome: 'found' }>;
const found = (
  more: Partial<ClearQuestion> = {},
  options: ClearOptions = {},
  scene: Scene = {},
): Found & { interval: { low: Speed; high: Speed } } => {
  const answer = speedToClear({ ...often, ...more }, scene, { shots: 512, ...options });
  if (answer.outcome !== 'found') throw new Error(answer.outcome);
  const { low, high } = answer.interval;
  if (low === undefined || high === undefined) throw new Error('the interval is open');
  return { ...answer, interval: { low, high } };
};
/** Share of fresh shots at a speed that carry 200 yards. */
const play = drawnShots(resolveScene({}), shotSettings({}), {
  usual: delivery,
  spread: often.spread,
  draws: { sampling: 'random', seed: 4711 },
});
const flown = (clubSpeed: Speed, shots = 20_000): number => {
  let clear = 0;
  let played = 0;
  play({ clubSpeed, direction: 1, strike: 1 }, shots, false, (_, { carry }) => {
    played++;
    if (carry >= yards(200)) clear++;
  });
  return clear / played;
};

describe('speedToClear', () => {
  it('names a speed at which fresh shots carry it as often as asked, within the interval', () => {
    const answer = found({}, { shots: 2048 });
    const error = Math.sqrt((0.9 * 0.1) / 20_000);
    expect(Math.abs(flown(answer.clubSpeed) - 0.9)).toBeLessThan(0.01);
    expect(flown(answer.interval.low)).toBeLessThan(0.9 + 2 * error);
    expect(flown(answer.interval.high)).toBeGreaterThan(0.9 - 2 * error);
    expect(toMph(answer.interval.high) - toMph(answer.interval.low)).toBeLessThan(0.8);
    expect(answer.now.share).toBeCloseTo(flown(mph(95)), 2);
    // The same shots in full.
    const whole = disperse(
      { delivery: { ...delivery, clubSpeed: answer.clubSpeed }, spread: often.spread },
      {},
      { shots: 2048 },
    ).columns.carry;
    const clear = whole.filter((carry) => carry >= yards(200)).length;
    expect(Math.abs(clear - 0.9 * 2048)).toBeLessThanOrEqual(1);
    expect(answer.shot).toEqual(playShot({ ...delivery, clubSpeed: answer.clubSpeed }));
  });

  it('holds the speed of very many shots in its interval, nineteen times in twenty', () => {
    const clubSpeed = { min: mph(84), max: mph(104) };
    const truth = found({}, { shots: 8192, clubSpeed }).clubSpeed;
    let below = 0;
    let above = 0;
    for (let seed = 1; seed <= 80; seed++) {
      const { interval } = found({}, { shots: 128, sampling: 'random', seed, clubSpeed });
      if (truth < interval.low) below++;
      if (truth > interval.high) above++;
    }
    expect(below).toBeLessThanOrEqual(6);
    expect(above).toBeLessThanOrEqual(6);
  });

  it('gives the plain speed for half of the shots of a player who hardly scatters', () => {
    const level = { ...delivery, attackAngle: degrees(0) };
    const plain = speedForCarry(yards(200), {}, { dynamicLoft: delivery.dynamicLoft });
    const spread = { kind: 'normal', sd: { dynamicLoft: degrees(1e-6), faceAngle: degrees(1e-6) } } as const;
    const { clubSpeed, interval } = found({ delivery: level, spread, share: 0.5 });
    expect(clubSpeed).toBeCloseTo(plain.clubSpeed, 4);
    expect(interval.high - interval.low).toBeLessThan(1e-4);
  });

  it('asks for more speed the more often and the further it is to carry, and against the wind', () => {
    const speeds = [0.2, 0.5, 0.8, 0.95].map((share) => found({ share }).clubSpeed);
    expect(speeds).toEqual([...new Set(speeds)].sort((a, b) => a - b));
    const margins = [0, 5, 15].map((margin) => found({}, { margin: yards(margin) }).clubSpeed);
    expect(margins).toEqual([...new Set(margins)].sort((a, b) => a - b));
    expect(margins[1]).toBe(found({ carry: yards(205) }).clubSpeed);
    const into = { wind: { along: mph(-10), across: mph(0) } };
    expect(found({}, {}, into).clubSpeed).toBeGreaterThan(margins[0] ?? 0);
  });

  it('brings the interval closer with more shots', () => {
    const width = (shots: number): number => {
      const { interval } = found({}, { shots });
      return interval.high - interval.low;
    };
    expect(width(2048) / width(128)).toBeGreaterThan(0.15);
    expect(width(2048) / width(128)).toBeLessThan(0.4);
  });

  it('asks the same of a left-handed player in the mirror', () => {
    const own = (hand: 'right' | 'left') => {
      const sign = hand === 'right' ? 1 : -1;
      const angle = (value: number): Angle => si(sign * degrees(value));
      const usual = { ...delivery, faceAngle: angle(1), clubPath: angle(-2), hand } as const;
      const shots = Array.from({ length: 40 }, (_, i) => ({
        ...usual,
        clubSpeed: mph(95 + 2 * Math.sin(i)),
        faceAngle: angle(1 + 3 * Math.sin(2.3 * i)),
        strikeOffset: { toe: millimetres(8 * Math.sin(1.7 * i)), high: millimetres(5 * Math.cos(3.1 * i)) },
      }));
      const wind = { wind: { along: mph(-3), across: si<Speed>(sign * mph(8)) } };
      return found({ delivery: usual, spread: { kind: 'own', shots } }, { shots: 256 }, wind);
    };
    const [right, left] = [own('right'), own('left')];
    expect(left.clubSpeed).toBeCloseTo(right.clubSpeed, 6);
    expect(left.interval.low).toBeCloseTo(right.interval.low, 6);
    expect(left.now).toEqual(right.now);
  });

  it('does not hang on the speed that the scatter was measured at', () => {
    const { clubSpeed } = found({ delivery: { ...delivery, clubSpeed: mph(88) } });
    expect(clubSpeed).toBeCloseTo(found().clubSpeed, 4);
  });

  it('says how often and how far it falls short out of reach, and when the slowest is enough', () => {
    const clubSpeed = { min: mph(80), max: mph(100) };
    const far = speedToClear({ ...often, carry: yards(230) }, {}, { clubSpeed, shots: 256 });
    if (far.outcome !== 'out-of-reach') throw new Error(far.outcome);
    expect(far.clubSpeed).toBe(clubSpeed.max);
    expect(far.share.interval.high).toBeLessThan(0.9);
    expect(far.missing).toBeGreaterThan(0);
    const close = speedToClear({ ...often, carry: yards(100) }, {}, { clubSpeed, shots: 256 });
    if (close.outcome !== 'too-close') throw new Error(close.outcome);
    expect(close.clubSpeed).toBe(clubSpeed.min);
    expect(close.share.share).toBeGreaterThan(0.9);
    expect(close.missing).toBeLessThan(0);
  });

  it('leaves the interval open where it goes beyond the range', () => {
    const { clubSpeed } = found();
    const until = speedToClear(
      often,
      {},
      { shots: 512, clubSpeed: { min: mph(80), max: si(clubSpeed + 0.01) } },
    );
    expect(until).toMatchObject({ outcome: 'found', interval: { low: expect.any(Number) } });
    expect(until).not.toHaveProperty('interval.high');
    const from = speedToClear(
      often,
      {},
      { shots: 512, clubSpeed: { min: si(clubSpeed - 0.01), max: mph(110) } },
    );
    expect(from).not.toHaveProperty('interval.low');
  });

  it('takes the first speed where more of it carries less far', () => {
    // Much loft into a gale: the ball rises the steeper the faster it is.
    const lofted = { ...delivery, clubSpeed: mph(60), dynamicLoft: degrees(50) };
    const gale = { wind: { along: mph(-30), across: mph(0) } };
    const carryAt = (clubSpeed: Speed): number => playShot({ ...lofted, clubSpeed }, gale).carry;
    const [slow, fast] = [mph(65), mph(110)];
    expect(carryAt(fast)).toBeLessThan(carryAt(slow));
    const question = {
      delivery: { ...lofted, clubSpeed: fast },
      spread: { kind: 'normal', sd: { clubSpeed: mph(1) } },
      carry: playShot({ ...lofted, clubSpeed: mph(60) }, gale).carry,
      share: 0.9,
    } as const;
    const { outcome, clubSpeed, now } = speedToClear(question, gale, {
      shots: 128,
      clubSpeed: { min: mph(30), max: fast },
    });
    expect(outcome).toBe('found');
    expect(toMph(clubSpeed)).toBeGreaterThan(60);
    expect(toMph(clubSpeed)).toBeLessThan(65);
    expect(now.share).toBeLessThan(0.9);
  });

  it.each([
    ['share', () => speedToClear({ ...often, share: 1 })],
    ['share', () => speedToClear({ ...often, share: 0.999 })],
    ['options.shots', () => speedToClear({ ...often, share: 0.99 }, {}, { shots: 128 })],
    ['carry', () => speedToClear({ ...often, carry: yards(0) })],
    ['options.margin', () => speedToClear(often, {}, { margin: yards(-1) })],
    ['options.clubSpeed.min', () => speedToClear(often, {}, { clubSpeed: { min: mph(99), max: mph(90) } })],
    [
      'options.clubSpeed.max',
      () =>
        speedToClear(
          { ...often, carry: yards(700) },
          {},
          { shots: 64, clubSpeed: { min: mph(90), max: mph(200) } },
        ),
    ],
    ['spread', () => speedToClear({ ...often, spread: { kind: 'normal', sd: { toe: millimetres(50) } } })],
  ])('%s is refused by name', (field, call) => {
    expect(caught(call).field).toBe(field);
  });
});
