import { describe, expect, it } from 'vitest';
import {
  type FasterOrStraighter,
  type FasterQuestion,
  fasterOrStraighter,
  type Hole,
  type ScatterLaw,
  strokesOnHole,
} from '../../src/dispersion/index.js';
import type { FairflightError } from '../../src/errors.js';
import { degrees, millimetres, mph, type Speed, toMph, toYards, yards } from '../../src/units/index.js';
import { caught } from '../caught.js';

const delivery = { clubSpeed: mph(95), attackAngle: degrees(1), dynamicLoft: degrees(15) };
const spread = {
  kind: 'normal',
  sd: { faceAngle: degrees(2), clubPath: degrees(2), toe: millimetres(7), high: millimetres(6) },
} as const;
const wide: Hole = { length: yards(420), fairway: { width: yards(40) } };
const narrow: Hole = {
  length: yards(420),
  fairway: { width: yards(28) },
  hazards: [
    { kind: 'out-of-bounds', acrossFrom: yards(28) },
    { kind: 'out-of-bounds', acrossTo: yards(-28) },
  ],
};
const speeds = [91, 95, 99, 103].map(mph);
const quick = { shots: 192, speeds };
const ask = (hole: FasterQuestion['hole'], law: ScatterLaw = {}): FasterOrStraighter =>
  fasterOrStraighter({ delivery, spread, hole, law }, {}, quick);

