import { describe, expect, it } from 'vitest';
import type { MeasuredShot } from '../../src/inputs/measured-shot.js';
import { stream } from '../../src/numerics/index.js';
import { summariseSession } from '../../src/session/index.js';
import { degrees, metres, mph, rpm } from '../../src/units/index.js';

/** Invented drives at speeds of 85 to 105 mph. */
function drives(count: number): readonly MeasuredShot[] {
  const { normal } = stream(5);
  return Array.from({ length: count }, (_, i) => {
    const club = 85 + 20 * ((i * 0.618034) % 1);
    return {
      clubSpeed: mph(club),
      ballSpeed: mph(club * (1.45 + 0.02 * normal())),
      launchAngle: degrees(13 + normal()),
      spinRate: rpm(2600 + 200 * normal()),
      carry: metres(2.2 * club + 5 * normal()),
    };
  });
}

/** Processor time, which other programs on the machine do not lengthen [ms]. */
function timeOf(shots: readonly MeasuredShot[]): number {
  const start = process.cpuUsage();
  summariseSession(shots);
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

describe('a season of shots', () => {
  it('is summarised in time that grows with its length, not with the square', () => {
    const [short, long] = [drives(2_000), drives(8_000)];
    const ratios = [0, 1, 2].map(() => timeOf(long) / timeOf(short));
    // Linear is 4, with a logarithm 4.7; every pair of shots would be 16.
    expect(Math.min(...ratios)).toBeLessThan(8);
  });
});
