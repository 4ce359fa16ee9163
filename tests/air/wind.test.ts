import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { terrains, type Wind, type WindProfile, windFrom } from '../../src/air/index.js';
import { windRatio } from '../../src/air/wind-ratio.js';
import { resolveScene } from '../../src/scene/scene.js';
import { degrees, metres, mph, metresPerSecond as mps, si } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { anyOf, even } from '../even.js';
import { expectPrinted } from '../printed.js';
import published from '../published/data/wind-with-height.json' with { type: 'json' };

const log = (z0: number): WindProfile => ({ kind: 'log', roughness: metres(z0) });

describe('wind with height', () => {
  // Source and limits: the about block of the data.
  it('meets the table u(z)/u(10 m) to its last digit', () => {
    expect(published.rows).toHaveLength(5);
    for (const row of published.rows) {
      published.heights.forEach((height, i) => {
        const printed = row.ratios[i] ?? '';
        expectPrinted(windRatio(log(row.roughness), height), printed, `z0 ${row.roughness}, ${height} m`);
      });
    }
  });
  it('is 1 at the reference height', () => {
    expect(windRatio(log(0.03), 10)).toBe(1);
    expect(windRatio({ kind: 'log', roughness: metres(0.1), referenceHeight: metres(2) }, 2)).toBe(1);
    expect(windRatio({ kind: 'power', exponent: 1 / 7, referenceHeight: metres(30) }, 30)).toBe(1);
    expect(windRatio({ kind: 'power', exponent: 1 / 7 }, 10)).toBe(1);
  });
  it('follows the power law', () => {
    // 2^(1/7) = 1.10409, the doubling of height every wind handbook quotes as about 10 %.
    expect(windRatio({ kind: 'power', exponent: 1 / 7 }, 20)).toBeCloseTo(1.10409, 5);
    expect(windRatio({ kind: 'power', exponent: 0.25 }, 160)).toBeCloseTo(2, 12);
  });
  it('runs the power law straight to 0 over the lowest 2 cm, where its own slope has no end', () => {
    const profile: WindProfile = { kind: 'power', exponent: 0.25 };
    expect(windRatio(profile, 0.02)).toBeCloseTo(0.002 ** 0.25, 12);
    expect(windRatio(profile, 0.01)).toBeCloseTo(0.002 ** 0.25 / 2, 12);
  });
  it('counts height from the displaced ground', () => {
    const profile: WindProfile = { kind: 'log', roughness: metres(0.5), displacement: metres(4) };
    expect(windRatio(profile, 24)).toBeCloseTo(Math.log(40) / Math.log(12), 12);
  });
  it('is 0 below the ground and among the obstacles, and has no jump there', () => {
    expect(windRatio(log(0.03), 0.03)).toBe(0);
    expect(windRatio(log(0.03), 0.0300001)).toBeLessThan(1e-5);
    expect(windRatio({ kind: 'log', roughness: metres(0.5), displacement: metres(4) }, 4.4)).toBe(0);
    for (const profile of [log(0.03), { kind: 'power', exponent: 0.2 } as const]) {
      expect(windRatio(profile, 0)).toBe(0);
      expect(windRatio(profile, -5)).toBe(0);
    }
  });
  it('is the same everywhere when uniform or not given', () => {
    for (const height of [-3, 0, 10, 80]) {
      expect(windRatio(undefined, height)).toBe(1);
      expect(windRatio({ kind: 'uniform' }, height)).toBe(1);
    }
  });
  it('never falls with height', () => {
    const profile = fc.oneof(
      fc.record({
        kind: fc.constant('log' as const),
        roughness: anyOf(1e-4, 2).map(metres),
      }),
      fc.record({
        kind: fc.constant('power' as const),
        exponent: anyOf(0, 1),
      }),
    );
    const height = anyOf(-2, 150);
    fc.assert(
      fc.property(profile, height, height, (shape, a, b) => {
        const [low, high] = [windRatio(shape, Math.min(a, b)), windRatio(shape, Math.max(a, b))];
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeGreaterThanOrEqual(low);
        expect(high).toBeLessThan(100);
      }),
    );
  });
});

