import { describe, expect, it } from 'vitest';
import { expectedStrokes, type Lie } from '../../src/dispersion/index.js';
import { feet, metres, yards } from '../../src/units/index.js';

const at = (
  lie: Lie,
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
      for (let d = lie === 'tee' ? 100 : 0; d < 700; d += 5) {
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
    expect(shown.modelled).toBe(true);
    expect(shown.basis).toMatch(/^modelled/);
    expect(expectedStrokes('tee', yards(60)).modelled).toBe(true);
    expect(expectedStrokes('fairway', yards(650)).modelled).toBe(true);
  });

  it('refuses what it does not know', () => {
    expect(() => expectedStrokes('fairway', metres(-1))).toThrow(/distance/);
    expect(() => expectedStrokes('water' as Lie, metres(100))).toThrow(/lie must be one of/);
    expect(() => at('tee', 300, 200)).toThrow(/averageScore/);
  });
});
