import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bestLoft,
  clubheads,
  degrees,
  type LoftQuestion,
  type MaximisedDistance,
  metres,
  metresPerSecond,
  mph,
  playShot,
  rpm,
  type Scene,
  type Shot,
  toDegrees,
  toMph,
  toRpm,
  toYards,
} from '../../src/index.js';
import { inferDynamicLoft } from '../../src/session/index.js';
import { caught } from '../caught.js';
import { even } from '../even.js';
import { steadyDriver } from '../strike/helpers.js';

const level = { attackAngle: degrees(0) };
const steep = { maximise: 'total', minimumDescentAngle: degrees(30) } as const;

function shotAt({ clubSpeed, attackAngle }: LoftQuestion, loft: number, scene: Scene = {}): Shot {
  return playShot({ clubSpeed, attackAngle, dynamicLoft: loft as never }, scene);
}

/** Greatest distance over a fine grid of lofts, by the public walk. */
function bruteForce(
  swing: LoftQuestion,
  scene: Scene,
  maximise: MaximisedDistance,
  around: number,
): { loft: number; distance: number } {
  let best = { loft: 0, distance: 0 };
  const look = (from: number, to: number, step: number): void => {
    for (let loft = from; loft <= to; loft += step) {
      const shot = shotAt(swing, degrees(loft), scene);
      const distance = maximise === 'total' ? shot.total : shot.carry;
      if (distance > best.distance) best = { loft, distance };
    }
  };
  look(2, 60, 0.25);
  // Twice as fine as what is to be agreed on, around either answer.
  for (const centre of [best.loft, around]) look(centre - 0.3, centre + 0.3, 0.02);
  return best;
}

describe('a brute-force grid', () => {
  const scenes = [{}, { turf: 'baked' as const }, { wind: { along: mph(-15), across: mph(0) } }];
  const questions = [75, 100, 125].flatMap((speed) =>
    (['carry', 'total'] as const).flatMap((maximise) =>
      scenes.map((scene) => [speed, maximise, scene] as const),
    ),
  );
  test.each(questions)('agrees to 0.1 yd and 0.1°: %d mph, %s, %o', (speed, maximise, scene) => {
    const swing = { clubSpeed: mph(speed), ...level };
    const found = bestLoft(swing, scene, { maximise });
    const brute = bruteForce(swing, scene, maximise, toDegrees(found.dynamicLoft));
    expect(Math.abs(toDegrees(found.dynamicLoft) - brute.loft)).toBeLessThan(0.1);
    expect(Math.abs(toYards(found.distance) - toYards(brute.distance as never))).toBeLessThan(0.1);
    // A search may not lose to the grid by more than the grid can be lucky.
    expect(found.distance).toBeGreaterThan(brute.distance - 0.005);
  });
});

describe('a trial in another programme, level attack, generic driver of constant grip, normal turf of Penner, total at 30° or more', () => {
  // Half a degree of loft, tens of rpm and whole yards are its printed figures; the optimum is flat, so that a whole
  // degree of loft is worth 1 yd.
  test.each([
    [80, 17, 14.7, 2380, 170, 195],
    [100, 14.5, 12.5, 2540, 233, 254],
    [120, 12, 10.3, 2535, 288, 307],
  ])('%d mph', (speed, loft, launch, spin, carry, total) => {
    const best = bestLoft(
      { clubSpeed: mph(speed), ...level },
      { turf: 'pennerNormal' },
      { maximise: 'total', minimumDescentAngle: degrees(30), clubhead: steadyDriver },
    );
    expect(Math.abs(toDegrees(best.dynamicLoft) - loft)).toBeLessThan(0.5);
    expect(Math.abs(toDegrees(best.shot.launch.launchAngle) - launch)).toBeLessThan(0.4);
    expect(Math.abs(toRpm(best.shot.launch.spinRate) - spin)).toBeLessThan(60);
    expect(Math.abs(toYards(best.shot.carry) - carry)).toBeLessThan(1.5);
    expect(Math.abs(toYards(best.distance) - total)).toBeLessThan(1);
  });
});

