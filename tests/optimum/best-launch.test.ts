import { describe, expect, test } from 'vitest';
import {
  bestLaunch,
  carryMap,
  degrees,
  fly,
  type LaunchQuestion,
  metres,
  mph,
  playShot,
  rpm,
  speedForCarry,
  strike,
  toDegrees,
  toMph,
  toRpm,
  toYards,
  yards,
} from '../../src/index.js';
import { caught } from '../caught.js';

const BOX = {
  launchAngle: { min: degrees(7.5), max: degrees(15) },
  spinRate: { min: rpm(2200), max: rpm(3000) },
};

describe('among launches that can be delivered', () => {
  test('the ball speed is the one asked for and the delivery gives the launch', () => {
    const best = bestLaunch({ ballSpeed: mph(150) }, {}, { maximise: 'carry' });
    expect(best.confinedTo).toBe('deliverable');
    expect(toMph(best.launch.ballSpeed)).toBeCloseTo(150, 9);
    if (!best.delivery) throw new Error('a deliverable launch has a delivery');
    expect(playShot(best.delivery).launch).toEqual(best.launch);
    expect(best.distance).toBeCloseTo(best.shot.carry, 9);
  });

  test.each(['carry', 'total'] as const)('agrees with a brute-force grid of lofts: %s', (maximise) => {
    const best = bestLaunch({ ballSpeed: mph(140) }, {}, { maximise });
    if (!best.delivery) throw new Error('a deliverable launch has a delivery');
    const at = (speed: number, loft: number) => ({
      clubSpeed: speed as never,
      attackAngle: degrees(0),
      dynamicLoft: degrees(loft),
    });
    let top = { loft: 0, distance: 0, angle: 0 };
    const look = (from: number, to: number, by: number): void => {
      for (let loft = from; loft <= to; loft += by) {
        // The club speed that gives 140 mph of ball speed, by bisection.
        let [slow, fast] = [mph(80) as number, mph(140) as number];
        for (let i = 0; i < 40; i++) {
          const middle = (slow + fast) / 2;
          if (strike(at(middle, loft)).launch.ballSpeed < mph(140)) slow = middle;
          else fast = middle;
        }
        const shot = playShot(at(fast, loft));
        const distance = toYards(shot[maximise]);
        if (distance > top.distance) top = { loft, distance, angle: toDegrees(shot.launch.launchAngle) };
      }
    };
    look(6, 40, 0.1);
    look(top.loft - 0.3, top.loft + 0.3, 0.02);
    expect(toYards(best.distance)).toBeGreaterThan(top.distance - 0.02);
    expect(Math.abs(toYards(best.distance) - top.distance)).toBeLessThan(0.1);
    expect(Math.abs(toDegrees(best.delivery.dynamicLoft) - top.loft)).toBeLessThan(0.1);
    expect(Math.abs(toDegrees(best.launch.launchAngle) - top.angle)).toBeLessThan(0.1);
  });

  test('given a range of attack angles it hits up as far as allowed, and says so', () => {
    const level = bestLaunch({ ballSpeed: mph(150) }, {}, { maximise: 'carry' });
    const up = bestLaunch(
      { ballSpeed: mph(150), attackAngle: { min: degrees(-3), max: degrees(4) } },
      {},
      { maximise: 'carry' },
    );
    expect(toDegrees(up.delivery?.attackAngle as never)).toBeCloseTo(4, 4);
    expect(up.heldBy).toEqual(['attack-angle']);
    expect(up.distance).toBeGreaterThan(level.distance);
    expect(up.launch.spinRate).toBeLessThan(level.launch.spinRate);
  });
});

