import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { compiledLaw } from '../../src/aerodynamics/compiled-law.js';
import { aerodynamicModels, withReverseMagnus } from '../../src/aerodynamics/index.js';
import { kernelText } from '../../src/flight/engine/kernel-template.js';
import { dormandPrince853 } from '../../src/numerics/tableaux/dormand-prince-853.js';

describe('the written kernel', () => {
  it('is what its template writes: run npm run generate after changing the template', () => {
    expect(readFileSync('src/flight/engine/kernel.generated.ts', 'utf8')).toBe(kernelText());
  });
});

describe('the tableau', () => {
  const { a, b, c, e5, e3 } = dormandPrince853;
  const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

  it('meets the row-sum and quadrature conditions up to order 8', () => {
    // Hairer, Norsett & Wanner 1993, section II.1: sum of a row is its node; sum b c^(k-1) = 1/k up to the order.
    a.forEach((row, i) => {
      expect(sum(row)).toBeCloseTo(c[i] as number, 13);
    });
    for (let k = 1; k <= 8; k++) {
      expect(sum(b.map((weight, i) => weight * (c[i] as number) ** (k - 1)))).toBeCloseTo(1 / k, 12);
    }
  });

  it('has error weights that vanish on constants', () => {
    expect(sum(e5)).toBeCloseTo(0, 13);
    expect(sum(e3)).toBeCloseTo(0, 13);
  });
});

describe('compiled laws', () => {
  it.each(['fitted-modern', 'smits-smith-1994', 'penner-bearman-harvey', 'davies-1949'] as const)(
    'stay within 2e-9 of the law where they claim to: %s',
    (id) => {
      const model = aerodynamicModels[id];
      const law = compiledLaw(model);
      if (law === undefined) throw new Error(`${id} did not compile`);
      expect(law.measuredError).toBeLessThan(2e-9);
      for (let i = 0; i < 5000; i++) {
        const x = law.spinCells.low + ((i * 0.6180339887) % 1) * (law.spinCells.high - law.spinCells.low);
        const z =
          law.reynoldsCells.low + ((i * 0.7548776662) % 1) * (law.reynoldsCells.high - law.reynoldsCells.low);
        const at = (table: Float64Array, offset: number, t: number): number =>
          [0, 1, 2, 3].reduce((total, k) => total + (table[offset + k] as number) * t ** k, 0);
        const cell = Math.floor(x);
        const s = x / law.cellsPerSpinRatio;
        const re = z / law.cellsPerReynolds;
        const lift = at(law.spinTable, 8 * cell, x - cell);
        const drag =
          at(law.spinTable, 8 * cell + 4, x - cell) + at(law.reynoldsTable, 4 * Math.floor(z), z % 1);
        expect(Math.abs(lift - model.liftCoefficient(re, s))).toBeLessThan(2e-9);
        expect(Math.abs(drag - model.dragCoefficient(re, s))).toBeLessThan(2e-9);
      }
    },
  );

  it('are refused to a law that has another form', () => {
    expect(compiledLaw(withReverseMagnus(aerodynamicModels['fitted-modern']))).toBeUndefined();
  });
});
