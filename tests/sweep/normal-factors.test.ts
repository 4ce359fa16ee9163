import { describe, expect, it } from 'vitest';
import {
  columnOf,
  type Design,
  designRows,
  type IndexDesign,
  type NormalFactors,
  rowStatuses,
  sobolIndicesOf,
  sweep,
} from '../../src/sweep/index.js';
import { mph } from '../../src/units/index.js';
import { caught } from '../caught.js';

/** Drag and lift scale, correlated by 0.8. */
const scales: NormalFactors = {
  names: ['aerodynamics.dragScale', 'aerodynamics.liftScale'],
  mean: [1.02, 0.95],
  covariance: [
    [0.03 ** 2, 0.8 * 0.03 * 0.05],
    [0.8 * 0.03 * 0.05, 0.05 ** 2],
  ],
};
const speed = { name: 'launch.ballSpeed', from: mph(130), to: mph(170) } as const;
const designs: readonly Design[] = [
  { kind: 'sobol', count: 4096, seed: 3, factors: [speed, scales] },
  { kind: 'latin-hypercube', count: 4096, seed: 3, factors: [speed, scales] },
  { kind: 'sobol-indices', base: 1024, seed: 3, factors: [speed, scales] },
];

const meanOf = (x: Float64Array): number => x.reduce((sum, value) => sum + value, 0) / x.length;
function covarianceOf(x: Float64Array, y: Float64Array): number {
  const [mx, my] = [meanOf(x), meanOf(y)];
  return x.reduce((sum, value, i) => sum + (value - mx) * ((y[i] as number) - my), 0) / x.length;
}

describe('normal factors', () => {
  it.each(designs)('have their mean and covariance, beside a factor of a range: $kind', (design) => {
    const { names, values } = designRows(design);
    expect(names).toEqual([speed.name, ...scales.names]);
    const [uniform, ...drawn] = values as [Float64Array, Float64Array, Float64Array];
    drawn.forEach((x, j) => {
      const sd = Math.sqrt(scales.covariance[j]?.[j] as number);
      expect(Math.abs(meanOf(x) - (scales.mean[j] as number))).toBeLessThan(0.02 * sd);
      drawn.forEach((y, k) => {
        const [expected = 0, other = 0] = [scales.covariance[j]?.[k], scales.covariance[k]?.[k]];
        expect(Math.abs(covarianceOf(x, y) - expected)).toBeLessThan(0.03 * sd * Math.sqrt(other));
      });
      expect(Math.abs(covarianceOf(x, uniform)) / (sd * (mph(170) - mph(130)))).toBeLessThan(0.01);
    });
    expect([Math.min(...uniform) >= mph(130), Math.max(...uniform) <= mph(170)]).toEqual([true, true]);
  });

  it('are the quantiles of the points: mean at 1/2, 0.6745 standard deviations off at 3/4 and 1/4', () => {
    // Quartile of the normal distribution: Abramowitz and Stegun 1964, table 26.5: Q(0.67449) = 0.25.
    const plain: Design = { kind: 'sobol', count: 4, scramble: 'none', factors: [scales] };
    const [drag, lift] = designRows(plain).values as [Float64Array, Float64Array];
    const [l11, l21, l22] = [0.03, 0.8 * 0.05, 0.6 * 0.05];
    // Points 1 to 3 of Sobol's sequence: (1/2, 1/2), (3/4, 1/4), (1/4, 3/4) (Joe and Kuo 2008).
    [0, 0.67449, -0.67449].forEach((z, k) => {
      expect(drag[k + 1]).toBeCloseTo(1.02 + l11 * z, 6);
      expect(lift[k + 1]).toBeCloseTo(0.95 + l21 * z - l22 * z, 6);
    });
    // The origin of the published sequence is a finite number too.
    expect(drag[0]).toBeGreaterThan(1.02 - 6.4 * 0.03);
  });

  it('flag a draw outside the range of its factor, and go on', () => {
    const wide: NormalFactors = {
      names: ['turf.bounce.restitution'],
      mean: [0.05],
      covariance: [[0.05 ** 2]],
    };
    const fixed = { 'launch.ballSpeed': mph(150), 'launch.launchAngle': 0.2, 'launch.spinRate': 270 };
    const design: Design = { kind: 'sobol', count: 512, factors: [wide] };
    const result = sweep(design, {}, { fixed: fixed as never, outputs: ['total'] });
    const below = columnOf(result, 'turf.bounce.restitution').map((value) => Number(value < 0));
    expect(meanOf(below)).toBeCloseTo(0.1587, 2);
    expect(Array.from(result.status, (code) => rowStatuses[code])).toEqual(
      Array.from(below, (is) => (is === 1 ? 'outside-range' : 'landed')),
    );
  });

  it('count as one for Sobol indices, exchanged whole', () => {
    const { values } = designRows(designs[2] as Design);
    for (let at = 0; at < 64 * 4; at += 4) {
      const [a = [], b = [], first = [], second = []] = [0, 1, 2, 3].map((k) =>
        values.map((column) => column[at + k]),
      );
      expect(first).toEqual([b[0], a[1], a[2]]);
      expect(second).toEqual([a[0], b[1], b[2]]);
    }
  });

  it('have the indices of a sum: each share of its variance', () => {
    // y = u + p d + q l. Var u = w²/12, Var (p d + q l) = p² Σ11 + 2 p q Σ12 + q² Σ22; nothing interacts.
    const design = designs[2] as IndexDesign;
    const [u, d, l] = designRows(design).values as [Float64Array, Float64Array, Float64Array];
    const [p, q] = [60, -20];
    const y = u.map((value, i) => value + p * (d[i] as number) + q * (l[i] as number));
    const ofSpeed = (mph(170) - mph(130)) ** 2 / 12;
    const [[s11 = 0, s12 = 0] = [], [, s22 = 0] = []] = scales.covariance;
    const ofModel = p * p * s11 + 2 * p * q * s12 + q * q * s22;
    const { factors, variance } = sobolIndicesOf(design, y);
    expect(factors.map(({ names }) => names)).toEqual([[speed.name], scales.names]);
    [ofSpeed, ofModel].forEach((share, j) => {
      expect(factors[j]?.firstOrder).toBeCloseTo(share / (ofSpeed + ofModel), 2);
      expect(factors[j]?.total).toBeCloseTo(share / (ofSpeed + ofModel), 2);
    });
    expect(variance / (ofSpeed + ofModel)).toBeCloseTo(1, 1);
  });
});

