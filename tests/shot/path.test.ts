import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balls } from '../../src/ball/index.js';
import {
  type BallState,
  defaultAir,
  degrees,
  type Flight,
  fly,
  isFairflightError,
  type Launch,
  metres,
  metresPerSecond,
  pathOf,
  playShot,
  rpm,
  type Scene,
  type Shot,
  seconds,
  stateAt,
  type TurfName,
  turfs,
} from '../../src/index.js';
import { runConstants } from '../../src/turf/constants.js';
import { hop } from '../../src/turf/hop.js';
import { newRunRecord } from '../../src/turf/record.js';
import { roll } from '../../src/turf/roll.js';
import { kilogramsPerCubicMetre } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { even } from '../even.js';

const NAMES = Object.keys(turfs) as TurfName[];
const anyLaunch: fc.Arbitrary<Launch> = fc
  .record({ v: even(10, 90), up: even(2, 45), side: even(-20, 20), spin: even(0, 9000), tilt: even(-50, 50) })
  .map(({ v, up, side, spin, tilt }) => ({
    ballSpeed: metresPerSecond(v),
    launchAngle: degrees(up),
    launchDirection: degrees(side),
    spinRate: rpm(spin),
    spinAxisTilt: degrees(tilt),
  }));
const anyGround = fc.record({
  elevation: even(-20, 0).map(metres),
  slope: even(-9, 9).map(degrees),
  crossSlope: even(-9, 9).map(degrees),
});
const anyScene: fc.Arbitrary<Scene> = fc.record({ ground: anyGround, turf: fc.constantFrom(...NAMES) });
const levelScene: fc.Arbitrary<Scene> = fc.record({ turf: fc.constantFrom(...NAMES) });
const runs = { numRuns: 150 };

function groundAt(scene: Scene, { position: { x, z } }: BallState): number {
  const { elevation = 0, slope = 0, crossSlope = 0 } = scene.ground ?? {};
  return elevation + Math.tan(slope) * x + Math.tan(crossSlope) * z;
}

const endOf = (shot: Shot): number => shot.flight.hangTime + (shot.run?.duration ?? 0);
const drive: Launch = { ballSpeed: metresPerSecond(74), launchAngle: degrees(11), spinRate: rpm(2600) };

test('the path of a shot goes from its start to where it rests, and its time is flight and run', () => {
  fc.assert(
    fc.property(anyLaunch, anyScene, fc.constantFrom(0, 1), (launch, scene, by) => {
      const shot = playShot(launch, scene);
      const path = pathOf(shot, by === 0 ? { count: 77 } : { spacing: metres(3) });
      expect(path[0]?.position).toEqual({ x: 0, y: 0, z: 0 });
      expect(path[0]?.time).toBe(0);
      const last = path.at(-1) as BallState;
      expect(last.time).toBe(endOf(shot));
      if (shot.run?.ended === 'at-rest') {
        expect(last.position).toEqual(shot.run.restsAt);
        expect(last.speed).toBe(0);
        expect(last.position.y).toBe(groundAt(scene, last));
      }
    }),
    runs,
  );
});

test('it meets the ground where the shot says it does, to the last bit, and is never below it', () => {
  fc.assert(
    fc.property(anyLaunch, anyScene, (launch, scene) => {
      const shot = playShot(launch, scene);
      expect(stateAt(shot, shot.flight.hangTime)).toMatchObject({ position: shot.flight.landing.position });
      for (const { time, position, speedBefore } of shot.run?.bounces ?? []) {
        const state = stateAt(shot, shot.flight.hangTime + time);
        expect(state.position).toEqual(position);
        expect(state.position.y).toBe(groundAt(scene, state));
        // A ball that rests where it falls is at rest there.
        expect(state.speed).toBeCloseTo(state.time < endOf(shot) ? speedBefore : 0, 6);
      }
      for (const state of pathOf(shot, { count: 300 })) {
        expect(state.position.y - groundAt(scene, state)).toBeGreaterThan(-1e-9);
      }
    }),
    runs,
  );
});

