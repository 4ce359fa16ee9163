import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bootstrap } from '../../src/numerics/bootstrap.js';
import { chiSquareQuantile } from '../../src/numerics/distributions.js';
import { covarianceEllipse, planeMoments } from '../../src/numerics/ellipse.js';
import { isotonic } from '../../src/numerics/isotonic.js';
import { kernelDensities, scottSmoothing } from '../../src/numerics/kernel-density.js';
import { leastSquares } from '../../src/numerics/linear-algebra.js';
import {
  meanInterval,
  powerOfMeanDifference,
  sampleSizeForMeanDifference,
} from '../../src/numerics/mean-difference.js';
import { covariance, mean, standardDeviation, variance } from '../../src/numerics/moments.js';
import { noncentralTCdf } from '../../src/numerics/noncentral-t.js';
import {
  median,
  medianAbsoluteDeviation,
  quantile,
  ROBUST_SD_FACTOR,
} from '../../src/numerics/order-statistics.js';
import { modifiedZScores } from '../../src/numerics/outliers.js';
import { minimalDetectableChange, typicalErrorWithin } from '../../src/numerics/reliability.js';
import { sobol } from '../../src/numerics/sobol.js';
import { sobolIndices, sobolIndicesDesign } from '../../src/numerics/sobol-indices.js';
import { stream } from '../../src/numerics/stream.js';
import { fewValuesStretch } from '../../src/session/index.js';
import { anyOf } from '../even.js';
import longley from '../published/data/nist-longley.json' with { type: 'json' };
import norris from '../published/data/nist-norris.json' with { type: 'json' };
import reference from '../published/data/statistics.json' with { type: 'json' };

const relative = (value: number, expected: number): number => Math.abs(value / expected - 1);
const ellipseOf = (x: readonly number[], y: readonly number[], level: number) => {
  const places = x.map((_, i) => i);
  return covarianceEllipse(planeMoments(x, y, places), level);
};
const correlation = (x: readonly number[], y: readonly number[]): number =>
  covariance(x, y) / (standardDeviation(x) * standardDeviation(y));

describe('moments', () => {
  // NIST StRD univariate NumAcc4, from memory: certified mean 10000000.2, sd 0.1, exact.
  const numAcc4 = [10000000.2, ...Array.from({ length: 500 }, () => [10000000.1, 10000000.3]).flat()];

  it('keeps its digits on NumAcc4', () => {
    expect(mean(numAcc4)).toBe(10000000.2);
    expect(relative(standardDeviation(numAcc4), 0.1)).toBeLessThan(1e-8);
  });

  it('agrees with numpy and scipy', () => {
    const { a, x, y } = reference;
    expect(mean(a)).toBeCloseTo(reference.moments.mean, 12);
    expect(variance(a)).toBeCloseTo(reference.moments.variance, 12);
    const interval = meanInterval(a);
    expect(interval.low).toBeCloseTo(reference.moments.interval[0] ?? 0, 9);
    expect(interval.high).toBeCloseTo(reference.moments.interval[1] ?? 0, 9);
    for (const [p = 0, q = 0] of reference.quantiles) expect(quantile(a, p)).toBeCloseTo(q, 12);
    expect(medianAbsoluteDeviation(a)).toBeCloseTo(reference.medianAbsoluteDeviation, 12);
    expect(covariance(x, y)).toBeCloseTo(reference.covariance[0]?.[1] ?? 0, 9);
  });

  it('says what it cannot do', () => {
    expect(() => mean([])).toThrow(/at least 1/);
    expect(() => variance([1])).toThrow(/at least 2/);
    expect(() => mean([1, Number.NaN])).toThrow(/finite/);
  });
});

