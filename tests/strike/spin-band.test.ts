import { describe, expect, it } from 'vitest';
import { fitGrip, missesLeftOut } from '../../src/clubhead/build-time/fit-grip.js';
import {
  bestLoft,
  clubheads,
  type Delivery,
  degrees,
  metres,
  mph,
  playShot,
  sensitivities,
  strike,
  toDegrees,
} from '../../src/index.js';
import { si } from '../../src/units/index.js';
import { steadyDriver } from './helpers.js';

const drive: Delivery = { clubSpeed: mph(95), attackAngle: degrees(0), dynamicLoft: degrees(13) };
const shareOf = ({ spinBand, launch }: ReturnType<typeof strike>): number => spinBand / launch.spinRate;
/** The drive with its spin times a factor. */
const spun = (delivery: Delivery, factor: number) => {
  const { launch } = strike(delivery);
  return playShot({ ...launch, spinRate: si(factor * launch.spinRate) }, {}, { tolerance: metres(1e-7) });
};
const [LESS, MORE] = [0.87, 1.13];

describe('the band of the spin of a strike', () => {
  it('is what the fitted law misses a drive by that it was not fitted to, root mean square', () => {
    const misses = missesLeftOut(fitGrip);
    expect(shareOf(strike(drive))).toBeCloseTo(Math.hypot(...misses) / Math.sqrt(misses.length), 2);
  });

  it('is an assumed 20 % where the law is another', () => {
    expect(shareOf(strike(drive, { clubhead: steadyDriver }))).toBeCloseTo(0.2, 12);
    expect(shareOf(strike(drive, { clubhead: clubheads.midIron }))).toBeCloseTo(0.2, 12);
  });
});

describe('sensitivities with as much less and more spin', () => {
  const { bySpin, rows } = sensitivities(drive);

  it('give the shot with that spin', () => {
    expect(bySpin?.less.carry).toBeCloseTo(spun(drive, LESS).carry, 5);
    expect(bySpin?.more.carry).toBeCloseTo(spun(drive, MORE).carry, 5);
    expect(bySpin?.more.descentAngle).toBeCloseTo(spun(drive, MORE).flight.descentAngle, 6);
  });

  it('and what each step is worth then: more loft the more, the less a drive spins', () => {
    const row = rows.find(({ change }) => change === 'dynamicLoft');
    const lofted = { ...drive, dynamicLoft: degrees(14) };
    const worth = (factor: number): number => spun(lofted, factor).carry - spun(drive, factor).carry;
    expect(row?.bySpin?.less.carry).toBeCloseTo(worth(LESS), 4);
    expect(row?.bySpin?.more.carry).toBeCloseTo(worth(MORE), 4);
    expect(row?.bySpin?.less.carry).toBeGreaterThan((row?.difference.carry ?? 0) + 1);
    expect(row?.bySpin?.more.carry).toBeLessThan((row?.difference.carry ?? 0) - 1);
  });

  it('are left out of a shot that starts from a launch, whose spin is given', () => {
    const flown = sensitivities(strike(drive).launch);
    expect(flown).not.toHaveProperty('bySpin');
    expect(flown.rows.some((row) => 'bySpin' in row)).toBe(false);
  });
});

describe('the best loft with as much less and more spin', () => {
  const swing = { clubSpeed: mph(95), attackAngle: degrees(0) };
  const { dynamicLoft, loftBand, advice } = bestLoft({ ...swing, deliveredLoft: degrees(12) });

  it('is that of a fine grid of lofts', () => {
    const bestAt = (factor: number): number => {
      let best = { loft: 0, carry: 0 };
      for (let loft = 10; loft < 20; loft += 0.05) {
        const { carry } = spun({ ...swing, dynamicLoft: degrees(loft) }, factor);
        if (carry > best.carry) best = { loft, carry };
      }
      return best.loft;
    };
    expect(Math.abs(toDegrees(loftBand.low) - bestAt(MORE))).toBeLessThan(0.1);
    expect(Math.abs(toDegrees(loftBand.high) - bestAt(LESS))).toBeLessThan(0.1);
    expect(loftBand.low).toBeLessThan(dynamicLoft);
    expect(loftBand.high).toBeGreaterThan(dynamicLoft);
  });

  it('and so is the gain of the change advised', () => {
    const gainAt = (factor: number): number =>
      spun({ ...swing, dynamicLoft }, factor).carry -
      spun({ ...swing, dynamicLoft: degrees(12) }, factor).carry;
    expect(advice?.gainBand.high).toBeCloseTo(gainAt(LESS), 2);
    expect(advice?.gainBand.low).toBeCloseTo(gainAt(MORE), 2);
    expect(advice?.gain).toBeGreaterThan(advice?.gainBand.low ?? 0);
    expect(advice?.gain).toBeLessThan(advice?.gainBand.high ?? 0);
  });
});
