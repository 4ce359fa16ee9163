import { describe, expect, it } from 'vitest';
import { type IndexDesign, sobolIndicesOf, sweep } from '../../src/sweep/index.js';
import { radians } from '../../src/units/index.js';
import { caught } from '../caught.js';

const turn = { from: radians(-Math.PI), to: radians(Math.PI) };
/** Three factors that run from −π to π, as the arguments of the Ishigami function do. */
const design: IndexDesign = {
  kind: 'sobol-indices',
  base: 2 ** 14,
  seed: 1,
  factors: [
    { name: 'launch.launchDirection', ...turn },
    { name: 'launch.spinAxisTilt', ...turn },
    { name: 'wind.from', ...turn },
  ],
};

/** Inputs of a design, one array a factor, without flying anything. */
function inputsOf(swept: IndexDesign): readonly Float64Array[] {
  const fixed = {
    'launch.ballSpeed': 60,
    'launch.launchAngle': 0.2,
    'launch.spinRate': 250,
    'wind.speed': 0,
  };
  return sweep(swept, {}, { fixed: fixed as never, outputs: [] }).values;
}

function ishigami(x1: number, x2: number, x3: number): number {
  return Math.sin(x1) + 7 * Math.sin(x2) ** 2 + 0.1 * x3 ** 4 * Math.sin(x1);
}

describe('Sobol indices of a sweep', () => {
  const [x1, x2, x3] = inputsOf(design) as [Float64Array, Float64Array, Float64Array];
  const values = Float64Array.from(x1, (x, i) => ishigami(x, x2[i] as number, x3[i] as number));

  it('are the published ones of the Ishigami function', () => {
    // Ishigami and Homma 1990, Proc. ISUMA '90, 398–403; figures for a = 7, b = 0.1 as in Saltelli et al. 2008,
    // Global Sensitivity Analysis: The Primer. Analytic values, rounded to four digits.
    const published = { first: [0.3139, 0.4424, 0], total: [0.5576, 0.4424, 0.2437] };
    const { factors, mean, variance, excluded } = sobolIndicesOf(design, values);
    factors.forEach(({ firstOrder, total, firstOrderInterval, totalInterval }, j) => {
      const [first, all] = [published.first[j] as number, published.total[j] as number];
      expect(Math.abs(firstOrder - first)).toBeLessThan(0.002);
      expect(Math.abs(total - all)).toBeLessThan(0.002);
      expect(firstOrderInterval.low - 1e-4).toBeLessThan(first);
      expect(firstOrderInterval.high + 1e-4).toBeGreaterThan(first);
      expect(totalInterval.low - 1e-4).toBeLessThan(all);
      expect(totalInterval.high + 1e-4).toBeGreaterThan(all);
    });
    expect(factors.map(({ names }) => names)).toEqual([
      ['launch.launchDirection'],
      ['launch.spinAxisTilt'],
      ['wind.from'],
    ]);
    // Mean a/2; variance 1/2 + a²/8 + bπ⁴/5 + b²π⁸/18.
    expect(mean).toBeCloseTo(3.5, 2);
    expect(variance).toBeCloseTo(0.5 + 49 / 8 + (0.1 * Math.PI ** 4) / 5 + (0.01 * Math.PI ** 8) / 18, 1);
    expect(excluded).toBe(0);
  });

  it('leave out base rows with a hole, and say how many', () => {
    const holes = values.slice();
    holes[7] = Number.NaN;
    holes[8] = Number.NaN;
    holes[5 * 1000 + 4] = Number.NaN;
    const { factors, excluded } = sobolIndicesOf(design, holes);
    expect(excluded).toBe(2);
    expect(factors[1]?.total).toBeCloseTo(0.4424, 2);
  });

  it('refuse values that do not fit, or do not vary', () => {
    expect(caught(() => sobolIndicesOf(design, values.subarray(1)))).toMatchObject({ field: 'values' });
    expect(
      caught(() =>
        sobolIndicesOf(
          design,
          values.map(() => 1),
        ),
      ).code,
    ).toBe('invalid-input');
    expect(
      caught(() =>
        sobolIndicesOf(
          design,
          values.map(() => Number.NaN),
        ),
      ).code,
    ).toBe('invalid-input');
  });
});
