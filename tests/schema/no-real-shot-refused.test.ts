import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fly } from '../../src/flight/index.js';
import { readShots } from '../../src/schema/index.js';
import { degrees, metres, metresPerSecond, rpm, toDegrees } from '../../src/units/index.js';
import { even } from '../even.js';

describe('the rules for impossible rows', () => {
  it('refuse no shot that the flight model can make, in wind and with landings 25 m above or below the tee', () => {
    const shot = fc.record({
      ball: even(12, 90),
      launch: even(-5, 50),
      spinRatio: even(0.02, 0.4),
      tilt: even(-60, 60),
      along: even(-12, 12),
      elevation: even(-25, 25),
      smash: even(1.25, 1.55),
    });
    fc.assert(
      fc.property(shot, ({ ball, launch, spinRatio, tilt, along, elevation, smash }) => {
        const spin = Math.max(500, (spinRatio * ball * 30) / Math.PI / 0.021335);
        const flight = fly(
          {
            ballSpeed: metresPerSecond(ball),
            launchAngle: degrees(launch),
            spinRate: rpm(spin),
            spinAxisTilt: degrees(tilt),
          },
          {
            wind: { along: metresPerSecond(along), across: metresPerSecond(0) },
            ground: { elevation: metres(elevation) },
          },
        );
        fc.pre(
          flight.ended === 'landed' && spin < 16_000 && flight.descentAngle > 0 && flight.hangTime > 0.1,
        );
        const cells = [
          ball / smash,
          ball,
          launch,
          spin,
          flight.carry,
          flight.apex,
          toDegrees(flight.descentAngle),
          flight.hangTime,
        ];
        const header =
          'club speed (m/s),ball speed (m/s),launch (deg),spin (rpm),carry (m),apex (m),descent (deg),hang time (s)';
        const table = readShots(`${header}\n${cells.map((cell) => cell.toFixed(4)).join(',')}\n`);
        expect(table.rejected).toEqual([]);
        expect(table.shots).toHaveLength(1);
      }),
      { numRuns: 400, endOnFailure: true },
    );
  });
});
