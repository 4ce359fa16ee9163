import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { balls } from '../../src/ball/index.js';
import { defaultAir, degrees, runOut, type TurfName, turfs } from '../../src/index.js';
import { bounce } from '../../src/turf/bounce.js';
import { runConstants } from '../../src/turf/constants.js';
import { hop } from '../../src/turf/hop.js';
import { kilogramsPerCubicMetre, radians } from '../../src/units/index.js';
import { anyOf, even } from '../even.js';
import { landingBall } from './landing.js';

const NAMES = Object.keys(turfs) as TurfName[];
/** Fairways from hard to soft, by either model. */
const FAIRWAYS: readonly (readonly TurfName[])[] = [
  ['baked', 'firm', 'normal', 'soft', 'wet'],
  ['pennerBaked', 'pennerFirm', 'pennerNormal', 'pennerSoft', 'pennerWet'],
];
const turfName = fc.constantFrom(...NAMES);
/** Landings of full shots, somewhat wider than the range the model was tested for. */
const fullShot = { speed: even(15, 32), descent: even(25, 60), backspin: even(0, 7000) };

test('left and right are mirror images', () => {
  fc.assert(
    fc.property(
      fc.record({ ...fullShot, heading: even(-30, 30), tilt: even(-40, 40), cross: even(-8, 8) }),
      turfName,
      ({ speed, descent, backspin, heading, tilt, cross }, turf) => {
        const right = runOut(landingBall(speed, descent, backspin, { heading, tilt }), {
          turf,
          ground: { crossSlope: degrees(cross) },
        });
        const left = runOut(landingBall(speed, descent, backspin, { heading: -heading, tilt: -tilt }), {
          turf,
          ground: { crossSlope: degrees(-cross) },
        });
        expect(left.restsAt.x).toBeCloseTo(right.restsAt.x, 9);
        expect(left.restsAt.z).toBeCloseTo(-right.restsAt.z, 9);
        expect(left.side).toBeCloseTo(-right.side, 9);
      },
    ),
  );
});

test('turning the landing about the vertical turns the run with it', () => {
  fc.assert(
    fc.property(fc.record({ ...fullShot, heading: even(-180, 180), tilt: even(-40, 40) }), (shot) => {
      const plain = runOut(landingBall(shot.speed, shot.descent, shot.backspin, { tilt: shot.tilt }));
      const turned = runOut(landingBall(shot.speed, shot.descent, shot.backspin, shot));
      expect(turned.distance).toBeCloseTo(plain.distance, 8);
      expect(turned.side).toBeCloseTo(plain.side, 8);
    }),
  );
});

test('a bounce never gains energy, on any turf, with any spin', () => {
  const c = NAMES.map((name) =>
    runConstants(turfs[name], balls.conforming, { density: kilogramsPerCubicMetre(1.2) }, 0, 0, 60),
  );
  const component = anyOf(-800, 800);
  fc.assert(
    fc.property(
      fc.record({ vx: even(-60, 60), into: anyOf(0.01, 80), vz: even(-60, 60) }),
      fc.tuple(component, component, component),
      fc.nat({ max: NAMES.length - 1 }),
      ({ vx, into, vz }, spin, which) => {
        const s = Float64Array.from([0, 0, 0, vx, -into, vz, ...spin, 0]);
        const before = energy(s);
        bounce(c[which] as (typeof c)[number], s);
        expect(energy(s)).toBeLessThanOrEqual(before * (1 + 1e-12));
        expect(s[4]).toBeGreaterThanOrEqual(0);
      },
    ),
    { numRuns: 2000 },
  );
});

function energy(s: Float64Array): number {
  const [, , , vx = 0, vy = 0, vz = 0, wx = 0, wy = 0, wz = 0] = s;
  const { mass, inertia } = balls.conforming;
  return (mass * (vx * vx + vy * vy + vz * vz) + inertia * (wx * wx + wy * wy + wz * wz)) / 2;
}

