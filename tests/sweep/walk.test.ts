import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airAt, airAtAltitude, windFrom } from '../../src/air/index.js';
import { balls } from '../../src/ball/index.js';
import { clubheads } from '../../src/clubhead/index.js';
import type { Launch, Scene } from '../../src/scene/index.js';
import { playShot, type Shot, type ShotOptions } from '../../src/shot/index.js';
import type { Delivery } from '../../src/strike/index.js';
import {
  columnOf,
  type FactorName,
  type ListRow,
  type OutputName,
  rowStatuses,
  type SweepOptions,
  sweep,
  sweepFactors,
} from '../../src/sweep/index.js';
import { turfs } from '../../src/turf/index.js';
import { celsius, degrees, metres, metresPerSecond, mph, rpm } from '../../src/units/index.js';
import { even } from '../even.js';

/** The figure of a shot at an output's path; every name is a path. */
function atPath(shot: Shot, name: string): number {
  return name
    .split('.')
    .reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], shot) as number;
}

const ALL: readonly OutputName[] = [
  'launch.ballSpeed',
  'launch.launchAngle',
  'launch.launchDirection',
  'launch.spinRate',
  'launch.spinAxisTilt',
  'launch.rifleSpin',
  'strike.smashFactor',
  'strike.spinLoft',
  'strike.faceToPath',
  'strike.backspin',
  'strike.sidespin',
  'strike.restitution',
  'strike.clubSpeedAfter',
];
const FLIGHT: readonly OutputName[] = [
  'carry',
  'flight.side',
  'flight.curve',
  'flight.apex',
  'flight.apexAt',
  'flight.hangTime',
  'flight.descentAngle',
  'flight.landing.speed',
  'flight.landing.spinRate',
  'run.distance',
  'run.side',
  'total',
  'side',
];

/** Sweeps one row and compares every output with playShot's. Both are good to the integration's 0.1 mm. */
function expectSameShot(
  row: ListRow,
  swept: { readonly scene?: Scene; readonly from?: Delivery | Launch },
  from: Delivery | Launch,
  { scene = {}, ...options }: { readonly scene?: Scene } & ShotOptions,
): void {
  const outputs = 'clubSpeed' in from ? [...ALL, ...FLIGHT] : FLIGHT;
  const { scene: base = {}, ...rest } = swept;
  const result = sweep({ kind: 'list', rows: [row] }, base, { ...rest, outputs });
  const shot = playShot(from, scene, options);
  const landed = shot.flight.ended === 'landed';
  const expected = landed && shot.run?.ended === 'still-rolling' ? 'still-rolling' : shot.flight.ended;
  expect(rowStatuses[result.status[0] as number]).toBe(expected);
  for (const name of outputs) {
    const value = columnOf(result, name)[0];
    if (shot.run === undefined && name.startsWith('run.')) expect(value).toBeNaN();
    // A hair's difference at landing can decide whether one more hop is counted, and the top of a path is flat.
    else {
      const expected = atPath(shot, name);
      const slack = /^(run\.|total|side)/.test(name) ? 0.05 : name === 'flight.apexAt' ? 0.01 : 5e-4;
      const near = Math.max(slack, 1e-5 * Math.abs(expected));
      expect(Math.abs((value as number) - expected), name).toBeLessThan(near);
    }
  }
}

const within = (name: FactorName, min = sweepFactors[name].min, max = sweepFactors[name].max) =>
  even(min, max);