describe('outliers', () => {
  const scoresOf = (values: readonly number[]): readonly number[] => modifiedZScores([values])[0] ?? [];

  it('scores by median and MAD, and falls back where the MAD is 0', () => {
    // By hand: median 5, deviations 0 0 1 1 2 45 with median 1; 0.6745·45/1.
    const z = scoresOf([5, 5, 6, 4, 7, 50, 3]);
    expect(z[5]).toBeCloseTo((0.6745 * 45) / 1, 9);
    expect(z[0]).toBe(0);
    // MAD 0: mean absolute deviation 10/5 = 2; (15 − 5)/(1.253314·2).
    expect(scoresOf([5, 5, 5, 5, 15])[4]).toBeCloseTo(10 / (1.253314 * 2), 9);
    expect(scoresOf([2, 2])).toEqual([0, 0]);
  });

  it('takes a MAD within the rounding of the values for 0, so that every score is finite', () => {
    // By hand: median 5e-324 and MAD 5e-324, the least double; the mean absolute deviation is 10/5 = 2.
    const least = scoresOf([0, 0, 5e-324, 1e-323, 10]);
    expect(least.every(Number.isFinite)).toBe(true);
    expect(least[4]).toBeCloseTo(10 / (1.253314 * 2), 9);
    // Median 50, deviations 0 and one ulp of 50, 7.1e-15, which a change of unit leaves behind.
    expect(scoresOf([50, 50 + 2 ** -47, 50 - 2 ** -47, 50 + 2 ** -47, 60])[4]).toBeCloseTo(
      10 / (1.253314 * 2),
      9,
    );
    // A MAD of a millionth of the values is a MAD: deviations 0 0 1e-6 1e-6 1, 0.6745·1/1e-6.
    expect(scoresOf([1, 1, 1 + 1e-6, 1 - 1e-6, 1 + 1e-6, 1 - 1e-6, 2])[6]).toBeCloseTo(674_500, -1);
  });

  it('estimates the standard deviation of normal values from the MAD', () => {
    const random = stream(11);
    const values = Array.from({ length: 20_000 }, () => 3 + 2 * random.normal());
    expect(relative(ROBUST_SD_FACTOR * medianAbsoluteDeviation(values), 2)).toBeLessThan(0.03);
  });
});

describe('differences of means', () => {
  it('has the noncentral t distribution and the power of scipy', () => {
    for (const [t = 0, dof = 0, shift = 0, expected = 0] of reference.noncentralT) {
      expect(noncentralTCdf(t, dof, shift), `${t} ${dof} ${shift}`).toBeCloseTo(expected, 9);
    }
    for (const [n = 0, d = 0, expected = 0] of reference.power) {
      expect(powerOfMeanDifference(n, d, 1)).toBeCloseTo(expected, 9);
    }
  });

  // Cohen (1988) table 2.4.1: n a group for power 0.80 at two-sided 5 %: d 0.2 393, 0.5 64, 0.8 26, 1.0 17.
  it('needs as many values as Cohen tabulates', () => {
    expect(sampleSizeForMeanDifference(0.2, 1)).toBeGreaterThanOrEqual(393);
    expect(sampleSizeForMeanDifference(0.2, 1)).toBeLessThanOrEqual(394);
    expect(sampleSizeForMeanDifference(0.5, 1)).toBe(64);
    expect(sampleSizeForMeanDifference(-4, 5)).toBe(26);
    expect(sampleSizeForMeanDifference(1, 1)).toBe(17);
    expect(sampleSizeForMeanDifference(1, 0)).toBe(2);
    expect(() => sampleSizeForMeanDifference(0, 1)).toThrow(/difference/);
  });

  // The average of the power at the deviations that an estimate of 1 may stand for, σ² = dof/χ².
  it('counts that a standard deviation was estimated', () => {
    for (const [n, difference, dof] of [
      [20, 1, 5],
      [40, 0.8, 9],
      [12, 1.4, 30],
    ] as const) {
      const nodes = Array.from({ length: 400 }, (_, i) => chiSquareQuantile((i + 0.5) / 400, dof));
      const average = nodes.reduce(
        (sum, x) => sum + powerOfMeanDifference(n, difference, Math.sqrt(dof / x)) / nodes.length,
        0,
      );
      // Not quite the same: the formula takes the limit of the test as fixed.
      expect(Math.abs(powerOfMeanDifference(n, difference, 1, 0.95, dof) - average)).toBeLessThan(0.01);
    }
    expect(sampleSizeForMeanDifference(1, 1, 0.8, 0.95, 5)).toBeGreaterThan(20);
    expect(sampleSizeForMeanDifference(1, 1, 0.8, 0.95, 1e6)).toBe(17);
  });
});

