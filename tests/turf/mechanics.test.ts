import { describe, expect, test } from 'vitest';
import { balls } from '../../src/ball/index.js';
import {
  defaultAir,
  degrees,
  feet,
  type LandingBall,
  rollingResistanceOfGreen,
  runOut,
  type Scene,
  type Turf,
  toFeet,
  toYards,
  turfs,
} from '../../src/index.js';
import { runConstants } from '../../src/turf/constants.js';
import { hop } from '../../src/turf/hop.js';
import { skid } from '../../src/turf/skid.js';
import { kilogramsPerCubicMetre, seconds } from '../../src/units/index.js';
import { Solver } from '../../src/vendor/odex.js';
import { caught } from '../caught.js';
import { landingBall } from './landing.js';

const VACUUM: Scene = { air: { ...defaultAir, density: kilogramsPerCubicMetre(0) } };
const RADIUS = balls.conforming.radius;

/** A ball on the ground at the given speed down the line, with forward spin [rad/s]. */
function onTheGround(speed: number, forward: number): LandingBall {
  return {
    position: { x: 0, y: 0, z: 0 },
    velocity: { x: speed, y: 0, z: 0 },
    spinRate: Math.abs(forward) as never,
    spinAxis: { x: 0, y: 0, z: forward > 0 ? -1 : 1 },
  };
}

function turf({ bounce, ...changes }: Partial<Omit<Turf, 'bounce'>> & { bounce?: object }): Turf {
  return { ...turfs.normal, ...changes, bounce: { ...turfs.normal.bounce, ...bounce } as Turf['bounce'] };
}

describe('rolling', () => {
  test('a ball released by a stimpmeter rolls its reading', () => {
    const green = turf({ rollingResistance: rollingResistanceOfGreen(feet(10)) });
    const putt = runOut(onTheGround(1.83, 1.83 / RADIUS), { ...VACUUM, turf: green });
    expect(toFeet(putt.distance)).toBeCloseTo(10, 6);
    // Air takes two inches off the putt.
    const inAir = runOut(onTheGround(1.83, 1.83 / RADIUS), { turf: green });
    expect(toFeet(inAir.distance)).toBeGreaterThan(9.75);
    expect(inAir.distance).toBeLessThan(putt.distance);
  });

  test('a sliding ball without spin starts to roll after 12 v²/(49 μ g) at 5 v/7', () => {
    // Textbook problem of the sliding sphere (any mechanics text).
    const v = 3;
    const g = 9.80665;
    const surface = turf({ bounce: { friction: 0.3 }, rollingResistance: 0.1 });
    const expected = (12 * v * v) / (49 * 0.3 * g) + ((5 * v) / 7) ** 2 / (2 * (5 / 7) * 0.1 * g);
    expect(runOut(onTheGround(v, 0), { ...VACUUM, turf: surface }).distance).toBeCloseTo(expected, 9);
  });

  test('straight up and down a slope it stops where the closed form says', () => {
    const surface = turf({ rollingResistance: 0.1 });
    const v = 2;
    const g = 9.80665;
    for (const slope of [3, -3]) {
      const angle = degrees(slope);
      const deceleration = (5 / 7) * g * (0.1 * Math.cos(angle) + Math.sin(angle));
      const run = runOut(
        {
          ...onTheGround(0, v / RADIUS),
          velocity: { x: v * Math.cos(angle), y: v * Math.sin(angle), z: 0 },
        },
        { ...VACUUM, turf: surface, ground: { slope: angle } },
      );
      const expected = ((v * v) / (2 * deceleration)) * Math.cos(angle);
      expect(Math.abs(run.distance - expected)).toBeLessThan(2e-4);
    }
  });

  test('it stays in motion on a slope steeper than the rolling resistance, and only there', () => {
    const ball = landingBall(27, 38, 2100);
    const steepness = Math.atan(turfs.normal.rollingResistance);
    const on = (slope: number) =>
      runOut(ball, { turf: 'normal', ground: { slope: slope as never } }, { timeLimit: seconds(20) });
    expect(on(-steepness * 1.05).ended).toBe('still-rolling');
    expect(on(-steepness * 0.8).ended).toBe('at-rest');
    // Uphill it rolls back and away.
    const back = on(steepness * 1.05);
    expect(back.ended).toBe('still-rolling');
    expect(back.distance).toBeLessThan(0);
  });

  test('a time limit cuts level rolling where the motion is by then', () => {
    const ball = landingBall(27, 38, 2100);
    const whole = runOut(ball);
    const cut = runOut(ball, {}, { timeLimit: seconds(4) });
    expect(cut.ended).toBe('still-rolling');
    expect(cut.distance).toBeLessThan(whole.distance);
    expect(cut.distance).toBeGreaterThan(0.5 * whole.distance);
  });
});

