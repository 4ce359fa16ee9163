import { describe, expect, it } from 'vitest';
import {
  costOf,
  doubtfulRow,
  fittedNames,
  refit,
  residualsOf,
  rms,
} from '../../src/aerodynamics/build-time/aerodynamics-fit.js';
import { fittedModernConstants } from '../../src/aerodynamics/index.js';

/** What the fit's own record states of the default model, on rows from memory: see the about blocks of the data. */
describe('the default coefficients and the rows they were fitted to', () => {
  const { flights, points } = residualsOf(fittedModernConstants);

  it('uses all sixteen tour averages and all eight test-range points', () => {
    expect(flights).toHaveLength(16);
    expect(points).toHaveLength(8);
  });
  it('leave carry 2.9 yd, apex 1.9 yd and landing 3.5° over, root mean square', () => {
    // To the printed digit: half a unit.
    expect(Math.abs(rms(flights.map((f) => f.carry)) - 2.9)).toBeLessThan(0.05);
    expect(Math.abs(rms(flights.map((f) => f.apex)) - 1.9)).toBeLessThan(0.05);
    expect(Math.abs(rms(flights.map((f) => f.descent)) - 3.5)).toBeLessThan(0.05);
  });
  it('land long irons 3–5° too shallow and the doubtful row 9°', () => {
    for (const { descent } of flights.filter(({ id }) => /^men-[345]-iron$/.test(id))) {
      expect(descent).toBeGreaterThan(-5.2);
      expect(descent).toBeLessThan(-2.9);
    }
    expect(flights.find(({ id }) => id === doubtfulRow)?.descent).toBeCloseTo(-9, 0);
  });
  it('are found again by the fit', () => {
    const found = refit(1);
    fittedNames.forEach((name, i) => {
      const off = (fittedModernConstants[name] - found.constants[name]) / (found.standardErrors[i] ?? 0);
      expect(Math.abs(off), name).toBeLessThan(0.1);
    });
    const shippedCost = costOf(residualsOf(fittedModernConstants));
    expect(shippedCost).toBeGreaterThanOrEqual(found.sumOfSquares);
    expect(shippedCost).toBeLessThan(1.002 * found.sumOfSquares);
  });
  it('do not hang on where the fit starts', () => {
    const away = {
      liftLimit: 0.45,
      liftScale: 0.25,
      dragFloor: 0.25,
      dragRise: 0.25,
      dragScale: 0.3,
      crisisWidth: 10_000,
    };
    const [near, far] = [refit(1), refit(1, { ...fittedModernConstants, ...away })];
    fittedNames.forEach((name, i) => {
      const apart = Math.abs(near.constants[name] - far.constants[name]);
      expect(apart, name).toBeLessThan(1e-2 * (near.standardErrors[i] ?? 0));
    });
  });
});