describe('reliability', () => {
  // Weir (2005): MDC95 = 2.77 typical errors.
  it('has the published factor of the detectable change', () => {
    expect(minimalDetectableChange({ value: 1, dof: 1e6 })).toBeCloseTo(2.77, 2);
    expect(minimalDetectableChange({ value: 1, dof: 1e6 }, 4)).toBeCloseTo(2.77 / 2, 2);
    // Few measurements estimate the error: Student's t of 3 degrees of freedom is 3.182 (tables).
    expect(minimalDetectableChange({ value: 1, dof: 3 })).toBeCloseTo(3.1824 * Math.SQRT2, 3);
  });

  it('pools groups by their degrees of freedom', () => {
    const { value, dof } = typicalErrorWithin([[1, 3], [5, 5, 5, 5, 5], [9]]);
    expect(value).toBeCloseTo(Math.sqrt((1 * 2 + 4 * 0) / 5), 12);
    expect(dof).toBe(5);
    expect(() => typicalErrorWithin([[1], [2]])).toThrow(/at least 1/);
  });
});

describe('leastSquares', () => {
  // "At least 8 digits" is the mark usually asked of a sound program on Longley.
  it.each([
    ['Norris', norris, 1e-11],
    ['Longley', longley, 1e-8],
  ] as const)('has the certified values of NIST on %s', (_, { rows, certified }, limit) => {
    const y = rows.map((row) => row[0] ?? 0);
    const fit = leastSquares(
      rows.map((row) => [1, ...row.slice(1)]),
      y,
    );
    const residualVariance = (fit?.sumOfSquares ?? 0) / (rows.length - certified.coefficients.length);
    certified.coefficients.forEach((b, j) => {
      const standardError = Math.sqrt(residualVariance * (fit?.inverseNormal[j]?.[j] ?? 0));
      expect(relative(fit?.x[j] ?? 0, b)).toBeLessThan(limit);
      expect(relative(standardError, certified.standardErrors[j] ?? 0)).toBeLessThan(limit);
    });
    expect(relative(Math.sqrt(residualVariance), certified.residualSd)).toBeLessThan(limit);
    expect(
      relative(
        1 -
          (residualVariance * (rows.length - certified.coefficients.length)) /
            ((rows.length - 1) * variance(y)),
        certified.rSquared,
      ),
    ).toBeLessThan(limit);
  });
});

describe('covariance ellipse', () => {
  it('holds its share of normal points', () => {
    const random = stream(5);
    const draw = (): [number, number] => {
      const u = random.normal();
      return [3 * u + 1, 0.5 * random.normal() + 2 * u];
    };
    const many = Array.from({ length: 4000 }, draw);
    const inside = (e: ReturnType<typeof covarianceEllipse>, [x, y]: readonly [number, number]): boolean => {
      const [dx, dy] = [x - e.centre[0], y - e.centre[1]];
      const u = (dx * Math.cos(e.angle) + dy * Math.sin(e.angle)) / e.semiMajor;
      const v = (-dx * Math.sin(e.angle) + dy * Math.cos(e.angle)) / e.semiMinor;
      return u * u + v * v <= 1;
    };
    for (const level of [0.5, 0.9, 0.95]) {
      const e = ellipseOf(
        many.map((p) => p[0]),
        many.map((p) => p[1]),
        level,
      );
      expect(Math.abs(many.filter((p) => inside(e, p)).length / 4000 - level)).toBeLessThan(0.02);
      expect(e.area).toBeCloseTo(Math.PI * e.semiMajor * e.semiMinor, 9);
    }
  });

  it('turns with the points', () => {
    const x = [0, 1, 2, 3];
    const e = ellipseOf(
      x,
      x.map((v) => v * Math.sqrt(3)),
      0.5,
    );
    expect(e.angle).toBeCloseTo(Math.PI / 3, 9);
    expect(e.semiMinor).toBeCloseTo(0, 6);
  });
});

