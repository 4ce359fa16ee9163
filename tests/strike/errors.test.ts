import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Clubhead,
  clubheads,
  type Delivery,
  degrees,
  type FairflightError,
  isFairflightError,
  metresPerSecond,
  mph,
  strike,
} from '../../src/index.js';
import { si } from '../../src/units/index.js';
import { warningText } from '../../src/warnings/index.js';
import { anyOf } from '../even.js';

const good: Delivery = { clubSpeed: mph(100), attackAngle: degrees(0), dynamicLoft: degrees(12) };

function caught(run: () => unknown): FairflightError {
  try {
    run();
  } catch (error) {
    if (isFairflightError(error)) return error;
    throw error;
  }
  throw new Error('nothing was thrown');
}

describe('bad input', () => {
  it.each([
    [{ ...good, clubSpeed: si<never>(100) }, 'delivery.clubSpeed', 'outside-range'],
    [{ ...good, clubSpeed: si<never>(Number.NaN) }, 'delivery.clubSpeed', 'invalid-input'],
    [{ ...good, clubSpeed: '100' as never }, 'delivery.clubSpeed', 'invalid-input'],
    [{ ...good, attackAngle: si<never>(3) }, 'delivery.attackAngle', 'outside-range'],
    [{ ...good, dynamicLoft: si<never>(12) }, 'delivery.dynamicLoft', 'outside-range'],
    [{ ...good, dynamicLoft: undefined as never }, 'delivery.dynamicLoft', 'invalid-input'],
    [{ ...good, clubPath: si<never>(5) }, 'delivery.clubPath', 'outside-range'],
    [{ ...good, faceAngle: si<never>(-2) }, 'delivery.faceAngle', 'outside-range'],
    [{ ...good, closureRate: si<never>(2000) }, 'delivery.closureRate', 'outside-range'],
    [{ ...good, hand: 'lefty' as never }, 'delivery.hand', 'invalid-input'],
    [
      { ...good, strikeOffset: { toe: si<never>(10), high: si<never>(0) } },
      'delivery.strikeOffset.toe',
      'outside-range',
    ],
    [
      { ...good, strikeOffset: { toe: si<never>(0) } as never },
      'delivery.strikeOffset.high',
      'invalid-input',
    ],
    [{ ...good, clubpath: 0 } as never, 'delivery.clubpath', 'invalid-input'],
    [
      { ...good, attackAngle: si<never>(-0.5), dynamicLoft: si<never>(1.3) },
      'delivery.dynamicLoft',
      'outside-range',
    ],
    [null as never, 'delivery', 'invalid-input'],
  ] as [Delivery, string, string][])('%j names its field', (delivery, field, code) => {
    const error = caught(() => strike(delivery));
    expect(error.field).toBe(field);
    expect(error.code).toBe(code);
    expect(error.message).toContain(field.split('.')[0]);
  });

  const driver = clubheads.driver;
  it.each([
    [{ ...driver, mass: si<never>(200) }, 'options.clubhead.mass'],
    [{ ...driver, shaftMass: si<never>(-1) }, 'options.clubhead.shaftMass'],
    [{ ...driver, staticLoft: si<never>(10.5) }, 'options.clubhead.staticLoft'],
    [
      { ...driver, inertia: { ...driver.inertia, vertical: si<never>(4800) } },
      'options.clubhead.inertia.vertical',
    ],
    [
      { ...driver, inertia: { ...driver.inertia, faceNormal: si<never>(0) } },
      'options.clubhead.inertia.faceNormal',
    ],
    [
      { ...driver, inertia: { ...driver.inertia, heelToe: si<never>(-1) } },
      'options.clubhead.inertia.heelToe',
    ],
    [
      { ...driver, centreOfGravity: { ...driver.centreOfGravity, depth: si<never>(40) } },
      'options.clubhead.centreOfGravity.depth',
    ],
    [
      { ...driver, centreOfGravity: { ...driver.centreOfGravity, high: si<never>(1) } },
      'options.clubhead.centreOfGravity.high',
    ],
    [
      { ...driver, centreOfGravity: { ...driver.centreOfGravity, toe: si<never>(1) } },
      'options.clubhead.centreOfGravity.toe',
    ],
    [{ ...driver, bulge: si<never>(0) }, 'options.clubhead.bulge'],
    [{ ...driver, roll: si<never>(-0.3) }, 'options.clubhead.roll'],
    [{ ...driver, friction: si<never>(-0.1) }, 'options.clubhead.friction'],
    [{ ...driver, clubClass: 'putter' as never }, 'options.clubhead.clubClass'],
    [
      { ...driver, restitution: { ...driver.restitution, atReference: 1.2 } },
      'options.clubhead.restitution.atReference',
    ],
    [
      { ...driver, restitution: { ...driver.restitution, atEdge: -1 } },
      'options.clubhead.restitution.atEdge',
    ],
    [
      { ...driver, restitution: { ...driver.restitution, edgeDistance: si<never>(0) } },
      'options.clubhead.restitution.edgeDistance',
    ],
    [
      { ...driver, restitution: { ...driver.restitution, slope: -0.02, atReference: 1 } },
      'options.clubhead.restitution',
    ],
    [
      { ...driver, tangentialRestitution: { kind: 'constant', value: 2 } },
      'options.clubhead.tangentialRestitution.value',
    ],
    [
      { ...driver, tangentialRestitution: { kind: 'springy' } as never },
      'options.clubhead.tangentialRestitution.kind',
    ],
    [
      {
        ...driver,
        tangentialRestitution: { kind: 'oblique', limit: 0.3, onset: si<never>(12), scale: si<never>(0.1) },
      },
      'options.clubhead.tangentialRestitution.onset',
    ],
    [{ ...driver, weight: 1 } as never, 'options.clubhead.weight'],
  ] as [Clubhead, string][])('head: %j names its field', (head, field) => {
    expect(caught(() => strike({ ...good, clubSpeed: metresPerSecond(60) }, { clubhead: head })).field).toBe(
      field,
    );
  });

  it('a head whose laws together would make energy is told so', () => {
    // A contact that keeps 0.88 of its slip and yet grips, 47 mm ahead of the centre of gravity of an iron: the energy
    // of head and ball, ½ Σ m v² + ½ Σ ω·Iω by the velocities after, would be 0.8 % more than before.
    const head: Clubhead = {
      ...clubheads.longIron,
      tangentialRestitution: { kind: 'constant', value: -0.8766747454181314 },
      centreOfGravity: {
        depth: si(0.04728351420490071),
        high: si(-0.004342937800101936),
        toe: si(0.003818965),
      },
      friction: 0.2913954698713497,
    };
    const delivery: Delivery = {
      clubSpeed: metresPerSecond(48.48),
      attackAngle: si(-0.11686),
      clubPath: si(0.17109),
      faceAngle: si(0.0093149),
      dynamicLoft: si(0.75566),
      strikeOffset: { toe: si(-0.0285816), high: si(0.0177623) },
      closureRate: si(-52.8495),
    };
    const error = caught(() => strike(delivery, { clubhead: head }));
    expect(error.field).toBe('options.clubhead.tangentialRestitution');
    expect(error.message).toContain('energy');
    const gripping: Clubhead = { ...head, tangentialRestitution: { kind: 'constant', value: 0 } };
    expect(strike(delivery, { clubhead: gripping }).launch.ballSpeed).toBeGreaterThan(0);
  });

  it('options and ball', () => {
    expect(caught(() => strike(good, { clubhead: driver, gearElasticity: 3 })).field).toBe(
      'options.gearElasticity',
    );
    expect(caught(() => strike(good, { elasticity: 1, clubhead: driver } as never)).field).toBe(
      'options.elasticity',
    );
    const ball = { name: 'x', mass: si<never>(45.93), radius: si<never>(0.021), inertia: si<never>(8e-6) };
    expect(caught(() => strike(good, { clubhead: driver, ball: ball as never })).field).toBe(
      'options.ball.mass',
    );
  });

  it('never gives NaN: a strike or a typed error for anything in the ranges', () => {
    fc.assert(
      fc.property(
        fc.record({
          clubSpeed: anyOf(1, 90),
          attackAngle: anyOf(-0.6, 0.6),
          clubPath: anyOf(-0.8, 0.8),
          faceAngle: anyOf(-0.8, 0.8),
          dynamicLoft: anyOf(-0.4, 1.4),
          closureRate: anyOf(-200, 200),
          strikeOffset: fc.record({ toe: anyOf(-0.06, 0.06), high: anyOf(-0.04, 0.04) }),
          hand: fc.constantFrom('right', 'left'),
        }),
        fc.constantFrom(...Object.values(clubheads)),
        (delivery, head) => {
          try {
            const hit = strike(delivery as unknown as Delivery, { clubhead: head });
            const numbers = [
              ...Object.values(hit.launch),
              hit.smashFactor,
              hit.spinLoft,
              hit.faceToPath,
              hit.backspin,
            ];
            for (const n of [...numbers, hit.sidespin, hit.clubSpeedAfter, hit.gearEffect.sidespin]) {
              expect(Number.isFinite(n)).toBe(true);
            }
          } catch (error) {
            if (!isFairflightError(error)) throw error;
            // The built-in heads keep to the laws together.
            expect(error.field).not.toBe('options.clubhead.tangentialRestitution');
          }
        },
      ),
      { numRuns: 5000 },
    );
  });
});

describe('warnings', () => {
  it('none inside the calibrated range, one per quantity outside it', () => {
    expect(strike(good).warnings).toEqual([]);
    const wild = strike({
      clubSpeed: mph(40),
      attackAngle: degrees(0),
      dynamicLoft: degrees(30),
      strikeOffset: { toe: si(0.04), high: si(0) },
    });
    expect(wild.warnings.map((w) => w.quantity)).toEqual(['clubSpeed', 'spinLoft', 'strikeOffset']);
    for (const warning of wild.warnings) expect(warningText(warning).length).toBeGreaterThan(20);
  });
});
