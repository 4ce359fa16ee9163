import { describe, expect, it } from 'vitest';
import { stream } from '../../src/numerics/index.js';
import { growth } from '../../src/session/carry-over.js';
import { judgeTraining, type MeasuredShot, trainingCautions } from '../../src/session/index.js';
import { degrees, mph, rpm, si, toMph, toYards, yards } from '../../src/units/index.js';
import { caught } from '../caught.js';

interface Log {
  readonly gain: number;
  readonly sessions?: number;
  readonly each?: number;
  readonly dayToDay?: number;
  readonly wider?: number;
  readonly seed?: number;
}

/** An invented log: weekly sessions of ten shots at 95 mph, days differ by 0.6 mph, shots by 1.2 mph. */
function log({ gain, sessions = 8, each = 10, dayToDay = 0.6, wider = 1, seed = 1 }: Log): MeasuredShot[] {
  const random = stream(seed);
  return Array.from({ length: sessions }, (_, w) => {
    const share = w / (sessions - 1);
    const day = 95 + gain * share + dayToDay * random.normal();
    const date = new Date(Date.UTC(2031, 2, 3 + 7 * w)).toISOString().slice(0, 10);
    return Array.from({ length: each }, (): MeasuredShot => {
      const club = day + 1.2 * random.normal();
      return {
        date,
        clubSpeed: mph(club),
        ballSpeed: mph(1.46 * club + 0.5 * random.normal()),
        launchAngle: degrees(13 + random.normal()),
        launchDirection: degrees(3 * wider ** share * random.normal()),
        spinRate: rpm(2700 + 200 * random.normal()),
        carry: yards(2.6 * club - 25 + 4 * random.normal()),
      };
    });
  }).flat();
}