describe('a row of a sweep', () => {
  it('is the shot that playShot plays: deliveries, clubhead and ball', () => {
    fc.assert(
      fc.property(
        fc.record({
          clubSpeed: within('delivery.clubSpeed', 25, 60),
          attackAngle: within('delivery.attackAngle', -0.1, 0.1),
          clubPath: within('delivery.clubPath', -0.1, 0.1),
          faceAngle: within('delivery.faceAngle', -0.1, 0.1),
          dynamicLoft: within('delivery.dynamicLoft', 0.1, 0.6),
          closureRate: within('delivery.closureRate', -50, 50),
        }),
        within('delivery.strikeOffset.toe', -0.02, 0.02),
        within('delivery.strikeOffset.high', -0.02, 0.02),
        within('clubhead.mass', 0.15, 0.3),
        within('clubhead.inertia.vertical', 3e-4, 6e-4),
        within('clubhead.restitution.atReference', 0.7, 0.85),
        within('ball.mass', 0.04, 0.05),
        fc.constantFrom('left', 'right'),
        (plain, toe, high, mass, vertical, atReference, ballMass, hand) => {
          const from = { ...plain, strikeOffset: { toe, high }, hand } as unknown as Delivery;
          const row = {
            ...Object.fromEntries(Object.entries(plain).map(([key, value]) => [`delivery.${key}`, value])),
            'delivery.strikeOffset.toe': toe,
            'delivery.strikeOffset.high': high,
            'clubhead.mass': mass,
            'clubhead.inertia.vertical': vertical,
            'clubhead.restitution.atReference': atReference,
            'ball.mass': ballMass,
          } as ListRow;
          const { driver } = clubheads;
          const clubhead = {
            ...driver,
            mass,
            inertia: { ...driver.inertia, vertical },
            restitution: { ...driver.restitution, atReference },
          } as typeof driver;
          const ball = { ...balls.conforming, mass: ballMass } as never;
          const base = {
            clubSpeed: mph(90),
            attackAngle: degrees(0),
            dynamicLoft: degrees(15),
            hand,
          } as Delivery;
          expectSameShot(row, { from: base, scene: { ball } }, from, { clubhead, scene: { ball } });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('is the shot that playShot plays: launches, air, wind, ground and turf', () => {
    fc.assert(
      fc.property(
        fc.record({
          ballSpeed: within('launch.ballSpeed', 15, 90),
          launchAngle: within('launch.launchAngle', 0.1, 0.8),
          launchDirection: within('launch.launchDirection', -0.3, 0.3),
          spinRate: within('launch.spinRate', 100, 900),
          spinAxisTilt: within('launch.spinAxisTilt', -0.5, 0.5),
          rifleSpin: within('launch.rifleSpin', -50, 50),
        }),
        fc.record({
          temperature: within('air.temperature', 265, 315),
          altitude: within('air.altitude', 0, 3000),
          relativeHumidity: within('air.relativeHumidity'),
        }),
        within('wind.speed', 0, 15),
        within('wind.from'),
        within('wind.profile.roughness', 0.001, 0.5),
        fc.record({
          elevation: within('ground.elevation', -20, 5),
          slope: within('ground.slope', -0.05, 0.05),
          crossSlope: within('ground.crossSlope', -0.05, 0.05),
        }),
        within('turf.bounce.friction', 0.2, 0.6),
        within('turf.rollingResistance', 0.1, 0.4),
        (launch, place, speed, origin, roughness, ground, friction, rollingResistance) => {
          const row = {
            ...Object.fromEntries(Object.entries(launch).map(([key, value]) => [`launch.${key}`, value])),
            ...Object.fromEntries(Object.entries(place).map(([key, value]) => [`air.${key}`, value])),
            ...Object.fromEntries(Object.entries(ground).map(([key, value]) => [`ground.${key}`, value])),
            'wind.speed': speed,
            'wind.from': origin,
            'wind.profile.roughness': roughness,
            'turf.bounce.friction': friction,
            'turf.rollingResistance': rollingResistance,
          } as ListRow;
          const profile = { kind: 'log', roughness: metres(roughness) } as const;
          const scene = {
            air: airAtAltitude(place as never),
            wind: windFrom({ speed: metresPerSecond(speed), from: origin as never, profile }),
            ground: ground as never,
            turf: { ...turfs.firm, bounce: { ...turfs.firm.bounce, friction }, rollingResistance },
          };
          expectSameShot(row, { scene: { turf: 'firm' } }, launch as unknown as Launch, { scene });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('takes wind by components, a power law, air by pressure and by density', () => {
    const launch = { ballSpeed: mph(140), launchAngle: degrees(14), spinRate: rpm(2800) };
    const row = {
      'wind.along': metresPerSecond(-6),
      'wind.across': metresPerSecond(3),
      'wind.profile.exponent': 0.2,
    };
    const wind = {
      along: metresPerSecond(-6),
      across: metresPerSecond(3),
      profile: { kind: 'power', exponent: 0.2 } as const,
    };
    expectSameShot({ ...row, 'air.density': 1.1 as never }, { from: launch }, launch, {
      scene: { wind, air: { ...airAt(), density: 1.1 as never } },
    });
    expectSameShot({ ...row, 'air.pressure': 95_000 as never }, { from: launch }, launch, {
      scene: { wind, air: airAt({ pressure: 95_000 as never }) },
    });
  });
});

describe('rows of one batch', () => {
  it('each have their own air, wind and elevation, also after a calm one', () => {
    const launch = { ballSpeed: mph(140), launchAngle: degrees(14), spinRate: rpm(2800) };
    const rows: ListRow[] = [
      [0, 0, 0, 0],
      [8, -3, 25, 2000],
      [-8, 3, -5, 0],
    ].map(([along = 0, across = 0, warm = 0, up = 0]) => ({
      'wind.along': metresPerSecond(along),
      'wind.across': metresPerSecond(across),
      'air.temperature': celsius(warm),
      'air.altitude': metres(up),
      'ground.elevation': metres(-along),
    }));
    const profile = { kind: 'log', roughness: metres(0.03) } as const;
    const calm = { along: metresPerSecond(0), across: metresPerSecond(0), profile };
    const result = sweep({ kind: 'list', rows }, { wind: calm }, { from: launch });
    rows.forEach((row, i) => {
      const scene = {
        air: airAtAltitude({
          altitude: row['air.altitude'] as never,
          temperature: row['air.temperature'] as never,
        }),
        wind: { along: row['wind.along'], across: row['wind.across'], profile } as never,
        ground: { elevation: row['ground.elevation'] as never },
      };
      const shot = playShot(launch, scene);
      expect(columnOf(result, 'carry')[i]).toBeCloseTo(shot.carry, 3);
      expect(columnOf(result, 'flight.side')[i]).toBeCloseTo(shot.flight.side, 3);
      expect(columnOf(result, 'total')[i]).toBeCloseTo(shot.total, 1);
    });
  });
});

describe('a row that cannot be computed', () => {
  const delivery = { clubSpeed: mph(100), attackAngle: degrees(0), dynamicLoft: degrees(12) };
  const outputs: readonly OutputName[] = ['launch.ballSpeed', 'carry', 'run.distance', 'total'];
  const one = (row: ListRow, options: SweepOptions) => {
    const result = sweep({ kind: 'list', rows: [row] }, {}, { outputs, ...options });
    return {
      status: rowStatuses[result.status[0] as number],
      values: outputs.map((name) => columnOf(result, name)[0]),
    };
  };

  it('says that the face never reaches the ball', () => {
    // Level head, face pointing more than a right angle away from its travel.
    const row = { 'delivery.faceAngle': 0.8, 'delivery.clubPath': -0.8 } as unknown as ListRow;
    expect(one(row, { from: delivery })).toEqual({
      status: 'no-strike',
      values: [Number.NaN, Number.NaN, Number.NaN, Number.NaN],
    });
  });

  it('keeps the launch when the ball leaves faster than the flight can be computed', () => {
    const { status, values } = one({ 'delivery.clubSpeed': metresPerSecond(90) }, { from: delivery });
    expect(status).toBe('outside-range');
    expect(values[0]).toBeGreaterThan(110);
    expect(values.slice(1)).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  });

  it('says so when the lengths of a wind profile cannot go together', () => {
    const row = { 'wind.profile.roughness': metres(2), 'wind.profile.referenceHeight': metres(1) };
    expect(one(row, { from: delivery }).status).toBe('outside-range');
  });

  it('describes the last state when the ball does not land in time', () => {
    const { status, values } = one(
      { 'delivery.clubSpeed': mph(100) },
      {
        from: delivery,
        timeLimit: 2 as never,
      },
    );
    const flight = playShot(delivery, {}, { timeLimit: 2 as never });
    expect(status).toBe('time-limit');
    expect(values).toEqual([
      flight.launch.ballSpeed,
      expect.closeTo(flight.carry, 3),
      Number.NaN,
      expect.closeTo(flight.total, 3),
    ]);
  });
});
