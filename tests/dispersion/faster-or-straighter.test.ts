import { describe, expect, it } from 'vitest';
import {
  type BreakEven,
  type BreakEvenFactor,
  type FasterOrStraighter,
  type FasterQuestion,
  fasterOrStraighter,
  type Hole,
  type MonteCarlo,
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
const onlyFactor = (point: BreakEven | undefined): BreakEvenFactor => {
  const [factor, ...more] = point?.kind === 'within' ? point.factors : [];
  if (factor === undefined || more.length > 0) throw new Error(`not one factor: ${JSON.stringify(point)}`);
  return factor;
};
const ask = (hole: FasterQuestion['hole'], law: ScatterLaw = {}): FasterOrStraighter =>
  fasterOrStraighter({ delivery, spread, hole, law }, {}, quick);

describe('fasterOrStraighter', () => {
  const open = ask(wide);

  // Broadie (2014): tour professionals gain 0.75 strokes a round from 20 yards, 0.05 on each of 14 holes or more; a
  // mph of club speed is 2.5 to 3.5 yards (press, quoting the rule makers), so about 0.007 to 0.013 strokes a hole.
  it('makes a mph worth about a hundredth of a stroke on an open hole', () => {
    expect(open.oneMphFaster.value).toBeGreaterThan(-0.02);
    expect(open.oneMphFaster.interval.high).toBeLessThan(0);
    expect(open.best).toMatchObject({ kind: 'faster-than', clubSpeed: speeds[3], mayBeBest: true });
    expect(open.best.interval.high).toBe(speeds[3]);
    expect(open.locallyBest).toEqual([open.best]);
  });

  it('lets more scatter cost strokes, and finds the scatter that cancels a mph', () => {
    expect(open.tenPercentStraighter.interval.high).toBeLessThan(0);
    const factor = onlyFactor(open.cancellingOneMph);
    expect(factor.interval.low).toBeGreaterThan(1);
    expect(factor.pays).toBe('narrower');
    // A player whose scatter grows by that with every mph gains nothing by one mph, and loses by more than that.
    const growing = (growth: number): FasterOrStraighter =>
      ask(wide, { directionPerMph: growth, strikePerMph: growth });
    const balanced = growing(factor.value - 1);
    expect(Math.abs(balanced.oneMphFaster.value)).toBeLessThan(0.1 * Math.abs(open.oneMphFaster.value));
    const worse = growing(1.5 * (factor.value - 1));
    expect(worse.oneMphFaster.value).toBeGreaterThan(0);
    expect(worse.steps[3]?.directionFactor).toBeCloseTo((1 + 1.5 * (factor.value - 1)) ** 8, 9);
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
      point.kind === 'within' ? onlyFactor(point).value : point.kind === 'under' ? 0 : 99,
    );
    expect(onlyFactor(open.breakEven[1])).toMatchObject({ value: 1, interval: { low: 1, high: 1 } });
    for (let i = 1; i < factors.length; i++) expect(factors[i]).toBeGreaterThan(factors[i - 1] ?? 0);
  });

  it('leaves the strokes as they are with the scatter that breaks even, at another seed', () => {
    const at = open.breakEven[0];
    const { value } = onlyFactor(at);
    const scaled = {
      ...spread,
      sd: Object.fromEntries(Object.entries(spread.sd).map(([k, v]) => [k, v * value])),
    };
    const strokes = (clubSpeed: Speed, scatter: object): MonteCarlo =>
      strokesOnHole(
        { delivery: { ...delivery, clubSpeed }, spread: scatter as typeof spread, hole: wide },
        {},
        { shots: 2048, seed: 5 },
      ).strokes;
    const [there, today] = [strokes(speeds[0] ?? mph(0), scaled), strokes(delivery.clubSpeed, spread)];
    const change = open.steps[0]?.change.value ?? 0;
    expect(Math.abs(there.value - today.value)).toBeLessThan(0.35 * Math.abs(change));
  });

  it('values straightness more between boundaries, and speed less', () => {
    const tight = ask(narrow);
    expect(tight.tenPercentStraighter.value).toBeLessThan(3 * open.tenPercentStraighter.value);
    expect(tight.oneMphFaster.value).toBeGreaterThan(open.oneMphFaster.value);
  });

  it('counts the same strokes as strokesOnHole, and knows differences better than values', () => {
    const alone = (clubSpeed: Speed, shots: number): MonteCarlo =>
      strokesOnHole({ delivery: { ...delivery, clubSpeed }, spread, hole: wide }, {}, { shots }).strokes;
    const [, today, , fastest] = open.steps;
    expect(toMph(today?.clubSpeed ?? mph(0))).toBe(95);
    expect(today?.strokes.value).toBeCloseTo(alone(mph(95), 192).value, 9);
    expect(fastest?.strokes.value).toBeCloseTo(alone(mph(103), 192).value, 9);
    expect(today?.change).toEqual({ value: 0, standardError: 0, interval: { low: 0, high: 0 } });
    expect(fastest?.change.value).toBeCloseTo(alone(mph(103), 192).value - alone(mph(95), 192).value, 9);
    const drawn = { shots: 192, sampling: 'random' } as const;
    const apart = strokesOnHole({ delivery, spread, hole: wide }, {}, drawn).strokes.standardError;
    expect(fastest?.change.standardError).toBeLessThan(0.8 * Math.SQRT2 * apart);
  });

  it('plays a left-handed player, a slope and wind as strokesOnHole does', () => {
    const left = { ...delivery, hand: 'left', clubPath: degrees(2), clubSpeed: mph(95) } as const;
    const scene = {
      ground: { slope: degrees(1), crossSlope: degrees(2), elevation: yards(-5) },
      wind: { along: mph(0), across: mph(8) },
    };
    const [first] = fasterOrStraighter({ delivery: left, spread, hole: narrow }, scene, quick).steps;
    const at = { ...left, clubSpeed: mph(91) };
    const alone = strokesOnHole({ delivery: at, spread, hole: narrow }, scene, { shots: 192 });
    expect(first?.strokes.value).toBeCloseTo(alone.strokes.value, 9);
  });

  it('finds both best speeds where a stream lies between them', () => {
    const stream: Hole = {
      ...wide,
      hazards: [{ kind: 'penalty-area', alongFrom: yards(235), alongTo: yards(255) }],
    };
    const row = [87, 91, 95, 99, 103, 107, 111].map(mph);
    const answer = fasterOrStraighter({ delivery, spread, hole: stream }, {}, { shots: 192, speeds: row });
    const short = answer.locallyBest.find(({ clubSpeed }) => clubSpeed < mph(93));
    const long = answer.locallyBest.at(-1);
    expect(long).toMatchObject({ kind: 'faster-than', clubSpeed: row.at(-1) });
    const least = Math.min(...answer.steps.map(({ change }) => change.value));
    expect(answer.best.change.value).toBe(least);
    expect([short, long]).toContainEqual(answer.best);
  });

  it('counts by the law of scatter what is faster, and by factors alone what breaks even', () => {
    const law = { directionPerMph: 0.05, strikePerMph: 0.05 };
    const growing = ask(wide, law);
    expect(growing.oneMphFaster.value).toBeGreaterThan(open.oneMphFaster.value);
    expect(growing.breakEven).toEqual(open.breakEven);
    expect(growing.cancellingOneMph).toEqual(open.cancellingOneMph);
  });

  it('looks for break-even no wider than shots can be played, and refuses a law that leads there', () => {
    const loose = { kind: 'normal', sd: { faceAngle: degrees(2), high: millimetres(15) } } as const;
    const answer = fasterOrStraighter({ delivery, spread: loose, hole: wide }, {}, quick);
    for (const point of answer.breakEven) if (point.kind === 'over') expect(point.factor).toBeLessThan(2);
    const law = { strikePerMph: 0.1 };
    const refused = caught(() => fasterOrStraighter({ delivery, spread: loose, hole: wide, law }, {}, quick));
    expect(refused).toMatchObject({ code: 'outside-range', field: 'spread' });
    expect(refused.message).toMatch(/strikeOffset\.high/);
  });

  it('lets path and face scatter alone, and adds up the holes of a round', () => {
    const two = ask([wide, wide], { directionPerMph: 2 ** 0.1 - 1 });
    expect(two.steps[1]?.strokes.value).toBeCloseTo(2 * (open.steps[1]?.strokes.value ?? 0), 9);
    expect(two.steps[2]?.directionFactor).toBeCloseTo(2 ** 0.4, 6);
    expect(two.steps[2]?.strikeFactor).toBe(1);
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