describe('judgeTraining', () => {
  it('calls a gain of 5 mph over 8 weeks real and says what it is worth', () => {
    const report = judgeTraining(log({ gain: 5 }));
    expect(report.verdict).toBe('gain');
    expect(report.sessions).toHaveLength(8);
    expect(report.timeUnit).toBe('weeks');
    expect(report.sessions[7]?.time).toBeCloseTo(7, 9);
    expect(toMph(report.change?.value ?? si(0))).toBeGreaterThan(2.5);
    expect(toMph(report.perTime?.value ?? si(0)) * 7).toBeCloseTo(5, -0.5);
    // 2.6 yd a mph was put in; the gain between the blocks is about 4 mph.
    const perMph = toYards(report.worth?.value ?? si(0)) / toMph(report.change?.value ?? si(1));
    expect(perMph).toBeGreaterThan(2.2);
    expect(perMph).toBeLessThan(3);
    const { carry } = report.causes ?? {};
    expect(carry?.causes.ballSpeed.value).toBeGreaterThan(0.6 * (carry?.modelled.value ?? 0));
    expect(report.cautions).toBe(trainingCautions);
    expect(report.remarks.join(' ')).toMatch(/more than the \d\.\d mph that days alone can make/);
  });

  // A change of nothing must be called real in 5 % of logs; shots treated as independent would be fooled far more.
  it('is fooled by day-to-day variation about as rarely as it says', () => {
    let fooled = 0;
    const runs = 300;
    for (let seed = 0; seed < runs; seed++) {
      const shots = log({ gain: 0, sessions: 9, each: 4, seed: 1000 + seed }).map(
        ({ date, clubSpeed }) => ({ date, clubSpeed }) as MeasuredShot,
      );
      if (judgeTraining(shots).verdict !== 'not-shown') fooled++;
    }
    expect(fooled / runs).toBeGreaterThan(0.01);
    expect(fooled / runs).toBeLessThan(0.1);
  });

  it('finds days that carry over, says so and widens the change', () => {
    const speeds = [95, 96, 96, 97, 96, 95, 94, 93, 93, 92, 93, 94, 95, 96, 97, 97];
    const report = judgeTraining(speeds.map((speed, i) => ({ session: `s${i}`, clubSpeed: mph(speed) })));
    const { carryOver, dayToDay = 0, change } = report;
    expect(carryOver?.verdict).toBe('carries-over');
    expect(carryOver?.autocorrelation).toBeGreaterThan(0.6);
    expect(report.remarks.join(' ')).toMatch(/Neighbouring sessions resemble each other/);
    // Student's t of 14 degrees of freedom is 2.145 (tables); five sessions at each end.
    const plain = 2.1448 * dayToDay * Math.sqrt(2 / 5);
    const half = ((change?.high ?? 0) - (change?.low ?? 0)) / 2;
    expect(half / plain).toBeCloseTo(carryOver?.widening ?? 0, 3);
    expect(carryOver?.widening).toBeGreaterThan(2);
  });

  it('finds none where good and bad days alternate', () => {
    const speeds = [95, 93, 96, 92, 95, 94, 96, 93, 95, 92];
    const report = judgeTraining(speeds.map((speed, i) => ({ session: `s${i}`, clubSpeed: mph(speed) })));
    expect(report.carryOver).toMatchObject({ verdict: 'not-shown', widening: 1 });
    expect(report.carryOver?.autocorrelation).toBeLessThan(0);
  });

  // The variance of a sum of a first-order autoregression: Σ Σ wᵢ wⱼ ρ^|i−j|, here written out.
  it('has the error of a sum of dependent days', () => {
    const weights = [-1, -1, 0, 1, 1];
    const double = weights.flatMap((a, i) => weights.map((b, j) => a * b * 0.5 ** Math.abs(i - j)));
    expect(growth(weights, 0.5)).toBeCloseTo(Math.sqrt(double.reduce((sum, each) => sum + each, 0) / 4), 12);
    expect(growth(weights, 0)).toBe(1);
  });

  // Hopkins (2000): typical error = SD of differences / √2; Weir (2005): 2.77 of it, here with Student's t for 1.96.
  it('has the typical error and the detectable change of the published formulas', () => {
    const speeds = [90, 92, 91, 94];
    const report = judgeTraining(
      speeds.map((speed, i) => ({ session: `s${i}`, clubSpeed: mph(speed) })),
      {},
      { block: 1 },
    );
    const sd = Math.sqrt(((2 - 4 / 3) ** 2 + (-1 - 4 / 3) ** 2 + (3 - 4 / 3) ** 2) / 2);
    expect(toMph(report.dayToDay ?? si(0))).toBeCloseTo(sd / Math.SQRT2, 9);
    expect(toMph(report.detectable ?? si(0))).toBeCloseTo((4.3027 * Math.SQRT2 * sd) / Math.SQRT2, 3);
    expect(report.timeUnit).toBe('sessions');
    expect(report.verdict).toBe('not-shown');
    // Never more than 3 mph at a time.
    expect(toMph(report.next?.step ?? si(0))).toBeCloseTo(3, 9);
    expect(toMph(report.next?.clubSpeed ?? si(0))).toBeCloseTo(97, 9);
  });

  it('sees scatter that doubled, and not one that stayed', () => {
    const wider = judgeTraining(log({ gain: 3, wider: 2.5, each: 20, sessions: 9 }));
    expect(wider.scatter.launchDirection?.verdict).toBe('grew');
    expect(wider.scatter.launchDirection?.ratio).toBeGreaterThan(1.25);
    expect(wider.scatter.launchDirection?.interval.low).toBeGreaterThan(1);
    expect(judgeTraining(log({ gain: 3 })).scatter.launchDirection?.verdict).toBe('not-shown');
  });

  it('puts sessions in order of date, and notices a loss', () => {
    const shots = log({ gain: 6 });
    const upset = [...shots.slice(40), ...shots.slice(0, 40)];
    expect(judgeTraining(upset)).toEqual(judgeTraining(shots));
    expect(judgeTraining(log({ gain: -6 })).verdict).toBe('loss');
  });

  it('says when there are too few sessions, and refuses a single one', () => {
    const three = judgeTraining(log({ gain: 5, sessions: 3 }));
    expect(three.verdict).toBe('too-few-sessions');
    expect(three.change).toBeUndefined();
    expect(three.remarks[0]).toMatch(/too few/);
    expect(() => judgeTraining(log({ gain: 5 }).slice(0, 10))).toThrow(/two sessions/);
    expect(() => judgeTraining([{ clubSpeed: mph(90) }])).toThrow(/two sessions/);
    expect(caught(() => judgeTraining(log({ gain: 1 }), {}, { block: 5 }))).toMatchObject({
      code: 'outside-range',
      field: 'options.block',
      range: [1, 4],
    });
    const odd = [...log({ gain: 1 }), { carry: yards(-1) }];
    expect(caught(() => judgeTraining(odd)).field).toBe('shots[80].carry');
    expect(caught(() => judgeTraining(log({ gain: 1 }), { turf: 'concrete' as never })).field).toBe(
      'scene.turf',
    );
  });

  it('keeps JSON whole: no number that is not finite', () => {
    for (const gain of [0, 4])
      expect(JSON.stringify(judgeTraining(log({ gain, sessions: 5 })))).not.toMatch(/null/);
    const same = judgeTraining([1, 2, 3, 4].map((s) => ({ session: `${s}`, clubSpeed: mph(95) })));
    expect(JSON.stringify(same)).not.toMatch(/null/);
  });
});
