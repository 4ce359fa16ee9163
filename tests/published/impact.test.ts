import { describe, expect, it } from 'vitest';
import { degrees, mph, strike, toDegrees } from '../../src/index.js';
import { compare, groups } from './validation/index.js';

describe('launch averages against the strike model', () => {
  const rows = groups
    .filter(({ title }) => title === 'Launch from delivery')
    .flatMap((group) => compare(group));
  const error = (id: string): number => {
    const row = rows.find((r) => r.id === id);
    if (row === undefined) throw new Error(`no row ${id}`);
    return 100 * (row.error / row.expected);
  };
  const spinErrors = ['tour men driver', 'tour women driver', 'ball test current', 'ball test 2028'].map(
    (set) => error(`${set} spin`),
  );

  // The prototype's own comparison with the same rows, in per cent: what fits and what does not. Two sets are known
  // misfits: no single tangential restitution and attack angle fits both ball tests, and the spin of the women's
  // averages is unexplained.
  it.each<[string, number, number]>([
    ['tour men driver', -1.6, 4.5],
    ['tour women driver', -0.8, -25],
    ['ball test current', -0.2, -3],
    ['ball test 2028', -0.6, 27.5],
  ])('%s: ball speed %f %%, spin %f %% as the reference set has it', (set, speed, spin) => {
    expect(error(`${set} ball speed`)).toBeCloseTo(speed, 0);
    expect(Math.abs(error(`${set} spin`) - spin)).toBeLessThan(1);
  });

  it('fairway wood and irons within 3 % of ball speed (1.5 % definition of club speed, 1 % rounding) and 7 % of spin', () => {
    for (const row of rows.filter(({ id }) => /wood|iron|PW/.test(id))) {
      const limit = row.measure === 'ball speed' ? 3 : 7;
      expect(Math.abs(error(row.id)), row.id).toBeLessThan(limit);
    }
  });

  it('one standard deviation of driver spin is the stated 20 %', () => {
    const rms = Math.sqrt(spinErrors.reduce((sum, e) => sum + e ** 2, 0) / spinErrors.length);
    expect(rms).toBeGreaterThan(10);
    expect(rms).toBeLessThan(20);
  });
});

describe('smash factor of centred driver strikes', () => {
  const smash = (speed: number, attack: number, loft: number): number =>
    strike({ clubSpeed: mph(speed), attackAngle: degrees(attack), dynamicLoft: degrees(loft) }).smashFactor;

  it('1.47 to 1.51 at spin lofts of 8 to 12° (common practice, no source), 80 to 120 mph', () => {
    // Two definitions of club speed (radar or contact point) differ by about 1.5 %, so the band is widened by that.
    for (const speed of [80, 90, 100, 110, 120]) {
      for (const loft of [8, 10, 12]) {
        expect(smash(speed, 0, loft)).toBeGreaterThan(1.47 / 1.015);
        expect(smash(speed, 0, loft)).toBeLessThan(1.51);
      }
    }
  });

  it('82.1 mph, ball 122.5 mph, 1.49, launch 8.2°, level attack (common practice, no source)', () => {
    let loft = 5;
    const launch = (l: number): number =>
      toDegrees(
        strike({ clubSpeed: mph(82.1), attackAngle: degrees(0), dynamicLoft: degrees(l) }).launch.launchAngle,
      );
    while (launch(loft) < 8.2) loft += 0.01;
    expect(smash(82.1, 0, loft)).toBeCloseTo(1.49, 2);
  });
});