describe('bootstrap', () => {
  it('is stretched for few values by √(n/(n − 1)) t/z', () => {
    // Student's t, two-sided 95 %, from any printed table: 12.706 for 1, 2.776 for 4, 2.262 for 9; z = 1.960.
    expect(fewValuesStretch(2, 0.95)).toBeCloseTo((Math.SQRT2 * 12.706) / 1.96, 2);
    expect(fewValuesStretch(5, 0.95)).toBeCloseTo((Math.sqrt(1.25) * 2.776) / 1.96, 3);
    expect(fewValuesStretch(10, 0.95)).toBeCloseTo((Math.sqrt(10 / 9) * 2.262) / 1.96, 3);
    expect(fewValuesStretch(1e6, 0.95)).toBeCloseTo(1, 4);
    expect(fewValuesStretch(1, 0.95)).toBe(1);
    // For the mean of one group the bootstrap's own factor is the same.
    const [of] = bootstrap([[1, 3, 4, 8, 9]], ([group = []]) => [mean(group)], {
      resamples: 100,
      jackknife: true,
    });
    expect(of?.stretch).toBeCloseTo(fewValuesStretch(5, 0.95), 9);
    // Two groups alike have the degrees of freedom of both, 8 (Welch 1938).
    const two = [
      [1, 3, 4, 8, 9],
      [2, 4, 5, 9, 10],
    ];
    const [apart] = bootstrap(two, ([a = [], b = []]) => [mean(a) - mean(b)], {
      resamples: 100,
      jackknife: true,
    });
    expect(apart?.stretch).toBeCloseTo((Math.sqrt(1.25) * 2.306) / 1.96, 3);
  });

  const { lsat, gpa, percentile } = reference.lawSchools;
  const schools = lsat.map((l, i) => [l, gpa[i] ?? 0] as const);
  const statistic = ([sample = []]: readonly (readonly (readonly [number, number])[])[]): number[] => [
    correlation(
      sample.map((s) => s[0]),
      sample.map((s) => s[1]),
    ),
  ];

  // Efron and Tibshirani (1993), table 3.1 and ch. 6: correlation of the 15 law schools 0.776, bootstrap standard
  // error 0.13; interval ends against scipy.stats.bootstrap with 40,000 resamples. Limits are Monte Carlo noise.
  it('agrees with scipy on the law schools', () => {
    const [low = 0, high = 0, se = 0] = percentile;
    const [found] = bootstrap([schools], statistic, { resamples: 20_000, seed: 3 });
    expect(found?.estimate).toBeCloseTo(0.776, 3);
    expect(Math.abs((found?.standardError ?? 0) - se)).toBeLessThan(0.004);
    expect(Math.abs((found?.low ?? 0) - low)).toBeLessThan(0.015);
    expect(Math.abs((found?.high ?? 0) - high)).toBeLessThan(0.005);
  });

  it('covers the mean of normal values about as often as it says, and the difference of two groups', () => {
    let one = 0;
    let two = 0;
    const runs = 300;
    for (let k = 0; k < runs; k++) {
      const random = stream(99, k);
      const a = Array.from({ length: 25 }, random.normal);
      const b = Array.from({ length: 30 }, () => 1 + 2 * random.normal());
      const [m, d] = bootstrap([a, b], ([u = [], v = []]) => [mean(u), mean(v) - mean(u)], {
        resamples: 300,
        seed: k,
      });
      if (m && m.low < 0 && m.high > 0) one++;
      if (d && d.low < 1 && d.high > 1) two++;
    }
    // The bootstrap of 25 values falls short of 95 % by a point or two.
    expect(one / runs).toBeGreaterThan(0.89);
    expect(one / runs).toBeLessThan(0.985);
    expect(two / runs).toBeGreaterThan(0.89);
    expect(two / runs).toBeLessThan(0.985);
  });

  it('is repeatable, and stays finite on constant data', () => {
    const once = bootstrap([[1, 2, 3, 4]], ([v = []]) => [median(v)], { seed: 4, resamples: 200 });
    expect(bootstrap([[1, 2, 3, 4]], ([v = []]) => [median(v)], { seed: 4, resamples: 200 })).toEqual(once);
    const [same] = bootstrap([[2, 2, 2]], ([v = []]) => [mean(v)], { resamples: 100 });
    expect(same).toMatchObject({ low: 2, high: 2, estimate: 2, standardError: 0 });
    expect(() => bootstrap([[]], () => [1])).toThrow(/at least one/);
    expect(() => bootstrap([[1]], () => [Number.NaN])).toThrow(/finite/);
  });
});

