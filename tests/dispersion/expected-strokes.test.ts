import { describe, expect, it } from 'vitest';
import { type BallLie, expectedStrokes } from '../../src/dispersion/index.js';
import { feet, metres, yards } from '../../src/units/index.js';
import { caught } from '../caught.js';

const at = (
  lie: BallLie,
  distance: number,
  averageScore?: number,
  table: 'raw' | 'smoothed' = 'smoothed',
): number =>
  expectedStrokes(lie, lie === 'green' ? feet(distance) : yards(distance), {
    ...(averageScore !== undefined && { skill: { averageScore } }),
    table,
  }).strokes;
const average = (values: readonly number[]): number => values.reduce((s, v) => s + v, 0) / values.length;

describe('expectedStrokes', () => {
  // Broadie (2012), table 9, cells copied from the press and from the table itself.
  it('has the published cells', () => {
    expect(at('tee', 400, undefined, 'raw')).toBe(3.99);
    expect(at('fairway', 160, undefined, 'raw')).toBe(2.98);
    expect(at('rough', 300)).toBeCloseTo(3.9, 9);
    expect(at('recovery', 200)).toBeCloseTo(3.87, 9);
    expect(at('green', 8)).toBeCloseTo(1.5, 9);
    expect(at('green', 33)).toBeCloseTo(2, 1);
    expect(expectedStrokes('fairway', yards(160)).modelled).toBe(false);
  });

  // Broadie (2012), text: rough costs 0.23 at 120 yd and 0.20 on average over 50 to 150 yd; recovery costs 0.6 against
  // the fairway and 0.4 against the rough at 150 to 300 yd.
  it('has the published costs of rough and recovery', () => {
    expect(at('rough', 120) - at('fairway', 120)).toBeCloseTo(0.23, 2);
    const near = [50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 150];
    expect(average(near.map((d) => at('rough', d) - at('fairway', d)))).toBeCloseTo(0.2, 1);
    const far = [160, 180, 200, 220, 240, 260, 280, 300];
    expect(average(far.map((d) => at('recovery', d) - at('fairway', d)))).toBeCloseTo(0.6, 1);
    expect(average(far.map((d) => at('recovery', d) - at('rough', d)))).toBeCloseTo(0.4, 1);
  });

  it('rises with distance everywhere when smoothed, and keeps the published dip when raw', () => {
    expect(at('tee', 120, undefined, 'raw')).toBeGreaterThan(at('tee', 140, undefined, 'raw'));
    for (const lie of ['tee', 'fairway', 'rough', 'sand', 'recovery', 'green'] as const) {
      // Yards; on the green feet, as far as a green reaches.
      const last = lie === 'green' ? 160 : 700;
      for (let d = lie === 'tee' ? 100 : 0; d < last; d += 5) {
        expect(at(lie, d + 5)).toBeGreaterThanOrEqual(at(lie, d) - 1e-12);
        expect(Math.abs(at(lie, d) - at(lie, d, undefined, 'raw'))).toBeLessThan(0.06);
      }
    }
  });

  // Tee-shot lines: professionals 2.38 + 0.0041 d, R² above 0.98 (Broadie 2012, sec. 3.1); golfers averaging 90
  // 2.79 + 0.0066 d (Broadie 2008).
  it('lies along the published tee-shot lines', () => {
    for (let d = 160; d <= 600; d += 20)
      expect(Math.abs(at('tee', d) - (2.38 + 0.0041 * d))).toBeLessThan(0.2);
    expect(at('tee', 400, 90)).toBeCloseTo(2.79 + 0.0066 * 400, 9);
    expect(expectedStrokes('tee', yards(400), { skill: { averageScore: 90 } }).modelled).toBe(false);
  });

  it('adds up to about a round: 90 strokes over 18 holes of 6,200 yards, and 71 for a professional over 7,200', () => {
    // Lengths of an ordinary course, common practice, no source.
    const holes = [150, 165, 180, 195, 330, 340, 350, 355, 360, 365, 370, 380, 390, 400, 480, 490, 500, 505];
    const total = (score: number | undefined, stretch: number): number =>
      holes.reduce((sum, d) => sum + at('tee', d * stretch, score), 0);
    const yardage = holes.reduce((s, d) => s + d, 0);
    expect(total(90, 6200 / yardage)).toBeGreaterThan(88);
    expect(total(90, 6200 / yardage)).toBeLessThan(93);
    expect(total(undefined, 7200 / yardage)).toBeGreaterThan(69);
    expect(total(undefined, 7200 / yardage)).toBeLessThan(73);
  });

  // Broadie (2014, correspondence): an 80-golfer lies about midway between 70 and 90. Anchors of putting: a 90-golfer
  // needs two putts from 19 ft on average and holes half from 5 ft (Broadie 2012).
  it('puts an 80-golfer midway and models the rest, saying so', () => {
    expect(at('fairway', 150, 80)).toBeCloseTo((at('fairway', 150) + at('fairway', 150, 90)) / 2, 9);
    expect(at('green', 19, 90)).toBeCloseTo(2, 1);
    expect(Math.abs(at('green', 5, 90) - 1.5)).toBeLessThan(0.06);
    const shown = expectedStrokes('fairway', yards(150), { skill: { averageScore: 90 } });
    expect(shown).toMatchObject({ modelled: true, extrapolated: false, basis: 'table-and-tee-gap' });
    const continued = { modelled: true, extrapolated: true, basis: 'professional-table' };
    expect(expectedStrokes('tee', yards(60))).toMatchObject(continued);
    expect(expectedStrokes('fairway', yards(650))).toMatchObject(continued);
  });

  it.each([
    ['tee', 400, {}, 'professional-table', false],
    ['tee', 400, { skill: { averageScore: 90 } }, 'tee-line-of-90', false],
    ['tee', 400, { skill: { averageScore: 100 } }, 'between-tee-lines', true],
    ['rough', 150, { skill: { averageScore: 80 } }, 'table-and-tee-gap', true],
    ['green', 5, {}, 'professional-putts', false],
    ['green', 5, { skill: { averageScore: 80 } }, 'stretched-putts', true],
    ['green', 0.5, {}, 'professional-putts', true],
    ['green', 40, {}, 'professional-putts', true],
  ] as const)(
    'says where the strokes from the %s at %d yd of %j come from',
    (lie, far, options, basis, modelled) => {
      expect(expectedStrokes(lie, yards(far), options)).toMatchObject({ basis, modelled });
    },
  );

  it('refuses what it does not know', () => {
    const field = (action: () => unknown): string | undefined => caught(action).field;
    const given = (options: object) => () => expectedStrokes('tee', yards(300), options);
    expect(field(() => expectedStrokes('fairway', metres(-1)))).toBe('distance');
    expect(field(() => expectedStrokes('fairway', yards(801)))).toBe('distance');
    expect(field(() => expectedStrokes('green', metres(51)))).toBe('distance');
    expect(field(() => expectedStrokes('water' as BallLie, metres(100)))).toBe('lie');
    expect(field(given({ skill: { averageScore: 200 } }))).toBe('options.skill.averageScore');
    expect(field(given({ skill: 'amateur' }))).toBe('options.skill');
    expect(field(given({ skill: {} }))).toBe('options.skill.averageScore');
    expect(field(given({ averageScore: 100 }))).toBe('options.averageScore');
    expect(field(given({ table: 'rough' }))).toBe('options.table');
  });
});