describe('the trade and the rule makers', () => {
  const loftFor = (speed: number): number =>
    toDegrees(bestLoft({ clubSpeed: mph(speed), ...level }).dynamicLoft);

  test('80 mph wants about 4° more than 120 mph, and faster still wants less', () => {
    // common practice, no source: nominal 13° at 80 mph, 9° at 120 mph. A nominal loft adds what the player delivers,
    // so only the difference is tested; trade tables disagree by 2° on it. Carry, as in the validation: with measured
    // bounce constants the trade's lofts are those of carry.
    expect(Math.abs(loftFor(80) - loftFor(120) - 4)).toBeLessThan(2);
    expect(loftFor(135)).toBeLessThan(loftFor(120));
  });

  test('total grows with every mph, with one driver, at the low end of what the trade says', () => {
    // common practice, no source: 30 to 50 yd per 10 mph from 80 to 120 mph. The models give 24 to 31, the less the
    // faster; the trade's upper figures come with better strikes at higher speed.
    const total = (speed: number): number =>
      toYards(shotAt({ clubSpeed: mph(speed), ...level }, degrees(11)).total);
    for (const speed of [80, 90, 100, 110]) {
      const step = total(speed + 10) - total(speed);
      expect(step).toBeGreaterThan(22);
      expect(step).toBeLessThan(50);
    }
  });

  test('at 120 mph the best launch lies in the window proposed for optimising each ball', () => {
    // R&A and USGA, proposal of 2021-22, second-hand: 7.5 to 15°, 2,200 to 3,000 rpm; the distance test itself is at
    // 10°, 2,520 rpm. For total the model asks for less spin than that (docs/validation.md).
    const { launch } = bestLoft({ clubSpeed: mph(120), ...level }).shot;
    expect(toDegrees(launch.launchAngle)).toBeGreaterThan(7.5);
    expect(toDegrees(launch.launchAngle)).toBeLessThan(15);
    expect(toRpm(launch.spinRate)).toBeGreaterThan(2200);
    expect(toRpm(launch.spinRate)).toBeLessThan(3000);
  });

  test.each([
    [100, 13],
    [125, 12],
  ])('at %d mph the best launch is about %d°', (speed, launchAngle) => {
    // F. Thomas, former technical director of the USGA, second-hand. He hits up a little, we level: 2.5°.
    const { launch } = bestLoft({ clubSpeed: mph(speed), ...level }).shot;
    expect(Math.abs(toDegrees(launch.launchAngle) - launchAngle)).toBeLessThan(2.5);
  });
});

describe('windows', () => {
  test('at each end 1 % is lost, and not within', () => {
    fc.assert(
      fc.property(even(65, 130), even(-4, 4), (speed, attack) => {
        const question = { clubSpeed: mph(speed), attackAngle: degrees(attack) };
        const best = bestLoft(question);
        const { clubSpeed, attackAngle, dynamicLoft, launchAngle, spinRate, ballSpeed } = best.window;
        const lost = (shot: Shot): number => 1 - shot.carry / best.distance;
        const lofts = (loft: number): number => lost(shotAt(question, loft));
        expect(lofts(dynamicLoft.low as number)).toBeCloseTo(0.01, 5);
        expect(lofts(dynamicLoft.high as number)).toBeCloseTo(0.01, 5);
        expect(lofts(((dynamicLoft.low as number) + best.dynamicLoft) / 2)).toBeLessThan(0.01);
        const slower = { ...question, clubSpeed: clubSpeed.low as never };
        expect(lost(shotAt(slower, best.dynamicLoft))).toBeCloseTo(0.01, 5);
        expect(clubSpeed.high).toBeUndefined();
        const down = { ...question, attackAngle: attackAngle.low as never };
        expect(lost(shotAt(down, best.dynamicLoft))).toBeCloseTo(0.01, 5);
        const { launch } = best.shot;
        expect(lost(playShot({ ...launch, launchAngle: launchAngle.low as never }))).toBeCloseTo(0.01, 5);
        expect(lost(playShot({ ...launch, spinRate: spinRate.low as never }))).toBeCloseTo(0.01, 5);
        expect(lost(playShot({ ...launch, ballSpeed: ballSpeed.low as never }))).toBeCloseTo(0.01, 5);
      }),
      { numRuns: 12, endOnFailure: true },
    );
  });

  test('an end may be set by the least descent asked for, and says so', () => {
    const best = bestLoft({ clubSpeed: mph(80), ...level }, {}, steep);
    expect(best.window.dynamicLoft.heldByDescent).toEqual(['low']);
    const low = shotAt({ clubSpeed: mph(80), ...level }, best.window.dynamicLoft.low as number);
    expect(toDegrees(low.flight.descentAngle)).toBeCloseTo(30, 2);
    expect(low.total).toBeGreaterThan(0.99 * best.distance);
  });
});

