import { describe, expect, it } from 'vitest';
import {
  airAt,
  airAtAltitude,
  celsius,
  type Delivery,
  degrees,
  type FairflightError,
  feet,
  isFairflightError,
  type Launch,
  metres,
  metresPerSecond,
  mph,
  playShot,
  rpm,
  type Shot,
  type ShotOptions,
  type ShotOutcome,
  sensitivities,
  toDegrees,
  toMph,
  toRpm,
  toYards,
} from '../../src/index.js';
import { si } from '../../src/units/index.js';

const drive: Delivery = {
  clubSpeed: mph(100),
  attackAngle: degrees(1),
  clubPath: degrees(1),
  faceAngle: degrees(-1),
  dynamicLoft: degrees(14),
  strikeOffset: { toe: si(0.004), high: si(-0.003) },
};
const launch: Launch = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2700) };
const fine: ShotOptions = { tolerance: si(1e-9) };

function outcome({ launch: l, flight, carry, total, side }: Shot): ShotOutcome {
  return {
    ballSpeed: l.ballSpeed,
    launchAngle: l.launchAngle,
    launchDirection: l.launchDirection ?? degrees(0),
    spinRate: l.spinRate,
    carry,
    total,
    side,
    apex: flight.apex,
    descentAngle: flight.descentAngle,
  };
}

/** Derivative by a Romberg table of central differences (Richardson 1911, Phil. Trans. R. Soc. A 210, 307), four levels. */
function richardson(f: (h: number) => number, h0: number): number {
  let row = [0, 1, 2, 3].map((k) => {
    const h = h0 / 2 ** k;
    return (f(h) - f(-h)) / (2 * h);
  });
  for (let order = 1; order < 4; order++) {
    row = row.slice(1).map((near, i) => near + (near - (row[i] ?? 0)) / (4 ** order - 1));
  }
  return row[0] ?? Number.NaN;
}

const smooth = [
  'ballSpeed',
  'launchAngle',
  'launchDirection',
  'spinRate',
  'carry',
  'apex',
  'descentAngle',
] as const;

describe('slopes against Richardson extrapolation', () => {
  const struck = sensitivities(drive);
  const flown = sensitivities(launch);
  const changed: Record<string, (h: number) => Shot> = {
    clubSpeed: (h) => playShot({ ...drive, clubSpeed: si(drive.clubSpeed + h * mph(1)) }, {}, fine),
    attackAngle: (h) => playShot({ ...drive, attackAngle: degrees(1 + h) }, {}, fine),
    attackWithLoft: (h) =>
      playShot({ ...drive, attackAngle: degrees(1 + h), dynamicLoft: degrees(14 + h) }, {}, fine),
    dynamicLoft: (h) => playShot({ ...drive, dynamicLoft: degrees(14 + h) }, {}, fine),
    faceAngle: (h) => playShot({ ...drive, faceAngle: degrees(-1 + h) }, {}, fine),
    clubPath: (h) => playShot({ ...drive, clubPath: degrees(1 + h) }, {}, fine),
    toe: (h) =>
      playShot({ ...drive, strikeOffset: { toe: si(0.004 + h * 0.005), high: si(-0.003) } }, {}, fine),
    high: (h) =>
      playShot({ ...drive, strikeOffset: { toe: si(0.004), high: si(-0.003 + h * 0.005) } }, {}, fine),
    spinRate: (h) => {
      const { launch: struckLaunch } = playShot(drive, {}, fine);
      return playShot({ ...struckLaunch, spinRate: si(struckLaunch.spinRate + h * rpm(100)) }, {}, fine);
    },
    headwind: (h) => playShot(drive, { wind: { along: si(-5 * h), across: si(0) } }, fine),
    temperature: (h) => playShot(drive, { air: airAt({ temperature: celsius(20 + 10 * h) }) }, fine),
    altitude: (h) =>
      playShot(drive, {
        air: airAtAltitude({ altitude: feet(1000 * h), temperature: celsius(20) }),
      }),
  };

  it.each(Object.keys(changed))('%s: four digits in everything before the bounce', (change) => {
    const row = struck.rows.find((r) => r.change === change);
    if (row === undefined) throw new Error(`no row ${change}`);
    for (const quantity of smooth) {
      const value = (h: number): number => outcome((changed[change] as (h: number) => Shot)(h))[quantity];
      const exact = richardson(value, 0.2);
      const floor = 1e-7 * Math.abs(struck.base[quantity]);
      expect(Math.abs(row.slope[quantity] - exact), quantity).toBeLessThan(1e-4 * Math.abs(exact) + floor);
    }
  });

  it('a launch: ball speed, launch angle, spin, tilt', () => {
    const cases: Record<string, (h: number) => Launch> = {
      ballSpeed: (h) => ({ ...launch, ballSpeed: mph(150 + h) }),
      launchAngle: (h) => ({ ...launch, launchAngle: degrees(12 + h) }),
      spinRate: (h) => ({ ...launch, spinRate: rpm(2700 + 100 * h) }),
      spinAxisTilt: (h) => ({ ...launch, spinAxisTilt: degrees(h) }),
    };
    for (const [change, make] of Object.entries(cases)) {
      const row = flown.rows.find((r) => r.change === change);
      const exact = richardson((h) => playShot(make(h), {}, fine).carry, 0.2);
      expect(Math.abs((row?.slope.carry ?? 0) - exact)).toBeLessThan(1e-4 * Math.abs(exact) + 1e-6);
    }
  });

  it('differences are those of the whole step, either way', () => {
    const row = struck.rows.find((r) => r.change === 'toe');
    const base = outcome(playShot(drive, {}, fine));
    const moved = (toe: number): ShotOutcome =>
      outcome(playShot({ ...drive, strikeOffset: { toe: si(toe), high: si(-0.003) } }, {}, fine));
    const up = moved(0.009);
    const down = moved(-0.001);
    expect(row?.difference.carry).toBeCloseTo(up.carry - base.carry, 6);
    expect(row?.difference.side).toBeCloseTo(up.side - base.side, 6);
    expect(row?.opposite.carry).toBeCloseTo(down.carry - base.carry, 6);
  });
});

