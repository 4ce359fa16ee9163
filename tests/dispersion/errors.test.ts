import { describe, expect, it } from 'vitest';
import { distributionOf, replicatesOf } from '../../src/dispersion/monte-carlo.js';
import { groundEllipses, landingRegion } from '../../src/dispersion/region.js';
import { mean, normalQuantile, standardDeviation, stream } from '../../src/numerics/index.js';

const SHOTS = 256;
const parts = replicatesOf(Array.from({ length: SHOTS }, (_, i) => i));

/** Errors stated, on average, beside how far the answers of so many normal clouds lie apart. */
function errors(
  draws: number,
  answer: (x: readonly number[], z: readonly number[]) => { value: number; error: number },
): { stated: number; found: number } {
  const answers = Array.from({ length: draws }, (_, k) => {
    const { normal } = stream(8, k);
    const drawn = (): number[] => Array.from({ length: SHOTS }, normal);
    return answer(drawn(), drawn());
  });
  return {
    stated: mean(answers.map(({ error }) => error)),
    found: standardDeviation(answers.map(({ value }) => value)),
  };
}

describe('Monte Carlo errors of independent normal shots', () => {
  it('are those of theory for mean, scatter and quantiles', () => {
    // Standard errors of normal samples: σ/√n, σ/√(2n), and √(p(1 − p)/n)/φ(z) of a quantile (Stuart and Ord 1987, from memory).
    const z = normalQuantile(0.05);
    const density = Math.exp(-(z ** 2) / 2) / Math.sqrt(2 * Math.PI);
    const figures = [
      ['mean', 1 / Math.sqrt(SHOTS)],
      ['sd', 1 / Math.sqrt(2 * SHOTS)],
      ['p5', Math.sqrt((0.05 * 0.95) / SHOTS) / density],
    ] as const;
    for (const [name, theory] of figures) {
      const { stated, found } = errors(200, (x) => {
        const { value, standardError } = distributionOf(parts, x)[name];
        return { value, error: standardError };
      });
      expect(found / theory, name).toBeGreaterThan(0.85);
      expect(found / theory, name).toBeLessThan(1.15);
      // Of eight replicates a standard deviation comes out 3.5 % small. Quantiles thin out within ±t errors of 5 %: an interval
      // of that width holds what it says, the theory of many shots is a quarter too narrow.
      expect(stated / theory, name).toBeGreaterThan(0.9);
      expect(stated / theory, name).toBeLessThan(name === 'p5' ? 1.4 : 1.1);
    }
  });

  it('are those of theory for the area of an ellipse', () => {
    // ln det S of two normal quantities has variance 4/n (Anderson 2003, sec. 7.5, from memory); the area goes with its root.
    const { stated, found } = errors(200, (x, z) => {
      const [ellipse] = groundEllipses(parts, x, z, [0.9]);
      const area = ellipse?.area ?? 0;
      return { value: Math.log(area), error: (ellipse?.standardErrors.area ?? 0) / area };
    });
    expect(found * Math.sqrt(SHOTS)).toBeGreaterThan(0.85);
    expect(found * Math.sqrt(SHOTS)).toBeLessThan(1.15);
    expect(stated * Math.sqrt(SHOTS)).toBeGreaterThan(0.85);
    expect(stated * Math.sqrt(SHOTS)).toBeLessThan(1.15);
  });

  it('are how far the areas of regions lie apart', () => {
    const { stated, found } = errors(24, (x, z) => {
      const [region] = landingRegion(parts, x, z, [0.9])?.regions ?? [];
      return { value: region?.area ?? 0, error: region?.standardErrors.area ?? 0 };
    });
    // So few areas give their scatter to 15 %: two and a half of those.
    expect(stated / found).toBeGreaterThan(0.62);
    expect(stated / found).toBeLessThan(1.5);
  });
});
