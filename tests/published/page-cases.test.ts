import { describe, expect, it } from 'vitest';
import {
  type Air,
  type AirPlace,
  type AirState,
  airAt,
  airAtAltitude,
  type Clubhead,
  clubheads,
  type Delivery,
  type Flight,
  fly,
  type LandingBall,
  type Launch,
  playShot,
  rollingResistanceOfGreen,
  runOut,
  type Scene,
  type Strike,
  strike,
  turfs,
} from '../../src/index.js';
import type { Run } from '../../src/turf/index.js';
import { si } from '../../src/units/index.js';
import data from './data/page-cases.json' with { type: 'json' };

/**
 * The library against from_page, a script written from docs/models.md alone: is the page enough to compute a shot, and
 * does the library do what its page says? Places agree to 1 mm, angles to 0.01°, spins to 1 rpm, speeds to 1 mm/s, times
 * to 1 ms, and what is dimensionless to 1e-6. The time to rest agrees to 5 ms: on a slope the library rests at the end of
 * a step.
 */
type Numbers = Readonly<Record<string, unknown>>;
interface Case {
  readonly id: string;
  readonly kind: 'flight' | 'strike' | 'run' | 'shot';
  readonly launch: Launch;
  readonly delivery: Delivery;
  readonly clubhead: keyof typeof clubheads;
  readonly changes: Partial<Clubhead>;
  readonly gearElasticity: number;
  readonly landing: Numbers;
  readonly scene: Numbers;
  readonly result: Numbers;
}

const MILLIMETRE = 1e-3;
const ANGLE = (0.01 * Math.PI) / 180;
const RPM = Math.PI / 30;
const RATIO = 1e-6;
const MILLISECOND = 1e-3;

const cases = data.rows as unknown as readonly Case[];

/** A scene as the cases have it: air by its weather or altitude, a green by its speed. */
function sceneOf({ air, turf, greenSpeed, ...rest }: Numbers): Scene {
  const preset = turfs[(turf ?? 'normal') as keyof typeof turfs];
  return {
    ...rest,
    ...(air !== undefined && { air: airOf(air as Partial<Air & AirPlace & AirState>) }),
    turf:
      greenSpeed === undefined
        ? preset
        : { ...preset, rollingResistance: rollingResistanceOfGreen(si(greenSpeed as number)) },
  };
}

function airOf(given: Partial<Air & AirPlace & AirState>): Air {
  if (given.density !== undefined) return given as Air;
  return given.altitude === undefined ? airAt(given) : airAtAltitude(given as AirPlace);
}

function vector([x, y, z]: readonly number[]): Record<'x' | 'y' | 'z', number> {
  return { x: x as number, y: y as number, z: z as number };
}

function landingOf({ position, velocity, spinRate, spinAxis }: Numbers): LandingBall {
  return {
    position: vector(position as number[]),
    velocity: vector(velocity as number[]),
    spinRate: si(spinRate as number),
    spinAxis: vector(spinAxis as number[]),
  };
}

/** What each figure of a result may differ by; what is not named must be the same. */
const TOLERANCES: Readonly<Record<string, number>> = {
  position: MILLIMETRE,
  restsAt: MILLIMETRE,
  carry: MILLIMETRE,
  total: MILLIMETRE,
  side: MILLIMETRE,
  curve: MILLIMETRE,
  apex: MILLIMETRE,
  apexAt: MILLIMETRE,
  distance: MILLIMETRE,
  hopHeight: MILLIMETRE,
  velocity: MILLIMETRE,
  ballSpeed: MILLIMETRE,
  clubSpeedAfter: MILLIMETRE,
  speedBefore: MILLIMETRE,
  speedAfter: MILLIMETRE,
  launchAngle: ANGLE,
  launchDirection: ANGLE,
  spinAxisTilt: ANGLE,
  descentAngle: ANGLE,
  spinLoft: ANGLE,
  faceToPath: ANGLE,
  spinRate: RPM,
  rifleSpin: RPM,
  backspin: RPM,
  sidespin: RPM,
  gearBackspin: RPM,
  gearSidespin: RPM,
  backspinAfter: RPM,
  hangTime: MILLISECOND,
  time: MILLISECOND,
  duration: 5 * MILLISECOND,
  spinAxis: RATIO,
  smashFactor: RATIO,
  restitution: RATIO,
  tangentialRestitution: RATIO,
};

/** Every figure of the expected result that the library misses, as text. */
function misses(expected: unknown, found: unknown, name: string, tolerance?: number): string[] {
  if (typeof expected === 'number' && tolerance !== undefined) {
    return Math.abs(expected - Number(found)) <= tolerance ? [] : [`${name}: ${expected}, not ${found}`];
  }
  if (typeof expected !== 'object' || expected === null) {
    return expected === found ? [] : [`${name}: ${expected}, not ${found}`];
  }
  const from = found as Record<string, unknown>;
  return Object.entries(expected).flatMap(([key, value]) =>
    misses(value, from[key], `${name}.${key}`, TOLERANCES[key] ?? tolerance),
  );
}

const list = ({ x, y, z }: Record<'x' | 'y' | 'z', number>): number[] => [x, y, z];

function flightFigures(flight: Flight): Numbers {
  const { position, velocity, spinRate, spinAxis } = flight.landing;
  return {
    ...flight,
    position: list(position),
    velocity: list(velocity),
    spinRate,
    spinAxis: list(spinAxis),
  };
}

function strikeFigures(struck: Strike): Numbers {
  const { backspin, sidespin } = struck.gearEffect;
  return { ...struck, gearBackspin: backspin, gearSidespin: sidespin };
}

function runFigures(run: Run): Numbers {
  const first = run.bounces.slice(0, 3).map((bounce) => ({ ...bounce, position: list(bounce.position) }));
  return { ...run, restsAt: list(run.restsAt), bounces: run.bounces.length, firstBounces: first };
}

function computed({ kind, scene, ...row }: Case): Numbers {
  const clubhead = { ...clubheads[row.clubhead], ...row.changes };
  if (kind === 'strike')
    return strikeFigures(strike(row.delivery, { clubhead, gearElasticity: row.gearElasticity }));
  if (kind === 'flight') return flightFigures(fly(row.launch, sceneOf(scene)));
  if (kind === 'run') return runFigures(runOut(landingOf(row.landing), sceneOf(scene)));
  const shot = playShot(row.delivery, sceneOf(scene), { clubhead });
  return {
    total: shot.total,
    side: shot.side,
    strike: shot.strike && strikeFigures(shot.strike),
    flight: flightFigures(shot.flight),
    run: shot.run && runFigures(shot.run),
  };
}

describe('a hundred cases computed from docs/models.md alone', () => {
  it('are a hundred, of every kind', () => {
    expect(cases.length).toBe(100);
    expect(new Set(cases.map(({ kind }) => kind)).size).toBe(4);
    expect(new Set(cases.flatMap(({ scene }) => scene?.['turf'] ?? [])).size).toBe(Object.keys(turfs).length);
    expect(new Set(cases.flatMap(({ clubhead }) => clubhead ?? [])).size).toBe(Object.keys(clubheads).length);
  });

  it.each(cases)('$kind: $id', (row) => {
    expect(misses(row.result, computed(row), row.kind)).toEqual([]);
  });
});