describe('in a box of launch and spin', () => {
  test.each([
    ['carry', 120, BOX],
    ['total', 150, BOX],
    [
      'carry',
      160,
      { launchAngle: { min: degrees(5), max: degrees(40) }, spinRate: { min: rpm(800), max: rpm(5000) } },
    ],
  ] as const)('agrees with a brute-force grid: %s at %d mph', (maximise, speed, freely) => {
    const best = bestLaunch({ ballSpeed: mph(speed), freely }, {}, { maximise });
    expect(best.confinedTo).toBe('box');
    expect(best.delivery).toBeUndefined();
    let most = 0;
    let at = [0, 0];
    const look = (a0: number, a1: number, w0: number, w1: number, cells: number): void => {
      for (let i = 0; i <= cells; i++) {
        for (let j = 0; j <= cells; j++) {
          const launchAngle = a0 + ((a1 - a0) * i) / cells;
          const spinRate = w0 + ((w1 - w0) * j) / cells;
          const shot = playShot({
            ballSpeed: mph(speed),
            launchAngle: launchAngle as never,
            spinRate: spinRate as never,
          });
          if (shot[maximise] > most) {
            most = shot[maximise];
            at = [launchAngle, spinRate];
          }
        }
      }
    };
    const { launchAngle: a, spinRate: w } = freely;
    look(a.min, a.max, w.min, w.max, 24);
    const near = (x: number, half: number, low: number, high: number) =>
      [Math.max(low, x - half), Math.min(high, x + half)] as const;
    // Finer and finer around the best so far, at last in steps of 0.02° and about 2 rpm.
    for (const [half, turn] of [
      [degrees(2), rpm(200)],
      [degrees(0.24), rpm(25)],
      [degrees(0.24), rpm(25)],
    ] as const) {
      const [angle = 0, spin = 0] = at;
      look(...near(angle, half, a.min, a.max), ...near(spin, turn, w.min, w.max), 24);
    }
    expect(Math.abs(toYards(best.distance) - toYards(most as never))).toBeLessThan(0.1);
    // A centimetre is what the last small hops leave of unevenness in a total.
    expect(best.distance).toBeGreaterThan(most - (maximise === 'total' ? 0.01 : 0.005));
    expect(Math.abs(toDegrees(best.launch.launchAngle) - toDegrees(at[0] as never))).toBeLessThan(0.1);
  });

  test('the free optimum is high with little spin, as the aerodynamics warn', () => {
    // Trial of the default coefficients in another programme: 276 yd at about 24°, 1,600 rpm for 160 mph, ρ 1.2;
    // found on a coarse grid.
    const best = bestLaunch(
      {
        ballSpeed: mph(160),
        freely: {
          launchAngle: { min: degrees(5), max: degrees(45) },
          spinRate: { min: rpm(500), max: rpm(6000) },
        },
      },
      {},
      { maximise: 'carry' },
    );
    expect(Math.abs(toYards(best.distance) - 276)).toBeLessThan(1.5);
    expect(Math.abs(toDegrees(best.launch.launchAngle) - 24)).toBeLessThan(3);
    expect(Math.abs(toRpm(best.launch.spinRate) - 1600)).toBeLessThan(300);
  });
});

describe('the speed a carry takes', () => {
  test.each([60, 120, 180, 240, 300])('%d yd: that speed carries it and less does not', (distance) => {
    const answer = speedForCarry(yards(distance), {}, { dynamicLoft: degrees(14) });
    if (answer.outcome !== 'found') throw new Error(answer.outcome);
    expect(toYards(answer.shot.carry)).toBeCloseTo(distance, 4);
    const less = playShot({
      clubSpeed: (0.99 * answer.clubSpeed) as never,
      attackAngle: degrees(0),
      dynamicLoft: degrees(14),
    });
    expect(less.carry).toBeLessThan(answer.shot.carry);
  });

  test('left free, the loft is the best, so that less speed is enough', () => {
    const fixed = speedForCarry(yards(170), {}, { dynamicLoft: degrees(11) });
    const best = speedForCarry(yards(170));
    expect(best.outcome).toBe('found');
    expect(best.clubSpeed).toBeLessThan(fixed.clubSpeed);
    expect(toYards(best.shot.carry)).toBeCloseTo(170, 3);
    expect(best.dynamicLoft).toBeGreaterThan(degrees(14));
  });

  test('out of reach and too close are answers', () => {
    const far = speedForCarry(yards(500), {}, { dynamicLoft: degrees(12) });
    if (far.outcome !== 'out-of-reach') throw new Error(far.outcome);
    expect(toMph(far.clubSpeed)).toBeCloseTo(150, 6);
    expect(far.missing).toBeCloseTo(yards(500) - far.shot.carry, 9);
    const near = speedForCarry(yards(2), {}, { dynamicLoft: degrees(30) });
    if (near.outcome !== 'too-close') throw new Error(near.outcome);
    expect(near.missing).toBeLessThan(0);
  });

  test('a margin is carried on top, and counted in what is missing', () => {
    const options = { dynamicLoft: degrees(15) };
    const margins = [0, 5, 12].map(
      (margin) => speedForCarry(yards(200), {}, { ...options, margin: yards(margin) }).clubSpeed,
    );
    expect(margins).toEqual([200, 205, 212].map((far) => speedForCarry(yards(far), {}, options).clubSpeed));
    expect(margins).toEqual([...margins].sort((a, b) => a - b));
    const far = speedForCarry(yards(500), {}, { ...options, margin: yards(20) });
    if (far.outcome === 'found') throw new Error(far.outcome);
    expect(far.missing).toBeCloseTo(yards(520) - far.shot.carry, 9);
  });

  test('a headwind and a hill cost speed', () => {
    const options = { dynamicLoft: degrees(15) };
    const plain = speedForCarry(yards(200), {}, options).clubSpeed;
    const wind = { wind: { along: mph(-15), across: mph(0) } };
    expect(speedForCarry(yards(200), wind, options).clubSpeed).toBeGreaterThan(plain);
    const hill = { ground: { elevation: metres(10) } };
    expect(speedForCarry(yards(200), hill, options).clubSpeed).toBeGreaterThan(plain);
  });
});