describe('terrain', () => {
  it('has the roughness classes of Davenport and Wieringa, and names its own as assumed', () => {
    // WMO-No. 8, part I, chapter 5; US EPA meteorological guidance (2000), table 6-10.
    const classes = [
      'open-water',
      'smooth',
      'open-grass',
      'low-crops',
      'high-crops',
      'parkland',
      'suburb',
      'city',
    ] as const;
    expect(classes.map((name) => terrains[name].roughness)).toEqual([
      0.0002, 0.005, 0.03, 0.1, 0.25, 0.5, 1, 2,
    ]);
    for (const name of ['links-course', 'heath-course', 'tree-lined-course'] as const) {
      expect(terrains[name].source.confidence).toBe('assumption');
    }
    expect(terrains['links-course'].roughness).toBe(0.03);
    expect(terrains['heath-course'].roughness).toBeGreaterThanOrEqual(0.05);
    expect(terrains['heath-course'].roughness).toBeLessThanOrEqual(0.1);
    expect(terrains['tree-lined-course'].roughness).toBeGreaterThanOrEqual(0.25);
    expect(terrains['tree-lined-course'].roughness).toBeLessThanOrEqual(0.5);
  });
});

describe('a wind from a reading', () => {
  const close = (wind: Wind, along: number, across: number) => {
    expect(wind.along).toBeCloseTo(along, 9);
    expect(wind.across).toBeCloseTo(across, 9);
  };
  it('by the clock: 12 headwind, 3 from the right, 6 tailwind, 9 from the left', () => {
    close(windFrom({ speed: mps(5), clock: 12 }), -5, 0);
    close(windFrom({ speed: mps(5), clock: 0 }), -5, 0);
    close(windFrom({ speed: mps(5), clock: 3 }), 0, -5);
    close(windFrom({ speed: mps(5), clock: 6 }), 5, 0);
    close(windFrom({ speed: mps(5), clock: 9 }), 0, 5);
    close(windFrom({ speed: mph(10), clock: 1 }), -4.4704 * Math.sqrt(0.75), -2.2352);
  });
  it('by angle and by compass', () => {
    close(windFrom({ speed: mps(5), from: degrees(0) }), -5, 0);
    close(windFrom({ speed: mps(5), from: degrees(90) }), 0, -5);
    close(windFrom({ speed: mps(5), from: degrees(-90) }), 0, 5);
    // A west wind on a hole that plays north comes from the left and pushes right.
    close(windFrom({ speed: mps(5), bearing: degrees(270), targetBearing: degrees(0) }), 0, 5);
    close(windFrom({ speed: mps(5), bearing: degrees(45), targetBearing: degrees(225) }), 5, 0);
  });
  it('by hand at 2 m is carried up to 10 m', () => {
    // u(2)/u(10) is 0.72 over open grass, 0.56 over high crops: the table above.
    const wind = windFrom({ speed: mps(5), clock: 6, terrain: 'open-grass', measuredAt: metres(2) });
    expect(wind.along).toBeCloseTo(5 / (Math.log(2 / 0.03) / Math.log(10 / 0.03)), 9);
    expectPrinted(5 / wind.along, '0.72', 'ratio');
    expect(wind.profile).toEqual({ kind: 'log', roughness: 0.03 });
    expect(wind.along * windRatio(wind.profile, 2)).toBeCloseTo(5, 9);
    const crops = windFrom({ speed: mps(5), clock: 6, profile: log(0.25), measuredAt: metres(2) });
    expectPrinted(5 / crops.along, '0.56', 'ratio');
  });
  it('without a height is at the reference height, without a profile the same everywhere', () => {
    expect(windFrom({ speed: mps(5), clock: 6, terrain: 'parkland' }).along).toBeCloseTo(5, 12);
    expect(windFrom({ speed: mps(5), clock: 6 })).not.toHaveProperty('profile');
    expect(Object.is(windFrom({ speed: mps(0), clock: 12 }).along, 0)).toBe(true);
  });
  it('keeps its speed whatever the direction', () => {
    fc.assert(
      fc.property(even(0, 40), even(-6, 6), (v, a) => {
        const wind = windFrom({ speed: mps(v), from: si(a) });
        expect(Math.hypot(wind.along, wind.across)).toBeCloseTo(v, 9);
      }),
    );
  });
  it('refuses what cannot be', () => {
    const bad: readonly [object, string, string][] = [
      [{ speed: mps(5) }, 'wind', 'got none'],
      [{ speed: mps(5), clock: 3, from: degrees(90) }, 'wind', 'from and clock'],
      [{ speed: mps(-5), clock: 3 }, 'wind.speed', 'between 0 and 60'],
      [{ speed: mps(70), clock: 3 }, 'wind.speed', 'mph'],
      [{ speed: mps(5), clock: 13 }, 'wind.clock', '12'],
      [{ speed: mps(5), from: 90 }, 'wind.from', 'degrees(90)'],
      [{ speed: mps(5), bearing: degrees(90) }, 'wind.targetBearing', 'missing'],
      [{ speed: mps(5), clock: 3, terrain: 'desert' }, 'wind.terrain', 'links-course'],
      [{ speed: mps(5), clock: 3, terrain: 'parkland', profile: log(0.1) }, 'wind.profile', 'not both'],
      [{ speed: mps(5), clock: 3, measuredAt: metres(2) }, 'wind.measuredAt', 'needs a terrain'],
      [{ speed: mps(5), clock: 3, terrain: 'city', measuredAt: metres(2) }, 'wind.measuredAt', 'obstacles'],
      [{ speed: mps(5), clock: 3, terrain: 'parkland', measuredAt: metres(0.1) }, 'wind.measuredAt', '0.5'],
      [{ speed: mps(40), clock: 3, terrain: 'parkland', measuredAt: metres(2) }, 'wind.speed', 'at most 60'],
      [{ speed: mps(5), clock: 3, gusts: 8 }, 'wind.gusts', 'known fields'],
    ];
    for (const [reading, field, words] of bad) {
      const error = caught(() => windFrom(reading as never));
      expect(error.field, JSON.stringify(reading)).toBe(field);
      expect(error.message).toContain(words);
    }
  });
});

