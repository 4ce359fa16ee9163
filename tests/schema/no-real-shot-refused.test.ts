import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fly } from '../../src/flight/index.js';
import { readShots } from '../../src/schema/index.js';
import { degrees, metres, metresPerSecond, rpm, toDegrees } from '../../src/units/index.js';

const within = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('the rules for impossible rows', () => {
  it('refuse no shot that the flight model can make, in wind and with landings 10 m above or below the tee', () => {
    const shot = fc.record({
      ball: within(25, 90),
      launch: within(-5, 50),
      spinRatio: within(0.02, 0.4),
      tilt: within(-60, 60),
      along: within(-10, 10),
      elevation: within(-10, 10),
      smash: within(1.25, 1.55),
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
      { numRuns: 400 },
    );
  });
});
