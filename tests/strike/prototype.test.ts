import { describe, expect, it } from 'vitest';
import { degrees, metresPerSecond, millimetres, strike, toDegrees, toRpm } from '../../src/index.js';
import prototype from '../published/data/impact-prototype.json' with { type: 'json' };
import { steadyDriver } from './helpers.js';

/** The prototype solved the loft of two cases for a given launch of the centred strike and printed it rounded. */
const SOLVED_LAUNCH: Record<string, number> = { b: 10.9, c: 10 };

function solvedLoft(row: (typeof prototype.rows)[number]): number {
  const target = SOLVED_LAUNCH[row.case];
  if (target === undefined) return row.dynamicLoft;
  let low = row.dynamicLoft - 0.01;
  let high = row.dynamicLoft + 0.01;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    const launched = strike(
      {
        clubSpeed: metresPerSecond(row.clubSpeed),
        attackAngle: degrees(row.attackAngle),
        dynamicLoft: degrees(middle),
      },
      { clubhead: steadyDriver },
    );
    if (toDegrees(launched.launch.launchAngle) < target) low = middle;
    else high = middle;
  }
  return low;
}

describe('an independent prototype of the same model', () => {
  it.each(prototype.rows)('case $case, toe $toe mm, high $high mm: every printed digit', (row) => {
    const hit = strike(
      {
        clubSpeed: metresPerSecond(row.clubSpeed),
        attackAngle: degrees(row.attackAngle),
        dynamicLoft: degrees(solvedLoft(row)),
        strikeOffset: { toe: millimetres(row.toe), high: millimetres(row.high) },
      },
      { clubhead: steadyDriver },
    );
    const within = (value: number, printed: number, decimals: number): void => {
      expect(Math.abs(value - printed)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-9);
    };
    within(hit.launch.ballSpeed, row.ballSpeed, 2);
    within(hit.smashFactor, row.smash, 3);
    within(toDegrees(hit.launch.launchAngle), row.launchAngle, 2);
    within(toDegrees(hit.launch.launchDirection ?? degrees(0)), row.launchDirection, 2);
    within(toRpm(hit.backspin), row.backspin, 0);
    within(toRpm(hit.sidespin), row.sidespin, 0);
    within(toDegrees(hit.launch.spinAxisTilt ?? degrees(0)), row.tilt, 1);
    within(hit.restitution, row.restitution, 3);
  });
});