describe('kernelDensities', () => {
  const x = reference.cloud.map((p) => p[0] ?? 0);
  const y = reference.cloud.map((p) => p[1] ?? 0);
  const at = (value: number) => ({ first: value, step: 1, count: 1 });

  it('agree with scipy', () => {
    const densities = kernelDensities(x, y, [x.length], scottSmoothing(x, y));
    for (const [u = 0, v = 0, expected = 0] of reference.kernelDensity) {
      expect(relative(densities?.onGrid(at(u), at(v))[0]?.[0] ?? 0, expected)).toBeLessThan(1e-10);
    }
  });

  it('are the same on a grid, at one node, and at the points', () => {
    const smoothing = scottSmoothing(x, y);
    const sizes = [Math.floor(x.length / 3), x.length - Math.floor(x.length / 3)];
    const densities = kernelDensities(x, y, sizes, smoothing);
    // A grid much wider than the points, with cells of a third of the kernel.
    const [gx, gy] = [x, y].map((values, k) => {
      const step = Math.sqrt(smoothing[2 * k] ?? 0) / 3;
      return { first: (values[0] ?? 0) - 60 * step, step, count: 121 };
    });
    if (densities === undefined || gx === undefined || gy === undefined) throw new Error('no densities');
    const grid = densities.onGrid(gx, gy);
    const points = densities.atPoints();
    for (const group of [0, 1]) {
      for (const [i, j] of [
        [60, 60],
        [3, 50],
        [75, 66],
        [120, 0],
      ] as const) {
        const one = densities.onGrid(at(gx.first + i * gx.step), at(gy.first + j * gy.step))[group]?.[0];
        expect(Math.abs((grid[group]?.[j * 121 + i] ?? 0) - (one ?? 0))).toBeLessThan(1e-12);
      }
      expect(relative(points[group]?.[0] ?? 0, grid[group]?.[60 * 121 + 60] ?? 0)).toBeLessThan(1e-12);
    }
  });

  it('give the highest-density region of a normal cloud: density φ(0)(1 − level) at its border', () => {
    const random = stream(8);
    const px = Array.from({ length: 1500 }, random.normal);
    const py = Array.from({ length: 1500 }, random.normal);
    const [own = new Float64Array()] =
      kernelDensities(px, py, [1500], scottSmoothing(px, py))?.atPoints() ?? [];
    // For a standard normal in the plane the density on the border of the region of level p is (1 − p)/2π; smoothing
    // adds the kernel's variance, n^(−1/3), to the cloud's.
    const smoothed = 1 / (2 * Math.PI * (1 + 1500 ** (-1 / 3)));
    for (const level of [0.5, 0.8]) {
      const expected = smoothed * (1 - level) ** (1 / (1 + 1500 ** (-1 / 3)));
      expect(relative(quantile([...own], 1 - level), expected)).toBeLessThan(0.12);
    }
  });

  it('are none for points on a line', () => {
    const [a, b] = [
      [1, 2, 3],
      [2, 4, 6],
    ] as const;
    expect(kernelDensities(a, b, [3], scottSmoothing(a, b))).toBeUndefined();
  });
});

