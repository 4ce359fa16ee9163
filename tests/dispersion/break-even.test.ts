import { describe, expect, it } from 'vitest';
import { breakEvenAt } from '../../src/dispersion/break-even.js';
import type { BreakEven, PairedDifference } from '../../src/dispersion/index.js';
import { mph } from '../../src/units/index.js';

const known = (value: number, standardError: number): PairedDifference => ({
  value,
  standardError,
  interval: { low: value - 2 * standardError, high: value + 2 * standardError },
});
const FACTORS = [0.6, 1, 1.5, 2.2];
/** Break-even of a curve known to so much everywhere. */
const of = (
  curve: (factor: number) => number,
  standardError: number,
  widest = Number.POSITIVE_INFINITY,
): BreakEven =>
  breakEvenAt(
    mph(100),
    (factor) => (factor > widest ? undefined : known(curve(factor), standardError)),
    FACTORS,
  );

describe('break-even of a known curve', () => {
  it('finds the factor, and as its interval the factors at which the difference starts to be clear', () => {
    // Strokes rise with the square of the scatter: nought at 1.3, clear by 0.02 at the roots of f² = 1.69 ± 0.02.
    const answer = of((f) => f * f - 1.69, 0.01);
    if (answer.kind !== 'within') throw new Error(answer.kind);
    const [{ value, interval, pays }] = answer.factors as [(typeof answer.factors)[0]];
    expect(value).toBeCloseTo(1.3, 2);
    expect(interval.low).toBeCloseTo(Math.sqrt(1.67), 2);
    expect(interval.high).toBeCloseTo(Math.sqrt(1.71), 2);
    expect(pays).toBe('narrower');
  });

  it('finds every factor where strokes rise and fall, and says on which side the speed pays', () => {
    const answer = of((f) => (f - 0.8) * (f - 1.8), 0.01);
    expect(answer.kind === 'within' && answer.factors.map(({ pays }) => pays)).toEqual(['wider', 'narrower']);
    const values = answer.kind === 'within' ? answer.factors.map(({ value }) => value) : [];
    expect(values[0]).toBeCloseTo(0.8, 1);
    expect(values[1]).toBeCloseTo(1.8, 1);
  });

  it.each([
    ['more strokes at every factor', (): number => 1, 'under', 0.6],
    ['fewer at every factor', (): number => -1, 'over', 2.2],
    [
      'more from about 1.3 on, before that not clear',
      (f: number): number => Math.max(0, f - 1.28),
      'under',
      1.3,
    ],
    [
      'fewer up to about 0.9, after that not clear',
      (f: number): number => Math.min(0, f - 0.92),
      'over',
      0.9,
    ],
  ] as const)('says on which side it lies: %s', (_name, curve, kind, factor) => {
    const answer = of(curve, 0.01);
    expect(answer.kind).toBe(kind);
    const found = answer.kind === 'under' || answer.kind === 'over' ? answer.factor : Number.NaN;
    // On the side where it is clear, and near: an eighth of the way between two factors looked at.
    const beyond = kind === 'under' ? found / factor : factor / found;
    expect(beyond).toBeGreaterThan(0.999);
    expect(beyond).toBeLessThan(1.07);
  });

  it('says nothing where nothing is clear, and looks no wider than can be played', () => {
    expect(of(() => 0.01, 1)).toEqual({ clubSpeed: mph(100), kind: 'unclear' });
    expect(of(() => -1, 0.01, 1.7)).toMatchObject({ kind: 'over', factor: 1.5 });
    expect(of(() => -1, 0.01, 0.1)).toMatchObject({ kind: 'unclear' });
  });
});