describe('sizes known from outside', () => {
  const level = sensitivities({
    clubSpeed: mph(113),
    attackAngle: degrees(-1.3),
    dynamicLoft: degrees(12.86),
  });
  const row = (change: string) => level.rows.find((r) => r.change === change)?.slope as ShotOutcome;

  it('strike: the reference set has 194 rpm and −0.31 m/s a degree of spin loft, 0.86 of launch a degree of loft', () => {
    expect(toRpm(row('dynamicLoft').spinRate) / 194).toBeCloseTo(1, 1);
    const whole = level.rows.find((r) => r.change === 'dynamicLoft')?.difference;
    expect(whole?.ballSpeed).toBeCloseTo(-0.31, 2);
    expect(toDegrees(row('dynamicLoft').launchAngle)).toBeCloseTo(0.86, 2);
    expect(toDegrees(row('attackAngle').launchAngle)).toBeCloseTo(0.14, 2);
    expect(toRpm(row('attackAngle').spinRate) / -194).toBeCloseTo(1, 1);
  });

  it('attack and loft up together keep spin and add their degree of launch', () => {
    expect(toRpm(row('attackWithLoft').spinRate)).toBeCloseTo(0, 3);
    expect(toDegrees(row('attackWithLoft').launchAngle)).toBeCloseTo(1, 6);
  });

  it('one mph of club speed is 1.38 to 1.5 mph of ball speed and 2 to 4 yd of carry (common practice, no source)', () => {
    expect(toMph(row('clubSpeed').ballSpeed)).toBeGreaterThan(1.38);
    expect(toMph(row('clubSpeed').ballSpeed)).toBeLessThan(1.5);
    expect(toYards(row('clubSpeed').carry)).toBeGreaterThan(2);
    expect(toYards(row('clubSpeed').carry)).toBeLessThan(4);
  });

  it('10 mph of headwind takes 13 to 18 yd from a 250 yd drive, and a tailwind gives less (newsletter 2007, magazine 2020)', () => {
    const wind = level.rows.find((r) => r.change === 'headwind');
    const scale = 250 / toYards(level.base.carry) / (toMph(metresPerSecond(5)) / 10);
    const head = scale * toYards(si(wind?.difference.carry ?? 0));
    const tail = scale * toYards(si(wind?.opposite.carry ?? 0));
    // Two quoted figures for one effect span the band; a tenth is allowed for the other flights they stand for.
    expect(head).toBeLessThan(-13 * 0.9);
    expect(head).toBeGreaterThan(-18 * 1.1);
    expect(tail).toBeGreaterThan(0);
    expect(tail).toBeLessThan(-head);
  });

  it('thinner air carries further and lower', () => {
    for (const change of ['temperature', 'altitude']) {
      expect(row(change).carry).toBeGreaterThan(0);
      expect(row(change).apex).toBeLessThan(0);
    }
  });
});

describe('what it starts from', () => {
  it('weather says which air the scene has', () => {
    const weather = { temperature: celsius(5), relativeHumidity: 0.8 };
    const cold = sensitivities(launch, { air: airAt(weather) }, { weather });
    const warmer = playShot(launch, { air: airAt({ ...weather, temperature: celsius(15) }) }, fine);
    const row = cold.rows.find((r) => r.change === 'temperature');
    expect(row?.difference.carry).toBeCloseTo(warmer.carry - cold.base.carry, 5);
  });

  it('rows of a delivery and of a launch', () => {
    expect(sensitivities(launch).rows.map((r) => r.change)).toEqual([
      'ballSpeed',
      'launchAngle',
      'launchDirection',
      'spinRate',
      'spinAxisTilt',
      'temperature',
      'altitude',
      'headwind',
    ]);
    expect(sensitivities(drive).rows).toHaveLength(12);
  });

  it('typed errors', () => {
    const fails = (run: () => unknown): FairflightError => {
      try {
        run();
      } catch (error) {
        if (isFairflightError(error)) return error;
      }
      throw new Error('no typed error');
    };
    expect(fails(() => sensitivities({} as never)).field).toBe('from');
    expect(fails(() => sensitivities(drive, {}, { club: 1 } as never)).field).toBe('options.club');
    expect(fails(() => sensitivities({ ...launch, ballSpeed: si<never>(500) })).field).toBe(
      'launch.ballSpeed',
    );
    const cliff = { ground: { elevation: metres(500) } };
    expect(fails(() => sensitivities(launch, cliff)).message).toMatch(/does not land/);
    const bad = { weather: { temperature: si<never>(20) } };
    expect(fails(() => sensitivities(launch, {}, bad)).field).toBe('options.weather.temperature');
  });
});
