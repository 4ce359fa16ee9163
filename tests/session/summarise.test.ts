import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stream } from '../../src/numerics/index.js';
import { type MeasuredShot, summariseSession } from '../../src/session/index.js';
import { degrees, mph, rpm, si, toMph, toYards, yards } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { anyOf } from '../even.js';

/** An invented player on a ladder: carry 2.5 yd a mph, scatter of 1 mph in club speed and 5 yd in carry. */
function ladder(speeds: readonly number[], each: number, seed = 1): MeasuredShot[] {
  const random = stream(seed);
  return speeds.flatMap((speed) =>
    Array.from({ length: each }, () => {
      const club = speed + random.normal();
      return {
        clubSpeed: mph(club),
        ballSpeed: mph(1.47 * club),
        launchAngle: degrees(12 + random.normal()),
        spinRate: rpm(2600 + 150 * random.normal()),
        carry: yards(2.5 * club - 15 + 5 * random.normal()),
      };
    }),
  );
}

describe('summariseSession', () => {
  it('finds the bands of a ladder, and takes labels or given bands instead', () => {
    const shots = ladder([80, 90, 100, 110], 5);
    const found = summariseSession(shots);
    expect(found.bandedBy).toBe('found');
    expect(found.bands.map((band) => band.shots)).toEqual(
      [0, 5, 10, 15].map((k) => [k, k + 1, k + 2, k + 3, k + 4]),
    );

    const labelled = shots.map((shot, i) => ({ ...shot, label: i % 2 === 0 ? 'even' : 'odd' }));
    expect(summariseSession(labelled).bands.map((band) => band.name)).toEqual(['even', 'odd']);
    expect(summariseSession(labelled, { bands: 'one' }).bands).toHaveLength(1);

    const given = summariseSession(shots, {
      bands: [
        { from: mph(95), to: mph(120), name: 'fast' },
        { from: mph(85), to: mph(95) },
      ],
    });
    expect(given.bands.map((band) => band.name)).toEqual(['85 to 95 mph', 'fast']);
    expect(given.unassigned).toHaveLength(5);
    expect(given.unassigned[0]?.reason).toMatch(/lies in no band/);
    expect(summariseSession([{ carry: yards(200) }]).bandedBy).toBe('one');
  });

  // Mean, Student t interval (t = 4.303 at 2 degrees of freedom, any table), median and MAD by hand.
  it('gives mean, interval, spread and median of a band', () => {
    const shots = [200, 210, 217].map((carry): MeasuredShot => ({ clubSpeed: mph(95), carry: yards(carry) }));
    const carry = summariseSession(shots).bands[0]?.quantities.carry;
    expect(toYards(carry?.mean ?? si(0))).toBeCloseTo(209, 9);
    const sd = Math.sqrt((81 + 1 + 64) / 2);
    expect(toYards(carry?.sd ?? si(0))).toBeCloseTo(sd, 9);
    expect(toYards(carry?.interval?.high ?? si(0))).toBeCloseTo(209 + (4.3027 * sd) / Math.sqrt(3), 3);
    expect(toYards(carry?.median ?? si(0))).toBeCloseTo(210, 9);
    expect(toYards(carry?.robustSd ?? si(0))).toBeCloseTo(1.4826 * 7, 3);
    expect(carry?.count).toBe(3);
  });

  it('works out smash factor, run and face to path, and leaves out what was not measured', () => {
    const quantities = summariseSession([
      {
        clubSpeed: mph(100),
        ballSpeed: mph(148),
        carry: yards(240),
        total: yards(262),
        faceAngle: degrees(2),
        clubPath: degrees(-1),
      },
    ]).bands[0]?.quantities;
    expect(quantities?.smashFactor?.mean).toBeCloseTo(1.48, 9);
    expect(toYards(quantities?.run?.mean ?? si(0))).toBeCloseTo(22, 9);
    expect(quantities?.faceToPath?.mean).toBeCloseTo(degrees(3), 9);
    expect(quantities?.spinRate).toBeUndefined();
    expect(quantities?.carry?.interval).toBeUndefined();
  });

  it('recovers the trend in yards per mph, and says when there is none', () => {
    const summary = summariseSession(ladder([80, 85, 90, 95, 100, 105, 110], 8));
    const trend = summary.trends.carry?.yardsPerMph;
    expect(trend?.value).toBeGreaterThan(2.2);
    expect(trend?.value).toBeLessThan(2.8);
    expect(trend?.low).toBeLessThan(2.5);
    expect(trend?.high).toBeGreaterThan(2.5);
    expect(summary.trends.carry?.unclear).toBe(false);
    expect(summary.trends.smashFactor?.slope).toBeCloseTo(0, 9);
    const flat = summariseSession(ladder([100], 6, 3));
    expect(flat.trends.launchAngle?.unclear).toBe(true);
  });

  it('flags a misread with its reason, keeps it in the figures, and leaves it out of the second set', () => {
    const shots = ladder([80, 95, 110], 10, 2).map((shot, i) =>
      i === 14 ? { ...shot, carry: yards(90), line: 16 } : shot,
    );
    const summary = summariseSession(shots);
    const odd = summary.oddShots.find((entry) => entry.shot === 14);
    expect(odd).toMatchObject({ verdict: 'outlier', line: 16 });
    expect(odd?.reason).toMatch(
      /^carry 90\.0 yd is \d+\.\d robust deviations below the band's median of 2\d\d\.\d yd/,
    );
    const band = summary.bands.find((entry) => entry.shots.includes(14));
    expect(band?.quantities.carry?.count).toBe(10);
    expect(band?.withoutOutliers?.carry?.count).toBe(9);
    expect(summary.bands[0]?.withoutOutliers).toBeUndefined();
  });

  // By hand: with carries of 197 to 203 yd and one more above, the median is 200.5 yd and the MAD 2 yd; the score
  // 0.6745 × (carry − 200.5)/2 is 3.47 at 210.8 yd and 3.54 at 211 yd (Iglewicz and Hoaglin 1993: odd beyond 3.5).
  it('calls a shot odd from a modified z-score of 3.5 on', () => {
    const odd = (carry: number): number =>
      summariseSession([197, 198, 199, 200, 201, 202, 203, carry].map((value) => ({ carry: yards(value) })))
        .oddShots.length;
    expect([odd(210.8), odd(211)]).toEqual([0, 1]);
    // The mirrored shots are odd on the other side.
    const reasons = [1, -1].map((side) => {
      const shots = [-3, -2, -1, 0, 1, 2, 3, 14].map((off) => ({ carry: yards(200 + side * off) }));
      return summariseSession(shots).oddShots[0]?.reason;
    });
    expect(reasons[0]).toMatch(
      /^carry 214\.0 yd is 4\.6 robust deviations above the band's median of 200\.5 yd/,
    );
    expect(reasons[1]).toMatch(
      /^carry 186\.0 yd is 4\.6 robust deviations below the band's median of 199\.5 yd/,
    );
  });

  it('calls hardly any normal shot an outlier, though with few shots the limit 3.5 is passed often', () => {
    let outliers = 0;
    let stragglers = 0;
    const sessions = 40;
    for (let seed = 0; seed < sessions; seed++) {
      for (const odd of summariseSession(ladder([100], 5, 100 + seed), { bands: 'one' }).oddShots) {
        for (const reading of odd.readings) {
          if (reading.verdict === 'outlier') outliers++;
          else stragglers++;
        }
      }
    }
    // Readings of 40 × 5 quantities: about 1 % outliers are due; the limit 3.5 alone is passed in a fifth of them.
    expect(outliers).toBeLessThan(8);
    expect(stragglers).toBeGreaterThan(10);
  });

  // Hopkins (2000), Weir (2005): typical error is the pooled SD within bands, detectable change √2 t of it; t of 2
  // degrees of freedom is 4.303 (tables).
  it('gives typical error and detectable change', () => {
    const summary = summariseSession(
      [89, 91, 99, 101].map((club) => ({ clubSpeed: mph(club), label: club < 95 ? 'slow' : 'fast' })),
    );
    const speed = summary.repeatability.clubSpeed;
    expect(toMph(si(speed?.typicalError ?? 0))).toBeCloseTo(Math.SQRT2, 9);
    expect(toMph(si(speed?.detectableSingle ?? 0))).toBeCloseTo(4.3027 * 2, 3);
    expect(toMph(si(speed?.detectableMean ?? 0))).toBeCloseTo(4.3027 * Math.SQRT2, 3);
    expect(speed?.dof).toBe(2);
  });

  it('gives plain data, and keeps nothing of the caller', () => {
    const shots = ladder([80, 100], 5).map((shot) => ({ ...shot }));
    const summary = summariseSession(shots);
    const before = structuredClone(summary);
    for (const shot of shots) Object.assign(shot, { carry: yards(1) });
    expect(summary).toEqual(before);
    expect(JSON.parse(JSON.stringify(summary))).toEqual(before);
  });

  it('says in words that five shots are few', () => {
    const words = summariseSession(ladder([80, 100], 5)).remarks.join('\n');
    expect(words).toMatch(
      /with 5 shots the mean carry is known only to lie from \d+\.\d yd to \d+\.\d yd \(95 %\)/,
    );
    expect(words).toMatch(/yd a mph/);
  });

  it('refuses bad input by name', () => {
    expect(caught(() => summariseSession([])).field).toBe('shots');
    expect(caught(() => summariseSession([{ carry: yards(200), ball: 'x' } as never])).field).toBe(
      'shots[0].ball',
    );
    expect(() => summariseSession([{ carry: yards(Number.NaN) }])).toThrow(/shots\[0\]\.carry/);
    expect(() =>
      summariseSession([{ clubSpeed: mph(90) }], {
        bands: [
          { from: mph(80), to: mph(100) },
          { from: mph(95), to: mph(110) },
        ],
      }),
    ).toThrow(/overlap/);
    expect(() => summariseSession([{ carry: yards(1) }], { level: 2 })).toThrow(/level/);
  });

  it('never gives a number that is not finite, whatever was measured', () => {
    const number = (min: number, max: number) => fc.option(anyOf(min, max), { nil: undefined });
    const shot = fc.record({
      clubSpeed: number(20, 60),
      ballSpeed: number(20, 90),
      carry: number(0, 320),
      side: number(-60, 60),
    });
    fc.assert(
      fc.property(fc.array(shot, { minLength: 1, maxLength: 12 }), (raw) => {
        const shots = raw.map((entry) =>
          Object.fromEntries(Object.entries(entry).filter(([, v]) => v !== undefined)),
        ) as MeasuredShot[];
        const summary = summariseSession(shots);
        expect(JSON.stringify(summary)).not.toMatch(/null/);
        const placed = summary.bands.flatMap((band) => band.shots).length + summary.unassigned.length;
        expect(placed).toBe(shots.length);
      }),
      { numRuns: 60, endOnFailure: true },
    );
  });
});