describe('isotonic', () => {
  it('pools neighbours that fall', () => {
    expect(isotonic([1, 3, 2, 4])).toEqual([1, 2.5, 2.5, 4]);
    expect(isotonic([3, 2, 1])).toEqual([2, 2, 2]);
    expect(isotonic([1, 0], [3, 1])).toEqual([0.75, 0.75]);
    expect(isotonic([])).toEqual([]);
  });

  it('rises, keeps the mean, and no other rising sequence is closer', () => {
    const list = fc.array(anyOf(-5, 5), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(list, list, (values, other) => {
        const fit = isotonic(values);
        const distance = (s: readonly number[]): number =>
          values.reduce((sum, v, i) => sum + (v - (s[i] ?? 0)) ** 2, 0);
        fit.slice(1).forEach((v, i) => {
          expect(v).toBeGreaterThanOrEqual(fit[i] ?? 0);
        });
        expect(mean(fit)).toBeCloseTo(mean(values), 9);
        const rival = values.map((_, i) => other[i % other.length] ?? 0).sort((a, b) => a - b);
        const between = fit.map((v, i) => 0.9 * v + 0.1 * (rival[i] ?? 0));
        expect(distance(fit)).toBeLessThanOrEqual(distance(rival) + 1e-9);
        expect(distance(fit)).toBeLessThanOrEqual(distance(between) + 1e-9);
      }),
    );
  });
});

describe('sobolIndices', () => {
  // Ishigami T, Homma T (1990), a = 7, b = 0.1; the indices in closed form: S 0.3139, 0.4424, 0; T 0.5576, 0.4424, 0.2437.
  const ishigami = (u: ArrayLike<number>): number => {
    const [a = 0, b = 0, c = 0] = Array.from(u, (v) => Math.PI * (2 * v - 1));
    return Math.sin(a) + 7 * Math.sin(b) ** 2 + 0.1 * c ** 4 * Math.sin(a);
  };

  it("has the published indices of Ishigami's function", () => {
    const design = sobolIndicesDesign(sobol(6, { scramble: 'owen', seed: 1 }));
    const n = 2 ** 13;
    const values = Float64Array.from({ length: 5 * n }, (_, i) => ishigami(design.point(i)));
    const found = sobolIndices(values, 3);
    [0.3139, 0.4424, 0].forEach((s, j) => {
      expect(Math.abs((found.first[j] ?? 1) - s)).toBeLessThan(0.01);
    });
    [0.5576, 0.4424, 0.2437].forEach((t, j) => {
      expect(Math.abs((found.total[j] ?? 1) - t)).toBeLessThan(0.01);
      expect(found.totalIntervals[j]?.low).toBeLessThan(t + 0.005);
      expect(found.totalIntervals[j]?.high).toBeGreaterThan(t - 0.005);
    });
    // Variance a²/8 + bπ⁴/5 + b²π⁸/18 + 1/2 = 13.8446, mean a/2.
    expect(found.variance).toBeCloseTo(13.8446, 1);
    expect(found.mean).toBeCloseTo(3.5, 2);
  });

  it('shares out an additive function exactly by the variances of its terms', () => {
    const design = sobolIndicesDesign(sobol(4, { scramble: 'owen', seed: 2 }));
    const values = Array.from({ length: 4 * 4096 }, (_, i) => {
      const [a = 0, b = 0] = design.point(i);
      return 1000 + 3 * a + 4 * b;
    });
    const found = sobolIndices(values, 2);
    expect(found.first[0]).toBeCloseTo(9 / 25, 2);
    expect(found.total[1]).toBeCloseTo(16 / 25, 2);
  });

  it('refuses what does not fit', () => {
    expect(() => sobolIndices([1, 2, 3], 3)).toThrow(/multiple of 5/);
    expect(() => sobolIndices(new Array(20).fill(1), 3)).toThrow(/vary/);
    expect(() => sobolIndicesDesign(sobol(3))).toThrow(/twice/);
  });
});