test('the map holds what single flights give', () => {
  const map = carryMap(
    {
      ballSpeed: mph(140),
      launchAngle: { min: degrees(4), max: degrees(28) },
      spinRate: { min: rpm(1000), max: rpm(5000) },
    },
    {},
    { columns: 7, rows: 5, withRun: true },
  );
  expect(map.carry.length).toBe(35);
  for (const [row, column] of [
    [0, 0],
    [4, 6],
    [2, 3],
    [1, 5],
  ] as const) {
    const launch = {
      ballSpeed: mph(140),
      launchAngle: map.launchAngle[column] as never,
      spinRate: map.spinRate[row] as never,
    };
    const cell = row * map.columns + column;
    const flight = fly(launch);
    // The integrators' tolerance.
    expect(Math.abs((map.carry[cell] as number) - flight.carry)).toBeLessThan(2e-4);
    expect(Math.abs((map.apex[cell] as number) - flight.apex)).toBeLessThan(2e-4);
    expect(map.descentAngle[cell]).toBeCloseTo(flight.descentAngle, 4);
    expect(map.total?.[cell]).toBeCloseTo(playShot(launch).total, 2);
    expect(map.landed[cell]).toBe(1);
  }
  expect(toDegrees(map.launchAngle[6] as never)).toBeCloseTo(28, 9);
  const raised = carryMap(
    {
      ballSpeed: mph(60),
      launchAngle: { min: degrees(0), max: degrees(40) },
      spinRate: { min: rpm(2000), max: rpm(3000) },
    },
    { ground: { elevation: metres(8) } },
    { columns: 2, rows: 2 },
  );
  expect([...raised.landed]).toEqual([0, 1, 0, 1]);
  expect(raised.carry[0]).toBe(0);
  expect('total' in raised).toBe(false);
});

describe('bad input', () => {
  const good: LaunchQuestion = { ballSpeed: mph(150) };
  const map = { ballSpeed: mph(150), ...BOX };
  const clubSpeed = { min: mph(90), max: mph(80) };
  test.each([
    ['launch.ballSpeed', () => bestLaunch({ ...good, ballSpeed: 150 as never })],
    ['launch.attackAngle', () => bestLaunch({ ...good, attackAngle: degrees(90) })],
    ['launch.attackAngle', () => bestLaunch({ ...good, attackAngle: degrees(2), freely: BOX })],
    ['options.clubhead', () => bestLaunch({ ...good, freely: BOX }, {}, { clubhead: 'driver' })],
    [
      'launch.freely.spinRate.max',
      () => bestLaunch({ ...good, freely: { ...BOX, spinRate: { min: rpm(0), max: 3000 as never } } }),
    ],
    ['launch.freely.spin', () => bestLaunch({ ...good, freely: { ...BOX, spin: 1 } as never })],
    ['carry', () => speedForCarry(Number.NaN as never)],
    ['options.margin', () => speedForCarry(yards(150), {}, { margin: yards(-5) })],
    ['options.dynamicLoft', () => speedForCarry(yards(150), {}, { dynamicLoft: 12 as never })],
    ['options.clubSpeed.min', () => speedForCarry(yards(150), {}, { clubSpeed })],
    // The ball of the fastest speed looked at would leave faster than a flight is computed for.
    [
      'options.clubSpeed.max',
      () => speedForCarry(yards(150), {}, { clubSpeed: { min: mph(90), max: mph(190) } }),
    ],
    ['options.columns', () => carryMap(map, {}, { columns: 2.5 })],
    ['options.rows', () => carryMap(map, {}, { rows: 1 })],
    ['launch.launchAngle.min', () => carryMap({ ...map, launchAngle: { min: 7 as never, max: degrees(8) } })],
  ])('%s is refused by name', (field, call) => {
    expect(caught(call).field).toBe(field);
  });
});
