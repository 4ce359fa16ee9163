import { describe, expect, it } from 'vitest';
import { degrees, mph, strike, toDegrees } from '../../src/index.js';
import { compare, groups } from './validation/index.js';

describe('launch averages against the strike model', () => {
  const spinning = groups.filter(({ title }) => /^(Launch from delivery|Common practice)$/.test(title));
  const rows = spinning.flatMap((group) => compare(group));
  const steady = spinning.flatMap((group) => compare(group, {}, { tangentialRestitution: '−0.2' }));
  const error = (id: string, from = rows): number => {
    const row = from.find((r) => r.id === id);
    if (row === undefined) throw new Error(`no row ${id}`);
    return 100 * (row.error / row.expected);
  };
  // The prototype's own comparison with the same rows, in per cent: with one tangential restitution for all speeds the
  // slow drives spin too little and the fast ones too much.
  it.each<[string, number, number]>([
    ['tour men driver', -1.6, 4.5],
    ['tour women driver', -0.8, -25],
    ['ball test current', -0.2, -3],
    ['ball test 2028', -0.6, 27.5],
  ])('%s: ball speed %f %%, spin %f %% as the reference set has it', (set, speed, spin) => {
    expect(error(`${set} ball speed`, steady)).toBeCloseTo(speed, 0);
    expect(Math.abs(error(`${set} spin`, steady) - spin)).toBeLessThan(1);
  });

  it('fairway wood and irons within 3 % of ball speed (1.5 % definition of club speed, 1 % rounding) and 7 % of spin', () => {
    for (const row of rows.filter(({ id }) => /^tour.*(wood|iron|PW)/.test(id))) {
      const limit = row.measure === 'ball speed' ? 3 : 7;
      expect(Math.abs(error(row.id)), row.id).toBeLessThan(limit);
    }
  });

  it('spin of the slow group and of the women’s average within 12 %, of any drive within 13 %', () => {
    for (const id of ['group-spin', 'tour women driver spin'])
      expect(Math.abs(error(id)), id).toBeLessThan(12);
    const drives = ['tour men driver', 'ball test current', 'ball test 2028', 'robot'];
    for (const set of drives) expect(Math.abs(error(`${set} spin`)), set).toBeLessThan(13);
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