describe('the least descent', () => {
  test('holds a slow swing where it is asked for, and says so', () => {
    const held = bestLoft({ clubSpeed: mph(65), ...level }, {}, steep);
    expect(held.heldBy).toEqual(['minimum-descent-angle']);
    expect(toDegrees(held.shot.flight.descentAngle)).toBeCloseTo(30, 2);
    expect(held.shot.flight.descentAngle).toBeGreaterThanOrEqual(degrees(30));
  });

  test('is no rule: without it the longest total is a low flight, where bounces have been measured', () => {
    for (const speed of [70, 80, 90, 100, 110]) {
      const swing = { clubSpeed: mph(speed), ...level };
      const [free, held] = [bestLoft(swing, {}, { maximise: 'total' }), bestLoft(swing, {}, steep)];
      expect(free.heldBy).toEqual([]);
      expect(free.distance).toBeGreaterThan(held.distance);
      expect(free.dynamicLoft).toBeLessThan(held.dynamicLoft);
      expect(toDegrees(free.shot.flight.descentAngle)).toBeGreaterThan(16);
      expect(free.shot.run?.warnings).toEqual([]);
    }
    // Slow swings on hard turf go further down, and say so.
    const { shot } = bestLoft({ clubSpeed: mph(60), ...level }, { turf: 'baked' }, { maximise: 'total' });
    expect(shot.run?.warnings.map(({ code }) => code)).toEqual(['descent-outside-data']);
  });

  test('out of reach is said, not hidden', () => {
    const best = bestLoft(
      { clubSpeed: mph(40), ...level },
      {},
      {
        maximise: 'total',
        minimumDescentAngle: degrees(60),
        dynamicLoft: { min: degrees(5), max: degrees(20) },
      },
    );
    expect(best.steepEnough).toBe(false);
    expect(toDegrees(best.dynamicLoft)).toBeCloseTo(20, 6);
    expect(best.warnings.map((w) => w.model)).toContain('optimum');
  });

  test('an optimum at an end of the lofts looked at says so', () => {
    const best = bestLoft(
      { clubSpeed: mph(100), ...level },
      {},
      {
        maximise: 'carry',
        dynamicLoft: { min: degrees(8), max: degrees(12) },
      },
    );
    expect(best.heldBy).toEqual(['dynamic-loft']);
    expect(toDegrees(best.dynamicLoft)).toBeCloseTo(12, 4);
  });
});

test('less speed wants more loft, a headwind less, thin air less', () => {
  fc.assert(
    fc.property(even(65, 125), (speed) => {
      const loft = (scene: Scene, slower = 0): number =>
        bestLoft({ clubSpeed: mph(speed - slower), ...level }, scene).dynamicLoft;
      const here = loft({});
      expect(loft({}, -8)).toBeLessThan(here);
      expect(loft({ wind: { along: mph(-15), across: mph(0) } })).toBeLessThan(here);
      expect(loft({ wind: { along: mph(15), across: mph(0) } })).toBeGreaterThan(here);
    }),
    { numRuns: 8, endOnFailure: true },
  );
});

describe('advice', () => {
  test('the best loft delivered needs no change', () => {
    const question = { clubSpeed: mph(95), ...level };
    const { dynamicLoft } = bestLoft(question);
    const { advice } = bestLoft({ ...question, deliveredLoft: dynamicLoft });
    expect(advice?.change).toBeCloseTo(0, 6);
    expect(advice?.gain).toBeCloseTo(0, 6);
    expect(advice?.nominalLoft).toBeCloseTo(clubheads.driver.staticLoft, 6);
  });

  test('two degrees short needs two degrees more on the head, whatever the player adds', () => {
    const head = { ...clubheads.driver, staticLoft: degrees(9) };
    const question = { clubSpeed: mph(95), ...level };
    const { dynamicLoft } = bestLoft(question, {}, { clubhead: head });
    const deliveredLoft = (dynamicLoft - degrees(2)) as never;
    const { advice } = bestLoft({ ...question, deliveredLoft }, {}, { clubhead: head });
    expect(toDegrees(advice?.change as never)).toBeCloseTo(2, 6);
    expect(toDegrees(advice?.nominalLoft as never)).toBeCloseTo(11, 6);
    expect(advice?.carryGain).toBeGreaterThan(1);
  });
});

