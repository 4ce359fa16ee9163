import { describe, expect, it } from 'vitest';
import { bestSpeeds } from '../../src/dispersion/best-speed.js';
import { clearOfMany, pairedDifference } from '../../src/dispersion/paired-difference.js';
import { stream } from '../../src/numerics/index.js';
import { mph, toMph } from '../../src/units/index.js';

const SHOTS = 400;
const SPEEDS = [90, 92, 94, 96, 98, 100, 102].map(mph);
const luck = Array.from({ length: SHOTS }, (_, i) => stream(7, i).normal());

/** Strokes shot by shot with these means: the same luck at every speed, and some of its own. */
function columns(means: readonly number[], own: number): Float64Array[] {
  return means.map((mean, k) => {
    const noise = Array.from({ length: SHOTS }, (_, i) => stream(k + 100, i).normal());
    const centre = noise.reduce((sum, each) => sum + each, 0) / SHOTS;
    return Float64Array.from(luck, (each, i) => mean + each + own * ((noise[i] ?? 0) - centre));
  });
}
const best = (means: readonly number[], own: number): ReturnType<typeof bestSpeeds> => {
  const strokes = columns(means, own);
  return bestSpeeds(SPEEDS, strokes, strokes[2] ?? new Float64Array());
};
const clubSpeeds = (found: ReturnType<typeof bestSpeeds>): number[] =>
  found.map(({ clubSpeed }) => Math.round(toMph(clubSpeed)));

describe('a paired difference', () => {
  it('has the error of the differences, not of the columns', () => {
    const [one, other] = columns([4, 4.1], 0.1) as [Float64Array, Float64Array];
    const { value, standardError, interval } = pairedDifference(one, other);
    expect(value).toBeCloseTo(-0.1, 9);
    // Two independent parts of 0.1 over 400 shots; within a tenth, which is 3 standard errors of a standard deviation.
    expect(standardError / ((0.1 * Math.SQRT2) / Math.sqrt(SHOTS))).toBeCloseTo(1, 0.5);
    expect(interval.high - interval.low).toBeCloseTo(2 * 1.96 * standardError, 5);
  });

  it('takes the mean of the shots that could be played, each way', () => {
    const one = Float64Array.from([1, 2, Number.NaN, 3]);
    const other = Float64Array.from([1, Number.NaN, 5, 0]);
    const { value, standardError } = pairedDifference(one, other);
    expect(value).toBeCloseTo(2 - 2, 12);
    // By hand: moves −4/3 + 4/3, 0, −4, 4/3 + 8/3.
    expect(standardError).toBeCloseTo(Math.sqrt((0 + 0 + 16 + 16) / 3 / 4), 12);
  });
});

describe('best speeds', () => {
  it('finds the lowest, and gives the speeds that cannot be told from it and one more on either side', () => {
    const [only, ...more] = best([0.5, 0.3, 0.1, 0, 0.005, 0.3, 0.5], 0.2);
    expect(more).toEqual([]);
    expect(only).toMatchObject({ kind: 'within', clubSpeed: SPEEDS[3], mayBeBest: true });
    expect(only?.interval).toEqual({ low: SPEEDS[2], high: SPEEDS[5] });
  });

  it('gives every speed between which strokes clearly rise, and says which may be best', () => {
    const found = best([0, 0.3, 0.5, 0.1, 0.4, 0.02, 0.001], 0.2);
    expect(clubSpeeds(found)).toEqual([90, 96, 102]);
    expect(found.map(({ kind }) => kind)).toEqual(['slower-than', 'within', 'faster-than']);
    expect(found.map(({ mayBeBest }) => mayBeBest)).toEqual([true, false, true]);
  });

  it('takes ripples that are not clear for one valley', () => {
    expect(clubSpeeds(best([0.5, 0.2, 0.21, 0.19, 0.2, 0.18, 0.6], 0.5))).toEqual([100]);
  });

  it('holds differences of many to a stricter measure', () => {
    expect(clearOfMany(1)).toBeCloseTo(1.645, 3);
    expect(clearOfMany(8)).toBeCloseTo(2.498, 3);
  });
});