describe('a wind given by components', () => {
  const good: Wind = { along: mps(3), across: mps(-2), profile: log(0.03) };
  it('passes when it makes sense', () => {
    const { windAlong, windAcross, profile } = resolveScene({ wind: good });
    expect([windAlong, windAcross, profile]).toEqual([good.along, good.across, good.profile]);
    resolveScene({ wind: { along: mps(0), across: mps(0) } });
    resolveScene({ wind: { ...good, profile: { kind: 'uniform' } } });
    resolveScene({
      wind: { ...good, profile: { kind: 'power', exponent: 0.2, referenceHeight: metres(2) } },
    });
  });
  it('is refused by field otherwise', () => {
    const bad: readonly [object, string][] = [
      [{ along: Number.NaN }, 'scene.wind.along'],
      [{ across: 61 }, 'scene.wind.across'],
      [{ gust: 3 }, 'scene.wind.gust'],
      [{ profile: { kind: 'cubic' } }, 'scene.wind.profile.kind'],
      [{ profile: { kind: 'log' } }, 'scene.wind.profile.roughness'],
      [{ profile: { kind: 'log', roughness: 0 } }, 'scene.wind.profile.roughness'],
      [{ profile: { kind: 'log', roughness: 0.1, exponent: 0.1 } }, 'scene.wind.profile.exponent'],
      [{ profile: { kind: 'log', roughness: 0.1, displacement: -1 } }, 'scene.wind.profile.displacement'],
      [{ profile: { kind: 'log', roughness: 1, displacement: 9.5 } }, 'scene.wind.profile.referenceHeight'],
      [{ profile: { kind: 'power', exponent: 2 } }, 'scene.wind.profile.exponent'],
      [
        { profile: { kind: 'power', exponent: 0.2, referenceHeight: 0 } },
        'scene.wind.profile.referenceHeight',
      ],
      [{ profile: { kind: 'uniform', roughness: 0.1 } }, 'scene.wind.profile.roughness'],
    ];
    for (const [change, field] of bad) {
      const error = caught(() => resolveScene({ wind: { ...good, ...change } }));
      expect(error.field, JSON.stringify(change)).toBe(field);
    }
  });
});