describe('fasterOrStraighter', () => {
  const open = ask(wide);

  // Broadie (2014): tour professionals gain 0.75 strokes a round from 20 yards, 0.05 on each of 14 holes or more; a
  // mph of club speed is 2.5 to 3.5 yards (press, quoting the rule makers), so about 0.007 to 0.013 strokes a hole.
  it('makes a mph worth about a hundredth of a stroke on an open hole', () => {
    expect(open.strokesPerMph.value).toBeGreaterThan(-0.02);
    expect(open.strokesPerMph.value).toBeLessThan(-0.004);
    expect(open.best).toEqual({ kind: 'faster-than', clubSpeed: speeds[3] });
    expect(open.sentence).toMatch(/saves 0\.01 strokes on this hole/);
  });

  it('lets more scatter cost strokes, and finds the growth that cancels a mph', () => {
    expect(open.strokesForTenPercentStraighter.value).toBeLessThan(0);
    const { value, standardError } = open.cancellingGrowthPerMph;
    expect(value).toBeGreaterThan(2 * standardError);
    // Playing on with exactly that growth leaves the strokes nearly as they are.
    const balanced = ask(wide, { directionPerMph: value, strikePerMph: value });
    expect(Math.abs(balanced.strokesPerMph.value)).toBeLessThan(0.25 * Math.abs(open.strokesPerMph.value));
    const worse = ask(wide, { directionPerMph: 2.5 * value, strikePerMph: value });
    expect(worse.strokesPerMph.value).toBeGreaterThan(0);
    expect(worse.steps[3]?.directionFactor).toBeCloseTo((1 + 2.5 * value) ** 8, 9);
  });

  it.each(['toe', 'high'] as const)('lets strikes that scatter wider %s with speed cost carry', (where) => {
    const strikes = { kind: 'normal', sd: { [where]: millimetres(8) } } as const;
    const fastest = (law: ScatterLaw): number => {
      const { steps } = fasterOrStraighter({ delivery, spread: strikes, hole: wide, law }, {}, quick);
      return toYards(steps[3]?.carry.value ?? yards(0));
    };
    // Twice the scatter at 103 mph: a loss that goes with the square of the offset is four times as great.
    const widening = fastest({ strikePerMph: 2 ** (1 / 8) - 1 });
    expect(fastest({}) - widening).toBeGreaterThan(2);
    expect(fastest({ directionPerMph: 2 ** (1 / 8) - 1 })).toBe(fastest({}));
  });

  it('draws a trade-off that rises through today', () => {
    const factors = open.breakEven.map((point) =>
      point.factor === 'under' ? 0 : point.factor === 'over' ? 99 : point.factor,
    );
    expect(open.breakEven[1]).toEqual({ clubSpeed: delivery.clubSpeed, factor: 1 });
    for (let i = 1; i < factors.length; i++) expect(factors[i]).toBeGreaterThan(factors[i - 1] ?? 0);
  });

  it('values straightness more between boundaries, and speed less', () => {
    const tight = ask(narrow);
    expect(tight.strokesForTenPercentStraighter.value).toBeLessThan(
      3 * open.strokesForTenPercentStraighter.value,
    );
    expect(tight.strokesPerMph.value).toBeGreaterThan(open.strokesPerMph.value);
    expect(tight.surfaceResidual).toBeLessThan(0.1);
  });

  it('counts the same strokes as strokesOnHole, and knows differences better than values', () => {
    const today = open.steps[1];
    const alone = strokesOnHole({ delivery, spread, hole: wide }, {}, { shots: 192 });
    expect(toMph(today?.clubSpeed ?? mph(0))).toBe(95);
    expect(today?.strokes.value).toBeCloseTo(alone.strokes.value, 9);
    expect(today?.change).toEqual({ value: 0, standardError: 0 });
    expect(open.steps[3]?.change.value).toBeLessThan(0);
  });

  it('lets path and face scatter alone, and adds up the holes of a round', () => {
    const two = ask([wide, wide], { directionPerMph: 2 ** 0.1 - 1 });
    expect(two.steps[1]?.strokes.value).toBeCloseTo(2 * (open.steps[1]?.strokes.value ?? 0), 9);
    expect(two.steps[2]?.directionFactor).toBeCloseTo(2 ** 0.4, 6);
    expect(two.steps[2]?.strikeFactor).toBe(1);
    expect(two.sentence).toMatch(/over these 2 holes/);
  });

  it('reports progress', () => {
    const seen: number[] = [];
    fasterOrStraighter(
      { delivery, spread, hole: wide },
      {},
      { shots: 64, speeds: [mph(95), mph(97), mph(99)], onProgress: (p) => seen.push(p) },
    );
    expect(seen.at(-1)).toBe(1);
    expect([...seen].sort((a, b) => a - b)).toEqual(seen);
  });

  it('refuses what it cannot scale, and a hole that is none', () => {
    const question: FasterQuestion = { delivery, spread, hole: wide };
    const refused = (change: object): FairflightError =>
      caught(() => fasterOrStraighter({ ...question, ...change }, {}, quick));
    const own = refused({ spread: { kind: 'own', shots: [delivery, delivery] } });
    expect(own.message).toMatch(/spread.kind must be one of normal, student-t/);
    expect(refused({ spread: { kind: 'normal', sd: { clubSpeed: mph(1) } } }).field).toBe('spread.sd');
    expect(refused({ hole: [] }).field).toBe('hole');
    expect(refused({ hole: [wide, { ...wide, length: yards(10) }] }).field).toBe('hole[1].length');
    expect(refused({ hole: { ...wide, length: yards(10) } }).field).toBe('hole.length');
    expect(refused({ law: { kind: 'growing' } }).field).toBe('law.kind');
    expect(refused({ law: { directionPerMph: 2 } }).field).toBe('law.directionPerMph');
    expect(refused({ launch: {} }).message).toMatch(/subject has no field "launch"/);
  });

  it('refuses speeds that cannot be swung or whose ball cannot be flown, by the field the caller wrote', () => {
    const refused = (clubSpeed: Speed, given?: readonly Speed[]): FairflightError =>
      caught(() =>
        fasterOrStraighter(
          { delivery: { ...delivery, clubSpeed }, spread, hole: wide },
          {},
          { shots: 64, ...(given !== undefined && { speeds: given }) },
        ),
      );
    expect(refused(mph(95), [mph(97)]).message).toMatch(/two speeds beside/);
    expect(refused(mph(95), [mph(97), mph(400)]).field).toBe('options.speeds[1]');
    const fast = refused(mph(95), [mph(97), mph(195)]);
    expect(fast).toMatchObject({ code: 'outside-range', field: 'options.speeds' });
    expect(fast.message).toMatch(/ball speed/);
    expect(refused(mph(4)).message).toMatch(/delivery.clubSpeed is so near an end.*give options.speeds/);
    expect(refused(mph(161)).field).toBe('delivery.clubSpeed');
    expect(refused(mph(195)).field).toBe('delivery.clubSpeed');
  });

  it('gives plain data, which survives a copy and JSON', () => {
    expect(structuredClone(open)).toEqual(open);
    expect(JSON.parse(JSON.stringify(open))).toEqual(open);
  });
});