describe('a skid', () => {
  test('agrees with the extrapolation integrator, down a slope and with sidespin too', () => {
    const air = { density: kilogramsPerCubicMetre(1.2) };
    for (const [slope, cross, v, across, back, side, mu] of [
      [0, 0, 44.7, 0, 0, 0, 0.4],
      [0, 0, 30, 2, 400, 150, 0.4],
      [-0.08, 0.05, 20, -1, 0, -300, 0.2],
      [0.1, -0.05, 12, 0, 600, 0, 1],
    ] as const) {
      const surface = turf({ bounce: { friction: mu } });
      const constants = (limit: number) => runConstants(surface, balls.conforming, air, slope, cross, limit);
      const start = Float64Array.from([0, 0, 0, v, 0, across, side, 0, back, 0]);
      const whole = start.slice();
      skid(constants(60), whole);
      // It rolls at the end.
      expect((whole[3] as number) + RADIUS * (whole[8] as number)).toBeCloseTo(0, 12);
      expect((whole[5] as number) - RADIUS * (whole[6] as number)).toBeCloseTo(0, 12);
      // Compared short of that, where friction has a direction.
      const limit = 0.9 * (whole[9] as number);
      const c = constants(limit);
      const s = start.slice();
      skid(c, s);
      const grip = mu * c.gravityInto;
      const solver = new Solver(6);
      solver.absoluteTolerance = 1e-12;
      solver.relativeTolerance = 1e-12;
      // Slip in place of spin.
      const end = solver.solve(
        (_, y) => {
          const [, , a = 0, b = 0, p = 0, q = 0] = y;
          const drag = c.skidDrag * Math.hypot(a, b);
          const slip = Math.hypot(p, q);
          const [fx, fz] = [(-grip * p) / slip, (-grip * q) / slip];
          const [ax, az] = [c.gravityAlong - drag * a, c.gravityAcross - drag * b];
          return [a, b, fx + ax, fz + az, fx / c.gripShare + ax, fz / c.gripShare + az];
        },
        0,
        [0, 0, v, across, v + RADIUS * back, across - RADIUS * side],
        limit,
      ).y;
      expect(s[9]).toBe(limit);
      expect(Math.abs((s[0] as number) - (end[0] as number))).toBeLessThan(1e-4);
      expect(Math.abs((s[2] as number) - (end[1] as number))).toBeLessThan(1e-4);
      expect(Math.abs((s[3] as number) - (end[2] as number))).toBeLessThan(2e-4);
      expect(Math.abs((s[5] as number) - (end[3] as number))).toBeLessThan(2e-4);
    }
  });

  test('a ball at 100 mph without spin runs 154 yd on the flat', () => {
    // Integrated by scipy.integrate.solve_ivp at 1e-11: 153.80 yd with friction 0.4, 148.77 with 0.998 (air 1.1993 kg/m³).
    const run = (turf: 'normal' | 'pennerNormal') =>
      toYards(runOut(onTheGround(100 * 0.44704, 0), { turf }).distance);
    expect(run('pennerNormal')).toBeCloseTo(153.8, 1);
    expect(run('normal')).toBeCloseTo(148.77, 1);
  });
});

describe('a hop', () => {
  test('agrees with the extrapolation integrator', () => {
    const c = runConstants(
      turfs.normal,
      balls.conforming,
      { density: kilogramsPerCubicMetre(1.2) },
      0.05,
      0.03,
      60,
    );
    for (const [vx, vy, vz] of [
      [20, 3, 1],
      [10, 9, -2],
      [25, 1, 0],
      [5, 0.5, 0.1],
    ] as const) {
      const s = Float64Array.from([0, 0, 0, vx, vy, vz, 0, 0, 0, 0]);
      hop(c, s);
      const solver = new Solver(6);
      solver.absoluteTolerance = 1e-12;
      solver.relativeTolerance = 1e-12;
      const end = solver.solve(
        (_, y) => {
          const [, , , a = 0, b = 0, d = 0] = y;
          const k = c.hopDrag * Math.hypot(a, b, d);
          return [a, b, d, c.gravityAlong - k * a, -c.gravityInto - k * b, c.gravityAcross - k * d];
        },
        0,
        [0, 0, 0, vx, vy, vz],
        s[9] as number,
      ).y;
      for (const i of [0, 1, 2]) expect(Math.abs((s[i] as number) - (end[i] as number))).toBeLessThan(1e-5);
    }
  });
});

