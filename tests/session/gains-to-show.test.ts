import { describe, expect, it } from 'vitest';
import { stream } from '../../src/numerics/index.js';
import { gainsToShow, type MeasuredShot } from '../../src/session/index.js';
import { mph, si, toMph } from '../../src/units/index.js';
import { caught } from '../caught.js';

/** Shots of several days, each with a mean of its own. */
function days(count: number, shots: number, daySd: number, shotSd: number): readonly MeasuredShot[] {
  const { normal } = stream(3, 1);
  return Array.from({ length: count }, (_, day) => {
    const mean = 100 + daySd * normal();
    return Array.from({ length: shots }, () => ({
      clubSpeed: mph(mean + shotSd * normal()),
      session: `day ${day}`,
    }));
  }).flat();
}

describe('a gain of club speed is shown', () => {
  it('within a session by Cohen’s number of shots', () => {
    // Cohen (1988), power 0.8, two-sided 5 %: d = 0.5 needs 64 a group, d = 1 needs 17, the scatter known.
    const shown = gainsToShow(days(1, 4000, 0, 2), { gains: [mph(1), mph(2)] });
    expect(toMph(shown?.shotToShot ?? mph(0))).toBeCloseTo(2, 1);
    expect(shown?.gains.map(({ shots }) => shots)).toEqual([64, 17]);
  });

  it('names no number where none would do: two shots hardly tell how they scatter', () => {
    const [least] = gainsToShow(
      [mph(60), mph(120)].map((clubSpeed) => ({ clubSpeed, label: 'all' })),
      {
        gains: [si(0.001)],
        level: 0.999,
      },
    )?.gains ?? [{ gain: mph(1), shots: 0 }];
    expect(least).not.toHaveProperty('shots');
  });

  it('from day to day by many sessions, which ten times the shots hardly help', () => {
    const few = gainsToShow(days(60, 10, 1.5, 1.5));
    const many = gainsToShow(days(60, 100, 1.5, 1.5));
    expect(few?.basis).toBe('measured');
    // √(1.5² + 1.5²/10) and √(1.5² + 1.5²/100).
    expect(toMph(few?.dayToDay ?? mph(0))).toBeCloseTo(1.57, 0);
    expect(toMph(many?.dayToDay ?? mph(0))).toBeCloseTo(1.51, 0);
    const sessions = (shown: typeof few): number => shown?.gains[0]?.sessions ?? 0;
    expect(sessions(many)).toBeGreaterThan(0.6 * sessions(few));
    expect(sessions(few)).toBeGreaterThan(20);
  });

  it('from day to day by an assumption where fewer than four sessions tell', () => {
    const shown = gainsToShow(days(3, 4, 1, 1.5));
    expect(shown).toMatchObject({ basis: 'assumed', shotsASession: 4 });
    expect(toMph(shown?.dayToDay ?? mph(0))).toBeGreaterThan(0.99);
    expect(gainsToShow(days(4, 4, 1, 1.5))?.basis).toBe('measured');
  });

  it('at one effort: bands of speed are no scatter', () => {
    const ladder = [80, 95, 110].flatMap((speed) =>
      days(1, 8, 0, 1).map(({ clubSpeed = mph(0) }) => ({
        clubSpeed: mph(speed - 100 + toMph(clubSpeed)),
      })),
    );
    expect(toMph(gainsToShow(ladder)?.shotToShot ?? mph(9))).toBeLessThan(1.5);
  });

  it('without a misread', () => {
    const clean = days(5, 10, 1, 1.2);
    const [first = {}, ...rest] = clean;
    const misread = [{ ...first, clubSpeed: mph(125) }, ...rest];
    expect(gainsToShow(misread)?.gains[0]?.shots).toBeLessThan(
      1.3 * (gainsToShow(clean)?.gains[0]?.shots ?? 0),
    );
  });

  it('not where no speed repeats', () => {
    expect(gainsToShow([{ clubSpeed: mph(90) }])).toBeUndefined();
    expect(gainsToShow([{ ballSpeed: mph(90) }, { ballSpeed: mph(91) }])).toBeUndefined();
    expect(gainsToShow([{ clubSpeed: mph(90) }, { clubSpeed: mph(90) }])).toBeUndefined();
  });

  it('and refuses bad input by name', () => {
    expect(caught(() => gainsToShow([])).field).toBe('shots');
    expect(caught(() => gainsToShow([{}], { gains: [mph(1), mph(0)] })).field).toBe('options.gains[1]');
    expect(caught(() => gainsToShow([{}], { level: 2 })).field).toBe('options.level');
  });
});
