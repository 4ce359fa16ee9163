import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balls, clubheads, type Delivery, metres, strike } from '../../src/index.js';
import { si } from '../../src/units/index.js';
import { even } from '../even.js';
import { steadyDriver } from './helpers.js';

/**
 * The two-body oblique impact in a plane with the centre of gravity `depth` behind the contact: textbook impulse and
 * momentum (Daish, The Physics of Ball Games, 1972; Cross 2002, Am. J. Phys. 70, 1093), written out without matrices.
 */
function planar(speed: number, attack: number, loft: number, depth: number) {
  const head = clubheads.driver;
  const { mass: m, radius, inertia } = balls.conforming;
  const big = head.mass + head.shaftMass;
  const s = loft - attack;
  const e = 0.838 - 0.0015 * (speed * Math.cos(s) - 48.8);
  const inverse = 1 / m + radius ** 2 / inertia + 1 / big + depth ** 2 / head.inertia.heelToe;
  const normal = (speed * Math.cos(s) * (1 + e)) / (1 + m / big);
  const along = (speed * Math.sin(s) * (1 - 0.2)) / (m * inverse);
  return {
    ballSpeed: Math.hypot(normal, along),
    launchAngle: loft - Math.atan2(along, normal),
    backspin: (along * m * radius) / inertia,
  };
}

const delivery = fc.record({
  clubSpeed: even(20, 60),
  attackAngle: even(-0.1, 0.1),
  dynamicLoft: even(0.15, 0.4),
});

describe('the planar limit', () => {
  it.each([0, 0.04])(
    'a centred strike is the textbook oblique impact, centre of gravity %f m deep',
    (depth) => {
      const head = {
        ...steadyDriver,
        centreOfGravity: {
          ...clubheads.driver.centreOfGravity,
          depth: metres(depth),
        },
      };
      fc.assert(
        fc.property(delivery, (d) => {
          const hit = strike(d as unknown as Delivery, { clubhead: head });
          const expected = planar(d.clubSpeed, d.attackAngle, d.dynamicLoft, depth);
          expect(hit.launch.ballSpeed).toBeCloseTo(expected.ballSpeed, 10);
          expect(hit.launch.launchAngle).toBeCloseTo(expected.launchAngle, 12);
          expect(hit.backspin).toBeCloseTo(expected.backspin, 9);
          expect(hit.sidespin).toBeCloseTo(0, 9);
          expect(hit.spinLoft).toBeCloseTo(Math.abs(d.dynamicLoft - d.attackAngle), 12);
        }),
      );
    },
  );

  it('without loft it is V (1 + e) / (1 + m/M) (Cochran and Stobbs 1968)', () => {
    const hit = strike({ clubSpeed: si(48.8), attackAngle: si(0), dynamicLoft: si(0) });
    expect(hit.launch.ballSpeed).toBeCloseTo((48.8 * 1.838) / (1 + 45.93 / 203), 10);
    expect(hit.backspin).toBeCloseTo(0, 9);
  });
});