test('a hop never gains energy on level ground, however low it is and with any spin', () => {
  const c = NAMES.map((name) =>
    runConstants(turfs[name], balls.conforming, { density: kilogramsPerCubicMetre(1.2) }, 0, 0, 60),
  );
  const component = even(-800, 800);
  fc.assert(
    fc.property(
      fc.record({ vx: even(-5, 5), up: even(0.22, 0.5), vz: even(-5, 5) }),
      fc.tuple(component, component, component),
      fc.nat({ max: NAMES.length - 1 }),
      ({ vx, up, vz }, spin, which) => {
        const s = Float64Array.from([0, 0, 0, vx, up, vz, ...spin, 0]);
        const before = energy(s);
        hop(c[which] as (typeof c)[number], s);
        expect(energy(s)).toBeLessThanOrEqual(before * (1 + 1e-9));
      },
    ),
    { numRuns: 2000 },
  );
});

test('the contact stops where friction can stop it, and else takes all that friction gives', () => {
  // Limit of grip of a solid sphere on a flat wall: μ = 2 (v + r ω)/(7 (1 + e) v_n) (any mechanics text).
  const r = balls.conforming.radius;
  fc.assert(
    fc.property(
      fc.record({ v: even(0, 40), into: even(1, 40), spin: even(-400, 900) }),
      even(0.01, 1.5),
      even(0, 0.9),
      ({ v, into, spin }, friction, restitution) => {
        const flat = { model: 'biber-2023' as const, tilt: radians(0), restitution, friction };
        const turf = { ...turfs.normal, bounce: flat };
        const c = runConstants(turf, balls.conforming, { density: kilogramsPerCubicMetre(1.2) }, 0, 0, 60);
        const s = Float64Array.from([0, 0, 0, v, -into, 0, 0, 0, spin, 0]);
        bounce(c, s);
        const [, , , after = 0, up = 0, , , , spinAfter = 0] = s;
        const slip = v + r * spin;
        expect(up).toBeCloseTo(restitution * into, 10);
        if (friction >= (2 * Math.abs(slip)) / (7 * (1 + restitution) * into)) {
          expect(after + r * spinAfter).toBeCloseTo(0, 9);
        } else {
          expect(v - after).toBeCloseTo(Math.sign(slip) * friction * (1 + restitution) * into, 9);
        }
        // Friction passes through the contact: angular momentum about it stays, 2/5 r² ω − r v.
        expect((2 / 5) * r * spinAfter - after).toBeCloseTo((2 / 5) * r * spin - v, 9);
      },
    ),
    { numRuns: 500 },
  );
});

test('a flatter landing runs further, and so does a faster one', () => {
  const drive = { speed: even(20, 32), descent: even(18, 45), backspin: even(1500, 3500) };
  const fairway = fc.constantFrom<TurfName>('baked', 'firm', 'normal', 'soft', 'wet');
  fc.assert(
    fc.property(fc.record(drive), fairway, ({ speed, descent, backspin }, turf) => {
      const run = runOut(landingBall(speed, descent, backspin), { turf }).distance;
      expect(runOut(landingBall(speed, descent - 2, backspin), { turf }).distance).toBeGreaterThan(run);
      expect(runOut(landingBall(speed + 1.5, descent, backspin), { turf }).distance).toBeGreaterThan(run);
    }),
  );
});

test('softer turf runs less', () => {
  fc.assert(
    fc.property(fc.record(fullShot), fc.constantFrom(...FAIRWAYS), ({ speed, descent, backspin }, names) => {
      const ball = landingBall(speed, descent, backspin);
      const runs = names.map((name) => runOut(ball, { turf: name }).distance);
      for (let i = 1; i < runs.length; i++) {
        // A ball that backs up does so by centimetres, more on hard turf.
        if ((runs[i] as number) > 0.5) expect(runs[i]).toBeLessThan(runs[i - 1] as number);
      }
    }),
  );
});

test('uphill is shorter than level, downhill longer', () => {
  fc.assert(
    fc.property(
      fc.record({ ...fullShot, backspin: even(0, 4000) }),
      even(1, 5),
      turfName,
      ({ speed, descent, backspin }, slope, turf) => {
        const ball = landingBall(speed, descent, backspin);
        const level = runOut(ball, { turf }).distance;
        if (level < 1) return;
        expect(runOut(ball, { turf, ground: { slope: degrees(slope) } }).distance).toBeLessThan(level);
        expect(runOut(ball, { turf, ground: { slope: degrees(-slope) } }).distance).toBeGreaterThan(level);
      },
    ),
  );
});