test('it is continuous: no step is longer than the greatest speed allows', () => {
  fc.assert(
    fc.property(anyLaunch, anyScene, (launch, scene) => {
      const path = pathOf(playShot(launch, scene), { count: 2000 });
      const fastest = Math.max(...path.map(({ speed }) => speed));
      for (let i = 1; i < path.length; i++) {
        const [a, b] = [path[i - 1] as BallState, path[i] as BallState];
        const step = Math.hypot(
          b.position.x - a.position.x,
          b.position.y - a.position.y,
          b.position.z - a.position.z,
        );
        expect(step).toBeLessThan(1.05 * fastest * (b.time - a.time) + 1e-6);
      }
    }),
    { numRuns: 30 },
  );
});

test('on level ground energy never rises in hops, at contacts and in the roll', () => {
  const { mass, inertia } = balls.conforming;
  fc.assert(
    fc.property(anyLaunch, levelScene, (launch, scene) => {
      const shot = playShot(launch, scene);
      if (shot.run === undefined) return;
      const { time, state } = shot.run.track;
      let before = Number.POSITIVE_INFINITY;
      // At the nodes, where the spin is exact.
      for (let n = 0; n < time.length; n++) {
        const [, y = 0, , vx = 0, vy = 0, vz = 0, w = 0] = state.slice(7 * n, 7 * n + 7);
        const energy =
          (mass * (vx * vx + vy * vy + vz * vz) + inertia * w * w) / 2 + mass * 9.80665 * Math.max(0, y);
        expect(energy).toBeLessThanOrEqual(before * (1 + 1e-9));
        before = energy;
      }
    }),
    runs,
  );
});

test('left and right are mirror images', () => {
  fc.assert(
    fc.property(anyLaunch, anyGround, (launch, ground) => {
      const mirrored: Launch = {
        ...launch,
        launchDirection: degrees(-(launch.launchDirection ?? 0) * (180 / Math.PI)),
        spinAxisTilt: degrees(-(launch.spinAxisTilt ?? 0) * (180 / Math.PI)),
      };
      const other = { ...ground, crossSlope: -ground.crossSlope as never };
      const a = pathOf(playShot(launch, { ground }), { count: 60, as: 'xyz' });
      const b = pathOf(playShot(mirrored, { ground: other }), { count: 60, as: 'xyz' });
      a.forEach((value, i) => {
        // Single precision, and 0.1 mm where a hop more or less is a matter of rounding.
        expect(Math.abs(value - (i % 3 === 2 ? -1 : 1) * (b[i] as number))).toBeLessThan(2e-4);
      });
    }),
    runs,
  );
});

describe('between its nodes the path is the integrator’s', () => {
  const run = fc.record({ v: even(1, 60), up: even(0.5, 25), across: even(-8, 8) });
  const ground = fc.record({
    slope: even(-0.2, 0.2),
    cross: even(-0.2, 0.2),
    turf: fc.constantFrom(...NAMES),
  });

  /** Greatest distance of the kernel's own state at a time limit from the path of the run without one [m]. */
  function miss(level: boolean, phase: 'hop' | 'roll'): number {
    let worst = 0;
    fc.assert(
      fc.property(run, ground, even(0, 1), ({ v, up, across }, { slope, cross, turf }, part) => {
        const tilt = level ? 0 : 1;
        const make = (limit: number) =>
          runConstants(turfs[turf], balls.conforming, defaultAir, tilt * slope, tilt * cross, limit);
        // Without slip, since a skid takes its air drag in the middle, which a limit moves.
        const spin = [across / balls.conforming.radius, 0, -v / balls.conforming.radius];
        const start = Float64Array.from([0, 0, 0, v, phase === 'hop' ? up : 0, across, ...spin, 0]);
        const record = newRunRecord();
        const whole = start.slice();
        const kernel = phase === 'hop' ? hop : roll;
        kernel(make(12), whole, record);
        const cut = start.slice();
        kernel(make(part * (whole[9] as number)), cut);
        worst = Math.max(worst, distanceFrom(record.nodes.subarray(0, record.nodesUsed), cut));
      }),
      { numRuns: 400 },
    );
    return worst;
  }

  /** Reads the nodes as `stateAt` does, by way of a flight made of them. */
  function distanceFrom(nodes: Float64Array, [x = 0, y = 0, z = 0, , , , , , , t = 0]: Float64Array): number {
    const track = { time: [] as number[], state: [] as number[], acceleration: [] as number[] };
    for (let i = 0; i < nodes.length; i += 11) {
      track.time.push(nodes[i] as number);
      track.state.push(...nodes.slice(i + 1, i + 8));
      track.acceleration.push(...nodes.slice(i + 8, i + 11));
    }
    const flight: Flight = { ...fly(drive), track };
    const end = track.time.at(-1) as number;
    const { position } = stateAt(flight, Math.min(t, end));
    return Math.hypot(position.x - x, position.y - y, position.z - z);
  }

  // Hops so high that the turf takes nothing from them, since a limit cuts a hop before its turf is counted.
  test('in a hop, to 1 mm', () => {
    expect(miss(true, 'hop')).toBeLessThan(1e-3);
  });
  test('in a roll on the level, to 1 mm', () => {
    expect(miss(true, 'roll')).toBeLessThan(1e-3);
  });
  test('in a roll on a slope, to 1 mm', () => {
    expect(miss(false, 'roll')).toBeLessThan(1e-3);
  });
});

