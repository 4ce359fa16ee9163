import { describe, expect, it } from 'vitest';
import { stream } from '../../src/numerics/index.js';
import { type MeasuredShot, scatterTrend } from '../../src/session/index.js';
import { degrees, mph, toDegrees, toMph } from '../../src/units/index.js';
import { caught } from '../caught.js';

/** An invented player: 2° of launch direction at 100 mph, growing by a share with each mph. */
function shots(growth: number, each: number, seed: number): MeasuredShot[] {
  const random = stream(seed);
  return [90, 95, 100, 105, 110].flatMap((speed) =>
    Array.from({ length: each }, () => ({
      clubSpeed: mph(speed),
      launchDirection: degrees(2 * (1 + growth) ** (speed - 100) * random.normal()),
    })),
  );
}

describe('scatterTrend', () => {
  it('recovers a growth of 3 % a mph and the scatter itself', () => {
    const trend = scatterTrend(shots(0.03, 2000, 1));
    expect(trend.growthPerMph).toBeCloseTo(0.03, 2);
    expect(toDegrees(trend.sd as Parameters<typeof toDegrees>[0])).toBeCloseTo(2, 1);
    expect(toMph(trend.atSpeed)).toBeCloseTo(100, 6);
    expect(trend.unclear).toBe(false);
    expect(trend.bands).toHaveLength(5);
  });

  it('covers no growth about as often as it says, with few shots a band', () => {
    let held = 0;
    for (let k = 0; k < 200; k++) if (scatterTrend(shots(0, 8, 100 + k)).unclear) held++;
    // The normal approximation of ln s falls a little short of 95 % at eight shots a band.
    expect(held / 200).toBeGreaterThan(0.87);
    expect(held / 200).toBeLessThan(0.99);
  });

  it('refuses by the path the caller wrote', () => {
    const field = (shots: unknown, options?: unknown): string | undefined =>
      caught(() => scatterTrend(shots as never, options as never)).field;
    const some = [{ clubSpeed: mph(90) }];
    expect(field(undefined)).toBe('shots');
    expect(field([...some, { clubSped: 1 }])).toBe('shots[1].clubSped');
    expect(field(some, { quantity: 'speed' })).toBe('options.quantity');
    expect(field(some, { bands: [{ from: mph(90), to: mph(80) }] })).toBe('options.bands[0].to');
    expect(field(some, { bands: 'label' })).toBe('options.bands');
  });

  it('needs two bands', () => {
    expect(() => scatterTrend(shots(0, 5, 1).slice(0, 5))).toThrow(/two bands/);
    expect(() => scatterTrend([{ launchDirection: degrees(1) }])).toThrow(/two bands/);
  });
});