describe('a normal distribution that makes no sense', () => {
  const of = (change: object): unknown => ({ kind: 'sobol', count: 4, factors: [{ ...scales, ...change }] });
  it.each([
    ['an unknown name', of({ names: ['aerodynamics.dragScale', 'drag'] }), 'design.factors[0].names[1]'],
    ['a name twice', of({ names: [scales.names[0], scales.names[0]] }), 'design.factors[0].names'],
    ['too few means', of({ mean: [1] }), 'design.factors[0].mean'],
    ['a mean outside the range', of({ mean: [1, 7] }), 'design.factors[0].mean[1]'],
    ['a covariance of another size', of({ covariance: [[1]] }), 'design.factors[0].covariance'],
    [
      'a hole in the covariance',
      of({
        covariance: [
          [1, Number.NaN],
          [Number.NaN, 1],
        ],
      }),
      'design.factors[0].covariance[0][1]',
    ],
    [
      'an uneven covariance',
      of({
        covariance: [
          [1, 0.1],
          [0.2, 1],
        ],
      }),
      'design.factors[0].covariance',
    ],
    [
      'a correlation beyond 1',
      of({
        covariance: [
          [1, 1.1],
          [1.1, 1],
        ],
      }),
      'design.factors[0].covariance',
    ],
    ['a range in it', of({ from: 1 }), 'design.factors[0]'],
    ['a grid of it', { kind: 'grid', factors: [scales] }, 'design.factors[0]'],
  ])('is refused: %s', (_, design, field) => {
    const fault = caught(() => designRows(design as Design));
    expect(fault.code).toMatch(/^(invalid-input|outside-range)$/);
    expect(fault.field?.startsWith(field)).toBe(true);
  });
});