test('a ball runs toward the lower side of a cross slope', () => {
  const rising = runOut(landingBall(27, 38, 2100), { turf: 'firm', ground: { crossSlope: degrees(4) } });
  expect(rising.side).toBeLessThan(-1);
});

test('backspin shortens the run', () => {
  fc.assert(
    fc.property(fc.record({ ...fullShot, backspin: even(0, 6000) }), turfName, (shot, turf) => {
      const { speed, descent, backspin } = shot;
      const less = runOut(landingBall(speed, descent, backspin), { turf }).distance;
      const more = runOut(landingBall(speed, descent, backspin + 500), { turf }).distance;
      // 5 cm: what is left of the switch from hopping to rolling.
      expect(more).toBeLessThan(less + 0.05);
    }),
  );
});

test('the run is continuous: a hair more speed or descent moves it by a hair', () => {
  fc.assert(
    fc.property(fc.record({ ...fullShot, backspin: even(0, 4000) }), turfName, (shot, turf) => {
      const { speed, descent, backspin } = shot;
      const here = runOut(landingBall(speed, descent, backspin), { turf }).distance;
      const there = runOut(landingBall(speed, descent + 1e-3, backspin), { turf }).distance;
      // The published restitution steps by 0.001 at 20 m/s, which is worth some centimetres.
      expect(Math.abs(there - here)).toBeLessThan(0.06);
    }),
    { numRuns: 1000 },
  );
});

describe('whatever comes in', () => {
  const anySlope = anyOf(-0.6, 0.6);
  const vector = (most: number) =>
    fc.record({ x: anyOf(-most, most), y: anyOf(-most, most), z: anyOf(-most, most) });

  test('the run is finite, ends, and says how', () => {
    fc.assert(
      fc.property(
        fc.record({
          velocity: vector(86),
          spinRate: anyOf(0, 2500),
          spinAxis: vector(1),
          slope: anySlope,
          crossSlope: anySlope,
          density: anyOf(0, 3),
          bounce: fc.oneof(
            fc.record({
              model: fc.constant('penner-2002' as const),
              tiltScale: anyOf(0, 3),
              tiltCap: anyOf(0, 1).map(radians),
              restitutionScale: anyOf(0, 1.9),
              friction: anyOf(0.01, 2),
            }),
            fc.record({
              model: fc.constant('biber-2023' as const),
              tilt: anyOf(0, 1).map(radians),
              restitution: anyOf(0, 0.95),
              friction: anyOf(0.01, 2),
            }),
          ),
          rollingResistance: anyOf(0.005, 2),
        }),
        (x) => {
          const axis =
            Math.hypot(x.spinAxis.x, x.spinAxis.y, x.spinAxis.z) > 1e-6 ? x.spinAxis : { x: 0, y: 0, z: 1 };
          const run = runOut(
            {
              position: { x: 0, y: 0, z: 0 },
              velocity: x.velocity,
              spinRate: x.spinRate as never,
              spinAxis: axis,
            },
            {
              turf: {
                ...turfs.normal,
                bounce: x.bounce,
                rollingResistance: x.rollingResistance,
              },
              air: { ...defaultAir, density: kilogramsPerCubicMetre(x.density) },
              ground: { slope: x.slope as never, crossSlope: x.crossSlope as never },
            },
          );
          const numbers = [run.distance, run.side, run.restsAt.x, run.restsAt.y, run.restsAt.z];
          for (const bounce of run.bounces) numbers.push(bounce.time, bounce.speedAfter, bounce.hopHeight);
          expect(numbers.every(Number.isFinite)).toBe(true);
          expect(run.bounces.length).toBeLessThanOrEqual(200);
          expect(run.band.low).toBeLessThanOrEqual(run.band.high);
          // The resting place lies on the plane; a ball cut off by the time limit may be up in a hop.
          const height = Math.tan(x.slope) * run.restsAt.x + Math.tan(x.crossSlope) * run.restsAt.z;
          const above = run.restsAt.y - height;
          expect(above).toBeGreaterThan(-1e-6 * (1 + Math.abs(height)));
          if (run.ended === 'at-rest') expect(above).toBeLessThan(1e-6 * (1 + Math.abs(height)));
        },
      ),
      { numRuns: 3000 },
    );
  });
});