describe('sidespin', () => {
  test('a wall without friction takes no notice of spin; with friction it kicks against the slip', () => {
    // Clockwise from above, straight down the line: the front of the ball moves right, so the wall pushes it left.
    const ball = landingBall(25, 40, 2500, { tilt: 30 });
    expect(runOut(ball).side).toBeLessThan(-0.2);
    expect(Math.abs(runOut(landingBall(25, 40, 2500)).side)).toBe(0);
    // Rifle spin, right-handed about the travel: the bottom moves left, so the turf pushes the ball right.
    const rifle = { ...landingBall(25, 40, 0), spinRate: 200 as never, spinAxis: { x: 1, y: 0, z: 0 } };
    expect(runOut(rifle).side).toBeGreaterThan(0.2);
  });
});

describe('bad input', () => {
  const ball = landingBall(27, 38, 2100);
  test.each([
    ['scene.turf', () => runOut(ball, { turf: 'hard' as never })],
    ['scene.turf.bounce.friction', () => runOut(ball, { turf: turf({ bounce: { friction: 0 } }) })],
    ['scene.turf.rollingResistance', () => runOut(ball, { turf: turf({ rollingResistance: Number.NaN }) })],
    ['scene.turf.bounce.tilt', () => runOut(ball, { turf: turf({ bounce: { tilt: 18.4 } }) })],
    ['scene.turf.bounce.tiltCap', () => runOut(ball, { turf: turf({ bounce: { tiltCap: 0.5 } }) })],
    ['scene.turf.bounce.model', () => runOut(ball, { turf: turf({ bounce: { model: 'mud' } }) })],
    ['scene.ground.slope', () => runOut(ball, { ground: { slope: 5 as never } })],
    ['scene.ground.incline', () => runOut(ball, { ground: { incline: 5 } as never })],
    ['options.slope', () => runOut(ball, {}, { slope: 5 } as never)],
    ['options.timeLimit', () => runOut(ball, {}, { timeLimit: seconds(1e9) })],
    ['landing.velocity.x', () => runOut({ ...ball, velocity: { x: Number.NaN, y: 0, z: 0 } })],
    ['landing.velocity', () => runOut({ ...ball, velocity: undefined as never })],
    ['landing.spinRate', () => runOut({ ...ball, spinRate: -1 as never })],
    ['landing.spinAxis', () => runOut({ ...ball, spinAxis: { x: 0, y: 0, z: 0 } })],
    ['distance', () => rollingResistanceOfGreen(10 as never)],
  ])('%s is refused by name', (field, call) => {
    expect(caught(call).field).toBe(field);
  });
});

test('landings outside the tested range say so, inside they do not', () => {
  for (const turf of ['normal', 'pennerNormal'] as const) {
    expect(runOut(landingBall(27, 38, 2100), { turf }).warnings).toEqual([]);
  }
  // A low drive: bounces down to 16° have been measured, and up to 38.7 m/s.
  expect(runOut(landingBall(31, 20, 2100)).warnings).toEqual([]);
  const [low, fast] = [runOut(landingBall(31, 12, 2100)), runOut(landingBall(40, 20, 2100))];
  expect(low.warnings.map((w) => [w.model, w.quantity])).toEqual([['biber-2023', 'descentAngle']]);
  expect(fast.warnings.map((w) => [w.model, w.quantity])).toEqual([['biber-2023', 'landingSpeed']]);
  expect(runOut(landingBall(31, 20, 2100), { turf: 'pennerNormal' }).warnings.map((w) => w.quantity)).toEqual(
    ['landingSpeed', 'descentAngle'],
  );
});

test.each([
  ['normal', 0.25],
  ['pennerNormal', 0.65],
] as const)('the band on %s is what the outside rows left of its model, %d either way', (turf, share) => {
  // Twice the rms of error over run: tests/published/bounce-models.test.ts holds the shares to the rows.
  const run = runOut(landingBall(27, 38, 2100), { turf });
  expect(run.band.low).toBeCloseTo((1 - share) * run.distance, 12);
  expect(run.band.high).toBeCloseTo((1 + share) * run.distance, 12);
});
