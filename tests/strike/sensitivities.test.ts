import { describe, expect, it } from 'vitest';
import {
  clubheads,
  degrees,
  metresPerSecond,
  millimetres,
  strike,
  toDegrees,
  toRpm,
} from '../../src/index.js';
import { gramSquareCentimetres, radiansPerSecond } from '../../src/units/index.js';
import { CASE_B, driverWith, loftForLaunch, steadyDriver, strikeB } from './helpers.js';

// Source of every number here: the prototype of the same model, written independently, whose results were
// printed to the whole rpm and the hundredth of a degree (see published/data/impact-prototype.json).

const driver = clubheads.driver;
const grip = (value: number) => driverWith({ tangentialRestitution: { kind: 'constant', value } });
const vertical = (value: number) =>
  driverWith({ inertia: { ...driver.inertia, vertical: gramSquareCentimetres(value) } });
const depth = (value: number) =>
  driverWith({ centreOfGravity: { ...driver.centreOfGravity, depth: millimetres(value) } });
const bulge = (value: number) => driverWith({ bulge: millimetres(value) });
const netSidespin = (head: typeof driver) => Math.round(toRpm(strikeB(10, 0, head).sidespin));

describe('sensitivities of the reference set', () => {
  it.each([
    [-0.3, 2408],
    [-0.25, 2606],
    [-0.2, 2807],
    [-0.1, 3221],
    [0, 3653],
    [0.2, 4573],
  ])('tangential restitution %f: %i rpm at a launch of 10.9°', (value, printed) => {
    expect(Math.abs(toRpm(strikeB(0, 0, grip(value)).backspin) - printed)).toBeLessThanOrEqual(1);
  });

  it.each([
    [36.7, [582, 1161, 1734, 2299, 2852]],
    [50.5, [801, 1597, 2386, 3163, 3925]],
  ] as const)('spin against spin loft of 4 to 20° at %f m/s', (speed, printed) => {
    const spins = [4, 8, 12, 16, 20].map((loft) =>
      Math.round(
        toRpm(
          strike(
            {
              clubSpeed: metresPerSecond(speed),
              attackAngle: degrees(0),
              dynamicLoft: degrees(loft),
            },
            { clubhead: steadyDriver },
          ).backspin,
        ),
      ),
    );
    expect(spins).toEqual(printed);
  });

  it('smash factor against spin loft at 50.5 m/s', () => {
    const smash = [4, 8, 12, 16, 20].map((loft) =>
      strike({
        clubSpeed: metresPerSecond(50.5),
        attackAngle: degrees(0),
        dynamicLoft: degrees(loft),
      }).smashFactor.toFixed(3),
    );
    expect(smash).toEqual(['1.493', '1.483', '1.466', '1.442', '1.412']);
  });

  it.each([
    ['inertia 4000', vertical(4000), -441],
    ['inertia 4800', vertical(4800), -306],
    ['inertia 5400', vertical(5400), -230],
    ['inertia 5900', vertical(5900), -178],
    ['depth 30', depth(30), -155],
    ['depth 45', depth(45), -374],
    ['bulge 254', bulge(254), -208],
    ['bulge 356', bulge(356), -376],
  ])('net sidespin 10 mm toward the toe, %s', (_name, head, printed) => {
    expect(Math.abs(netSidespin(head) - printed)).toBeLessThanOrEqual(1);
  });

  it.each([
    [254, 2.46],
    [305, 2.15],
    [356, 1.92],
  ])('bulge of %i mm starts a 10 mm toe strike %f° to the right', (radius, printed) => {
    const start = toDegrees(strikeB(10, 0, bulge(radius)).launch.launchDirection ?? degrees(0));
    expect(Math.abs(start - printed)).toBeLessThanOrEqual(0.006);
  });

  it('centre of gravity 1 mm higher: +111 rpm and -0.08° of launch', () => {
    const loft = loftForLaunch(CASE_B.clubSpeed, CASE_B.attackAngle, CASE_B.launchAngle);
    const higher = driverWith({ centreOfGravity: { ...driver.centreOfGravity, high: millimetres(1) } });
    const before = strikeB(0, 0, steadyDriver, loft);
    const after = strikeB(0, 0, higher, loft);
    expect(toRpm(after.backspin) - toRpm(before.backspin)).toBeCloseTo(111, 0);
    expect(toDegrees(after.launch.launchAngle) - toDegrees(before.launch.launchAngle)).toBeCloseTo(-0.08, 2);
  });

  it('closing at 30 rad/s: start 0.2° to the left, 270 rpm of fade spin', () => {
    const hit = strike({
      clubSpeed: metresPerSecond(50.5),
      attackAngle: degrees(-1.3),
      dynamicLoft: degrees(12.86),
      closureRate: radiansPerSecond(30),
    });
    expect(toDegrees(hit.launch.launchDirection ?? degrees(0))).toBeCloseTo(-0.2, 1);
    expect(Math.abs(toRpm(hit.sidespin) - 270)).toBeLessThan(5);
  });

  it('one degree of spin loft: 194 rpm and -0.31 m/s of ball speed; 0.01 of restitution 0.40 m/s', () => {
    const at = (loft: number, restitution = 0.838) =>
      strike(
        {
          clubSpeed: metresPerSecond(50.5),
          attackAngle: degrees(-1.3),
          dynamicLoft: degrees(loft),
        },
        { clubhead: driverWith({ restitution: { ...driver.restitution, atReference: restitution } }) },
      );
    expect((toRpm(at(13.86).backspin) - toRpm(at(12.86).backspin)) / 194).toBeCloseTo(1, 1);
    expect(at(13.86).launch.ballSpeed - at(12.86).launch.ballSpeed).toBeCloseTo(-0.31, 2);
    expect(at(12.86, 0.843).launch.ballSpeed - at(12.86, 0.833).launch.ballSpeed).toBeCloseTo(0.4, 2);
  });

  it('off centre by 10 mm: ball speed -1.0 % toward toe or heel, -2.1 % high, -0.2 % low', () => {
    const centre = strikeB(0, 0).launch.ballSpeed;
    const loss = (toe: number, high: number) => 100 * (strikeB(toe, high).launch.ballSpeed / centre - 1);
    const loft = loftForLaunch(CASE_B.clubSpeed, CASE_B.attackAngle, CASE_B.launchAngle);
    expect(loft).toBeCloseTo(12.86, 2);
    expect(loss(10, 0)).toBeCloseTo(-1, 1);
    expect(loss(-10, 0)).toBeCloseTo(-1, 1);
    expect(loss(0, 10)).toBeCloseTo(-2.1, 1);
    expect(loss(0, -10)).toBeCloseTo(-0.2, 1);
  });
});