test('in a vacuum a hop up a slope is a parabola', () => {
  const air = { density: kilogramsPerCubicMetre(0), viscosity: defaultAir.viscosity };
  const ground = { slope: degrees(12), crossSlope: degrees(5) };
  const shot = playShot({ ...drive, launchAngle: degrees(40) }, { air, ground, turf: 'baked' });
  const { time, state } = shot.run?.track ?? { time: [], state: [] };
  const [from, to] = [time[0] as number, time.findIndex((t, n) => n > 0 && t === time[n + 1])];
  expect(to).toBeGreaterThan(1);
  const [, y0 = 0, , , vy0 = 0] = state;
  for (let n = 1; n <= to; n++) {
    const t = (time[n] as number) - from;
    expect(state[7 * n + 1]).toBeCloseTo(y0 + vy0 * t - (9.80665 * t * t) / 2, 6);
  }
});

describe('forms', () => {
  const shot = playShot(drive, { ground: { slope: degrees(1) } });

  test('numbers are those of the states, in single precision', () => {
    const states = pathOf(shot, { count: 50 });
    const flat = pathOf(shot, { count: 50, as: 'xyzt' });
    expect(flat).toBeInstanceOf(Float32Array);
    expect([...flat]).toEqual(
      states.flatMap(({ position: { x, y, z }, time }) => [x, y, z, time].map(Math.fround)),
    );
    expect(pathOf(shot, { count: 50, as: 'xyz' })).toHaveLength(150);
  });

  test('spacing is even over the ground', () => {
    const states = pathOf(shot, { spacing: metres(0.5) });
    const steps = states.slice(1).map((state, i) => {
      const { x, z } = (states[i] as BallState).position;
      return Math.hypot(state.position.x - x, state.position.z - z);
    });
    expect(Math.max(...steps)).toBeLessThan(0.5001);
    // A chord across the turn of a hop is shorter than the track.
    expect(Math.min(...steps)).toBeGreaterThan(0.49);
  });

  test('a shot that went through JSON has the same path', () => {
    const copy = JSON.parse(JSON.stringify(shot)) as Shot;
    expect(pathOf(copy, { spacing: metres(2), as: 'xyzt' })).toEqual(
      pathOf(shot, { spacing: metres(2), as: 'xyzt' }),
    );
    expect(structuredClone(shot)).toEqual(shot);
  });

  test('the flight alone ends where it lands', () => {
    const path = pathOf(shot.flight, { count: 9 });
    expect(path.at(-1)?.position).toEqual(shot.flight.landing.position);
    expect(path.at(-1)?.time).toBe(shot.flight.hangTime);
  });
});

describe('endings other than a rest', () => {
  test('a time limit in the air, and a green above the apex: the path of the flight', () => {
    const cut = playShot(drive, {}, { timeLimit: seconds(2) });
    expect(pathOf(cut, { count: 5 }).at(-1)?.time).toBe(2);
    const under = playShot(drive, { ground: { elevation: metres(100) } });
    expect(pathOf(under, { spacing: metres(5) }).at(-1)?.position).toEqual(under.flight.landing.position);
  });

  test('a ball still rolling after a minute', () => {
    const shot = playShot(drive, { ground: { slope: degrees(-16) } });
    expect(shot.run?.ended).toBe('still-rolling');
    const last = pathOf(shot, { count: 400 }).at(-1) as BallState;
    expect(last.position).toEqual(shot.run?.restsAt);
    expect(last.speed).toBeGreaterThan(1);
  });

  test('a topped shot stays where it is', () => {
    const shot = playShot({ ...drive, launchAngle: degrees(-3) });
    for (const options of [{ count: 3 }, { spacing: metres(1) }]) {
      for (const { position, time } of pathOf(shot, options)) {
        expect(position).toEqual({ x: 0, y: 0, z: 0 });
        expect(time).toBe(0);
      }
    }
  });
});

