import { describe, expect, it } from 'vitest';
import { degrees, metres, metresPerSecond, mph, playShot, rpm, warningText } from '../../src/index.js';
import { outsideRange } from '../../src/warnings/warning.js';
import { caught } from '../caught.js';
// Season averages of a tour, driver to wedge: the source and its limits stand in the data.
import tour from '../published/data/tour-averages.json' with { type: 'json' };

const ordinary = tour.rows.filter(({ id }) => id.startsWith('men-'));

describe('the ordinary shots of a tour, driver to wedge', () => {
  it('are twelve', () => {
    expect(ordinary).toHaveLength(12);
  });
  it.each(ordinary)('$id raises no caution', ({ ballSpeed, launchAngleDegrees, backspinRpm }) => {
    const shot = playShot({
      ballSpeed: metresPerSecond(ballSpeed),
      launchAngle: degrees(launchAngleDegrees),
      spinRate: rpm(backspinRpm),
    });
    expect(shot.warnings.filter(({ severity }) => severity === 'caution')).toEqual([]);
  });
});

describe('a value outside a range', () => {
  const judged = (value: number) =>
    outsideRange('spin-ratio-outside-data', 'm', 'spinRatio', { min: 0.08, max: 0.6 }, value);
  it('is a note up to a quarter past the end, a caution beyond', () => {
    expect(judged(0.08)).toBeUndefined();
    expect(judged(0.6)).toBeUndefined();
    expect(judged(0.061)?.severity).toBe('note');
    expect(judged(0.059)?.severity).toBe('caution');
    expect(judged(0.749)?.severity).toBe('note');
    expect(judged(0.751)?.severity).toBe('caution');
  });
  it('is a note however far out where the carry is off by a tenth at most', () => {
    const far = (share: number) =>
      outsideRange('spin-ratio-outside-data', 'm', 'spinRatio', { min: 0.08, max: 0.6 }, 5, {
        carry: metres(200 * share),
        share,
      });
    expect(far(0.1)).toMatchObject({ severity: 'note', effect: { carry: 20 } });
    expect(far(0.101)?.severity).toBe('caution');
  });
  it('holds a range of its own, and survives JSON', () => {
    const range = { min: 0.08, max: 0.6 };
    const warning = outsideRange('spin-ratio-outside-data', 'm', 'spinRatio', range, 1);
    expect(warning?.range).not.toBe(range);
    expect(JSON.parse(JSON.stringify(warning))).toEqual(warning);
  });
});

describe('the sentence of a warning', () => {
  const [warning] = playShot({
    ballSpeed: mph(60),
    launchAngle: degrees(2),
    spinRate: rpm(200),
  }).warnings.filter(({ code }) => code === 'landing-speed-outside-data' || code === 'descent-outside-data');
  it('speaks in the units asked for', () => {
    if (warning === undefined) throw new Error('no warning of the bounce');
    const landing = {
      ...warning,
      code: 'landing-speed-outside-data',
      value: 10,
      range: { min: 15, max: 30 },
    } as const;
    expect(warningText(landing)).toContain('22 mph is below the 34 to 67 mph');
    expect(warningText(landing, { units: 'metres' })).toContain('10 m/s is below the 15 to 30 m/s');
  });
  it('has the decimals that tell a value from the end it has passed', () => {
    const steep = {
      severity: 'note',
      model: 'm',
      quantity: 'descentAngle',
      code: 'descent-outside-data',
      value: degrees(34.97),
      range: { min: degrees(35), max: degrees(60) },
    } as const;
    expect(warningText(steep)).toContain('34.97° is below the 35.00 to 60.00°');
    expect(warningText({ ...steep, value: steep.range.min })).toContain('35.000000°');
  });
  it('says what it may change, where that can be told', () => {
    const told = {
      code: 'spin-ratio-outside-data',
      severity: 'note',
      model: 'm',
      quantity: 'spinRatio',
      range: { min: 0.08, max: 0.6 },
      value: 0.7,
      effect: { carry: metres(3.658) },
    } as const;
    expect(warningText(told)).toContain('the carry is good to about ±4.0 yd');
    expect(warningText(told, { units: 'metres' })).toContain('±3.7 m.');
    expect(warningText({ ...told, effect: {} })).not.toContain('±');
  });
  it('is refused for a code that is none, by a typed error', () => {
    expect(caught(() => warningText({ ...warning, code: 'x' } as never)).field).toBe('warning.code');
    expect(caught(() => warningText(undefined as never)).field).toBe('warning');
  });
});
