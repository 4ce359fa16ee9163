import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { presentDayModels } from '../../src/aerodynamics/registry.js';
import { airAt, airAtAltitude } from '../../src/air/index.js';
import { playShot } from '../../src/index.js';
import { changeElsewhere, type ModelledChange } from '../../src/session/index.js';
import { celsius, degrees, metres, mph, rpm, si, yards } from '../../src/units/index.js';
import { caught } from '../caught.js';
import { even } from '../even.js';

const drive = { ballSpeed: mph(155), launchAngle: degrees(13), spinRate: rpm(2600) };
const slow = { ballSpeed: mph(110), launchAngle: degrees(14), spinRate: rpm(2500) };
const mountain = { air: airAtAltitude({ altitude: metres(1600) }) };
const winter = { air: airAt({ temperature: celsius(5) }) };

describe('changeElsewhere', () => {
  it('spans what every model of a present-day ball finds for one shot', () => {
    const { carry, models, withinRange } = changeElsewhere([drive], { to: mountain });
    expect([models, withinRange]).toEqual([presentDayModels, true]);
    const found = presentDayModels.map(
      (aerodynamics) =>
        playShot(drive, { ...mountain, aerodynamics }).carry - playShot(drive, { aerodynamics }).carry,
    );
    expect(carry.value).toBeCloseTo(found[0] ?? 0, 9);
    expect(carry.spread?.low).toBeCloseTo(Math.min(...found), 9);
    expect(carry.spread?.high).toBeCloseTo(Math.max(...found), 9);
    expect(carry.known).toBe(true);
  });

  it('does not know what the cold and a mountain do to a slow drive: the models disagree', () => {
    for (const to of [mountain, winter]) expect(changeElsewhere([slow], { to }).carry.known).toBe(false);
  });

  it('knows that nothing changes where nothing does', () => {
    const { carry, side } = changeElsewhere([slow], { to: {} });
    expect(carry).toEqual({ value: 0, spread: { low: 0, high: 0 }, known: true });
    expect(side.known).toBe(true);
  });

  it('flies all models where most are out of their range, and says so', () => {
    const wedge = { ballSpeed: mph(80), launchAngle: degrees(30), spinRate: rpm(9000) };
    const { withinRange, models, carry } = changeElsewhere([wedge], { to: winter });
    expect([withinRange, models]).toEqual([false, presentDayModels]);
    expect(carry.spread).toBeDefined();
  });

  it('gives no spread for a ball that the scene names', () => {
    const named = { aerodynamics: 'naruo-2004' } as const;
    const { carry, models } = changeElsewhere([drive], { from: named, to: { ...mountain, ...named } });
    expect([models, carry.spread, carry.known]).toEqual([[], undefined, undefined]);
  });

  it('calls a change known only where all models agree on its sign, and closer than the change', () => {
    fc.assert(
      fc.property(even(75, 200), even(8, 20), even(1500, 4000), even(-10, 40), (ball, launch, spin, warm) => {
        const shot = { ballSpeed: mph(ball), launchAngle: degrees(launch), spinRate: rpm(spin) };
        const to = { air: airAt({ temperature: celsius(warm) }), turf: 'firm' } as const;
        const changes = changeElsewhere([shot], { to });
        const holds = ({ value, spread = { low: si(0), high: si(0) }, known }: ModelledChange): void => {
          const { low, high } = spread;
          expect(low <= value && value <= high).toBe(true);
          const none = Math.max(Math.abs(low), Math.abs(high)) < yards(0.5);
          if (known) expect(none || (low * high > 0 && high - low <= Math.abs(value))).toBe(true);
          else expect(low * high <= 0 || high - low > Math.abs(value)).toBe(true);
        };
        [changes.carry, changes.total, changes.side].forEach(holds);
      }),
      { numRuns: 15 },
    );
  });

  it('names a shot without a launch', () => {
    expect(caught(() => changeElsewhere([drive, { ballSpeed: mph(100) }], {})).field).toBe(
      'shots[1].launchAngle',
    );
    expect(caught(() => changeElsewhere([], {})).field).toBe('shots');
  });
});