describe('bad input', () => {
  const shot = playShot(drive);
  test.each([
    ['of', () => pathOf({} as never, { count: 5 })],
    ['of', () => stateAt(null as never, 1)],
    ['options', () => pathOf(shot, {} as never)],
    ['options', () => pathOf(shot, { count: 5, spacing: metres(1) } as never)],
    ['options.count', () => pathOf(shot, { count: 1 })],
    ['options.count', () => pathOf(shot, { count: 2.5 })],
    ['options.spacing', () => pathOf(shot, { spacing: metres(0) })],
    ['options.as', () => pathOf(shot, { count: 5, as: 'xy' as never })],
    ['options.every', () => pathOf(shot, { count: 5, every: 1 } as never)],
    ['time', () => stateAt(shot, endOf(shot) + 1e-9)],
  ])('%s is refused by name', (field, call) => {
    expect(caught(call).field).toBe(field);
  });
});

describe('a record that somebody has had hands on', () => {
  const shot = playShot(drive);
  const { flight, run } = shot;
  const withFlight = (track: object): Shot =>
    ({ ...shot, flight: { ...flight, track: { ...flight.track, ...track } } }) as Shot;
  const withRun = (track: object): Shot =>
    ({ ...shot, run: { ...run, track: { ...run?.track, ...track } } }) as Shot;
  const put = (list: readonly number[], at: number, value: unknown) =>
    list.map((x, i) => (i === at ? value : x));

  test.each([
    ['shot.flight', { ...shot, flight: null }],
    ['shot.run', { ...shot, run: 'long' }],
    ['shot.flight.track', { ...shot, flight: { ...flight, track: undefined } }],
    ['flight.track.time', { ...flight, track: {} }],
    ['shot.flight.track.time', withFlight({ time: [], state: [], acceleration: [] })],
    ['shot.flight.track.time[2]', withFlight({ time: put(flight.track.time, 2, 0) })],
    ['shot.flight.track.time[1]', withFlight({ time: put(flight.track.time, 1, '0.1') })],
    ['shot.flight.track.state', withFlight({ state: flight.track.state.slice(1) })],
    ['shot.flight.track.state[8]', withFlight({ state: put(flight.track.state, 8, null) })],
    ['shot.flight.track.acceleration', withFlight({ acceleration: undefined })],
    ['shot.run.track.state[3]', withRun({ state: put(run?.track.state ?? [], 3, Number.NaN) })],
    ['shot.run.track.time[0]', withRun({ time: put(run?.track.time ?? [], 0, -1) })],
  ])('is refused at %s', (field, damaged) => {
    expect(caught(() => pathOf(damaged as never, { count: 5 })).field).toBe(field);
    expect(caught(() => stateAt(damaged as never, 0)).field).toBe(field);
  });

  test('or gives numbers', () => {
    const columns = ['time', 'state', 'acceleration'] as const;
    const part = fc.constantFrom('flight', 'run');
    const value = fc.constantFrom(0, -0, 5e-324, 1e-300, -1e9, 1e9, 7, 1e-15, Number.NaN, undefined, 'x');
    fc.assert(
      fc.property(part, fc.constantFrom(...columns), even(0, 1), value, (which, column, where, x) => {
        const copy = JSON.parse(JSON.stringify(shot));
        const list = copy[which].track[column];
        list[Math.floor(where * (list.length - 1))] = x;
        let points: Float32Array;
        try {
          points = pathOf(
            copy,
            where < 0.5 ? { count: 50, as: 'xyzt' } : { spacing: metres(900), as: 'xyzt' },
          );
        } catch (error) {
          expect(isFairflightError(error)).toBe(true);
          return;
        }
        expect(points.every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
