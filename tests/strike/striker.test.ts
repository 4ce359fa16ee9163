import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balls, type Clubhead, clubheads, type Delivery, strike } from '../../src/index.js';
import { numbersOf } from '../../src/strike/delivery.js';
import { type StrikeInput, squareStrike } from '../../src/strike/impact.js';
import { createStriker } from '../../src/strike/striker.js';
import { si } from '../../src/units/index.js';
import { even } from '../even.js';
import { driverWith } from './helpers.js';

const driver = clubheads.driver;
const strikerOf = (clubhead: Clubhead) => createStriker({ clubhead, ball: balls.conforming });
const square = squareStrike(45, 0, 0.22);

const anyDelivery = fc
  .record({
    clubSpeed: even(5, 70),
    attackAngle: even(-0.15, 0.15),
    clubPath: even(-0.2, 0.2),
    faceAngle: even(-0.2, 0.2),
    dynamicLoft: even(0, 0.9),
    closureRate: even(-60, 60),
    strikeOffset: fc.record({ toe: even(-0.03, 0.03), high: even(-0.02, 0.02) }),
    hand: fc.constantFrom('right', 'left'),
  })
  .map((delivery) => delivery as unknown as Delivery);

describe('a striker', () => {
  it('gives what strike gives, again and again with one record for all results', () => {
    const strikers = Object.values(clubheads).map((head) => [head, strikerOf(head)] as const);
    fc.assert(
      fc.property(anyDelivery, fc.constantFrom(...strikers), (delivery, [head, striker]) => {
        const struck = striker.strike(numbersOf(delivery));
        fc.pre(typeof struck !== 'string');
        const { launch, backspin, sidespin, spinLoft, clubSpeedAfter } = strike(delivery, { clubhead: head });
        expect(struck).toMatchObject({ launch, backspin, sidespin, spinLoft, clubSpeedAfter });
        expect(striker.strike(square)).toBe(struck);
      }),
    );
  });

  it('strikes with its laws, which are the head’s until they are set', () => {
    const striker = strikerOf(driverWith({}));
    expect(striker.laws).toMatchObject({ restitution: driver.restitution.atReference, grip: -0.2 });
    striker.laws.restitution = 0.8;
    striker.laws.grip = 0.1;
    const { restitution } = driver;
    // Only the centred figure is set: the loss from centre to edge stays.
    const loss = restitution.atReference - restitution.atEdge;
    const other = driverWith({
      restitution: { ...restitution, atReference: 0.8, atEdge: 0.8 - loss },
      tangentialRestitution: { kind: 'constant', value: 0.1 },
    });
    const offCentre = { ...square, toe: 0.015, high: -0.008 };
    expect(striker.strike(offCentre)).toEqual(strikerOf(other).strike(offCentre));
  });

  it.each([
    ['no-approach', driver, { dynamicLoft: 1.4, attackAngle: -0.3 }],
    [
      'impossible-restitution',
      driverWith({ restitution: { ...driver.restitution, slope: -0.02 } }),
      { clubSpeed: 70 },
    ],
    [
      'makes-energy',
      driverWith({
        // A contact that keeps all its slip and yet grips, on a head that hardly resists turning.
        tangentialRestitution: { kind: 'constant', value: -1 },
        centreOfGravity: { depth: si(-0.02), high: si(0), toe: si(0) },
        inertia: { faceNormal: si(1e-5), vertical: si(1e-5), heelToe: si(1e-5) },
        friction: 2,
      }),
      { dynamicLoft: 0.6, high: -0.02 },
    ],
  ] as [string, Clubhead, Partial<StrikeInput>][])('names its failure: %s', (failure, head, change) => {
    expect(strikerOf(head).strike({ ...square, ...change })).toBe(failure);
  });

  it('slides where friction gives less than grip takes, and never jams', () => {
    // The normal impulse of a slide is positive for any head in range, so its ball always leaves the face.
    let slides = 0;
    fc.assert(
      fc.property(
        fc.record({
          friction: even(0, 2),
          grip: even(-1, 1),
          inertia: even(-5, -3),
          depth: even(-0.02, 0.08),
          gearElasticity: even(-1, 1),
          loft: even(-0.4, 1.2),
          toe: even(-0.06, 0.06),
          high: even(-0.04, 0.04),
        }),
        ({ friction, grip, inertia, depth, gearElasticity, loft, toe, high }) => {
          const moment = si<never>(10 ** inertia);
          const clubhead = driverWith({
            friction,
            tangentialRestitution: { kind: 'constant', value: grip },
            inertia: { faceNormal: moment, vertical: moment, heelToe: moment },
            centreOfGravity: { depth: si(depth), high: si(0), toe: si(0) },
          });
          const striker = createStriker({ clubhead, ball: balls.conforming, gearElasticity });
          const struck = striker.strike({ ...squareStrike(40, 0, loft), toe, high });
          if (typeof struck === 'string') {
            expect(struck).not.toBe('impossible-restitution');
            return;
          }
          if (struck.slid) {
            slides++;
            expect(struck.frictionUsed).toBe(friction);
          }
          expect(struck.launch.ballSpeed).toBeGreaterThan(0);
          expect(Object.values(struck.launch).every(Number.isFinite)).toBe(true);
        },
      ),
      { numRuns: 2000 },
    );
    expect(slides).toBeGreaterThan(100);
  });
});