describe('the loft delivered', () => {
  test('comes back from the launch it gave, for any speed, head and attack', () => {
    fc.assert(
      fc.property(
        even(40, 130),
        even(-8, 8),
        even(5, 45),
        fc.constantFrom(...Object.values(clubheads)),
        (speed, attack, spinLoft, head) => {
          const loft = degrees(attack + spinLoft);
          if (loft < 0) return;
          const clubSpeed = mph(speed);
          const attackAngle = degrees(attack);
          const { strike } = playShot({ clubSpeed, attackAngle, dynamicLoft: loft }, {}, { clubhead: head });
          const launchAngle = strike?.launch.launchAngle as never;
          const found = inferDynamicLoft({ launchAngle, attackAngle, clubSpeed }, { clubhead: head });
          expect(found.dynamicLoft).toBeCloseTo(loft, 8);
          expect(found.dynamicLoftIfCentred).toBe(found.dynamicLoft);
          expect(found.addedLoft).toBeCloseTo(loft - head.staticLoft, 8);
          expect(found.spinLoft).toBeCloseTo(strike?.spinLoft as number, 8);
        },
      ),
      { numRuns: 200 },
    );
  });

  test('with the spin, a low strike is told from less loft', () => {
    const delivery = {
      clubSpeed: mph(95),
      attackAngle: degrees(0),
      dynamicLoft: degrees(14),
      strikeOffset: { toe: metres(0), high: metres(-0.01) },
    };
    const { launch } = playShot(delivery);
    const measured = { launchAngle: launch.launchAngle, attackAngle: degrees(0), clubSpeed: mph(95) };
    const centred = inferDynamicLoft(measured);
    const both = inferDynamicLoft({ ...measured, spinRate: launch.spinRate });
    expect(toDegrees(centred.dynamicLoft)).toBeLessThan(12.5);
    expect(Math.abs(toDegrees(both.dynamicLoft) - 14)).toBeLessThan(
      0.6 * Math.abs(toDegrees(centred.dynamicLoft) - 14),
    );
    // Spin known to 20 % pulls half way from the middle of the face.
    expect(both.strikeHeight).toBeLessThan(-0.004);
    expect(both.strikeHeight).toBeGreaterThan(-0.008);
    expect(both.spinRatio).toBeGreaterThan(1.2);
  });

  test.each([0, 5e-324])(
    'a face with a friction of %s makes no spin that would tell the height',
    (friction) => {
      const measured = { launchAngle: degrees(12), attackAngle: degrees(0), clubSpeed: mph(95) };
      const options = { clubhead: { ...clubheads.driver, friction } };
      expect(inferDynamicLoft({ ...measured, spinRate: rpm(2500) }, options)).toEqual(
        inferDynamicLoft(measured, options),
      );
    },
  );

  test('men of the tour deliver about 13° with a launch of 10.9°', () => {
    // Averages from memory: 113 mph, -1.3°, 10.9°, 2,686 rpm; the dynamic loft of 12.7 ± 0.5° derived from them by the
    // planar impulse law, which is independent of this strike kernel's three dimensions.
    const found = inferDynamicLoft({
      launchAngle: degrees(10.9),
      attackAngle: degrees(-1.3),
      clubSpeed: mph(113),
      spinRate: rpm(2686),
    });
    expect(Math.abs(toDegrees(found.dynamicLoft) - 12.7)).toBeLessThan(0.5);
  });
});

describe('bad input', () => {
  const good: LoftQuestion = { clubSpeed: mph(95), ...level };
  const measured = { launchAngle: degrees(11), attackAngle: degrees(0) };
  const asked = (options: object) => () => bestLoft(good, {}, options);
  test.each([
    ['options.maximise', asked({ maximise: 'roll' })],
    ['delivery.clubSpeed', () => bestLoft({ ...good, clubSpeed: 95 as never })],
    ['delivery.attackAngle', () => bestLoft({ ...good, attackAngle: Number.NaN as never })],
    ['delivery.loft', () => bestLoft({ ...good, loft: 9 } as never)],
    ['options.dynamicLoft.max', asked({ dynamicLoft: { min: degrees(5), max: 12 } })],
    ['options.dynamicLoft.min', asked({ dynamicLoft: { min: degrees(9), max: degrees(5) } })],
    ['options.dynamicLoft', asked({ dynamicLoft: 0.2 })],
    ['options.minimumDescentAngle', asked({ minimumDescentAngle: 30 })],
    ['delivery.deliveredLoft', () => bestLoft({ ...good, deliveredLoft: 12 as never })],
    ['scene.ground', () => bestLoft({ ...good, clubSpeed: mph(20) }, { ground: { elevation: metres(200) } })],
    // The ball would leave at 112 m/s and more: no flight is computed for it.
    ['delivery.clubSpeed', () => bestLoft({ ...good, clubSpeed: metresPerSecond(76) })],
    ['measured.launchAngle', () => inferDynamicLoft({ ...measured, launchAngle: degrees(-60) })],
    ['measured.clubSpeed', () => inferDynamicLoft({ ...measured, spinRate: rpm(2500) })],
    ['measured.spin', () => inferDynamicLoft({ ...measured, spin: 2500 } as never)],
  ])('%s is refused by name', (field, call) => {
    expect(caught(call).field).toBe(field);
  });
  test('speeds read back in mph', () => {
    expect(toMph(bestLoft(good).window.clubSpeed.low as never)).toBeLessThan(95);
  });
});
