import { describe, expect, it } from 'vitest';
import {
  type CompiledLaw,
  compiledLaw,
  constantLaw,
  REYNOLDS_IN_BOTH,
  REYNOLDS_IN_DRAG,
  REYNOLDS_NOWHERE,
} from '../../src/aerodynamics/compiled-law.js';
import { aerodynamicModels, resolveModel, withReverseMagnus } from '../../src/aerodynamics/index.js';
import { loadBatchKernel } from '../../src/batch.js';
import { flyBatch } from '../../src/flight/engine/batch.js';
import { createCompiledEngine } from '../../src/flight/engine/compiled.js';
import type { CompiledEnd } from '../../src/flight/engine/frame.js';
import { sceneProblem, setLaunch } from '../../src/flight/problem.js';
import { stream } from '../../src/numerics/index.js';
import { dormandPrince853 } from '../../src/numerics/tableaux/dormand-prince-853.js';
import { resolveScene } from '../../src/scene/scene.js';

describe('the tableau', () => {
  const { a, b, e5, third } = dormandPrince853;
  const c = [
    0,
    0.05260015195876773,
    0.0789002279381516,
    0.1183503419072274,
    0.2816496580927726,
    1 / 3,
    0.25,
    4 / 13,
    127 / 195,
    0.6,
    6 / 7,
    1,
  ];
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
    expect(sum(third)).toBeCloseTo(1, 13);
  });
});

describe('compiled laws', () => {
  it.each([
    'fitted-modern',
    'lieberman-2001',
    'naruo-2004',
    'smits-smith-1994',
    'penner-bearman-harvey',
    'davies-1949',
  ] as const)('stay within 2e-9 of the law where they claim to: %s', (id) => {
    const model = aerodynamicModels[id];
    const law = compiledLaw(model);
    if (law === undefined) throw new Error(`${id} did not compile`);
    expect(law.measuredError).toBeLessThan(2e-9);
    for (let i = 0; i < 5000; i++) {
      const x = law.spinCells.low + ((i * 0.6180339887) % 1) * (law.spinCells.high - law.spinCells.low);
      const z =
        law.reynoldsCells.low + ((i * 0.7548776662) % 1) * (law.reynoldsCells.high - law.reynoldsCells.low);
      // Lift and drag stand by turns.
      const at = (table: Float64Array, offset: number, t: number): number =>
        [0, 1, 2, 3].reduce((total, k) => total + (table[offset + 2 * k] as number) * t ** k, 0);
      const coefficient = (which: 0 | 1): number =>
        at(law.spinTable, 16 * cell + which, x - cell) +
        at(law.spinTable, 16 * cell + 8 + which, x - cell) *
          at(law.reynoldsTable, 8 * Math.floor(z) + which, z % 1);
      const cell = Math.floor(x);
      const s = x / law.cellsPerSpinRatio;
      const re = z / law.cellsPerReynolds;
      expect(Math.abs(coefficient(0) - model.liftCoefficient(re, s))).toBeLessThan(2e-9);
      expect(Math.abs(coefficient(1) - model.dragCoefficient(re, s))).toBeLessThan(2e-9);
    }
  });

  it('cover the flights of a ball: the default from S 0.005, and any Re', () => {
    const law = compiledLaw(aerodynamicModels['fitted-modern']);
    expect((law?.spinCells.low ?? 1) / (law?.cellsPerSpinRatio ?? 1)).toBeLessThanOrEqual(0.005);
    expect(law?.reynoldsCells).toEqual({ low: 0, high: 2048 });
  });

  it.each([
    ['fitted-modern', REYNOLDS_IN_BOTH],
    ['lieberman-2001', REYNOLDS_IN_BOTH],
    ['smits-smith-1994', REYNOLDS_IN_DRAG],
    ['naruo-2004', REYNOLDS_NOWHERE],
    ['penner-bearman-harvey', REYNOLDS_NOWHERE],
    ['davies-1949', REYNOLDS_NOWHERE],
  ] as const)('say how Re enters, and fly as if it entered in any way: %s', async (id, form) => {
    const law = compiledLaw(aerodynamicModels[id]);
    if (law === undefined) throw new Error(`${id} did not compile`);
    expect(law.reynoldsForm).toBe(form);
    const kernel = await loadBatchKernel();
    if (kernel === undefined) throw new Error('this runtime has no WebAssembly SIMD');
    const problem = sceneProblem(resolveScene({ aerodynamics: id }));
    setLaunch(problem, 60, 0.25, 0, 330, 0.1, 0);
    const inBatch = (by: CompiledLaw): number[] => {
      const ends: number[][] = [];
      flyBatch(
        kernel,
        by,
        problem,
        1,
        1e-4,
        60,
        () => {},
        (_row, end) => ends.push([...(end?.state ?? [])]),
      );
      return ends.flat();
    };
    const plain = (by: CompiledLaw): number[] => [
      ...(createCompiledEngine(false, () => by).fly(problem, 1e-4, 60)?.state ?? []),
    ];
    const general = { ...law, reynoldsForm: REYNOLDS_IN_BOTH };
    expect(plain(law)).toEqual(inBatch(law));
    expect(plain(general)).toEqual(inBatch(general));
    plain(general).forEach((value, i) => {
      expect(value).toBeCloseTo(plain(law)[i] as number, 10);
    });
  });

  it('are refused to a law that has another form', () => {
    // Two losses of lift, each a product: their product is none. A grid is a product nowhere.
    expect(compiledLaw(resolveModel(withReverseMagnus('fitted-modern')))).toBeUndefined();
    expect(compiledLaw(aerodynamicModels['bearman-harvey-1976'])).toBeUndefined();
  });
});

describe('a law that no ball has', () => {
  /** Coefficients that jump from cell to cell: no step is short enough. */
  function noise(): CompiledLaw {
    const law = constantLaw(0.2, 0.25);
    const draw = stream(3, 0);
    for (let i = 0; i < law.spinTable.length; i += 8) law.spinTable[i] = draw.uniform();
    return law;
  }
  const laws: readonly (readonly [string, CompiledLaw])[] = [
    ...[Number.NaN, Number.POSITIVE_INFINITY, 1e200, -1e200, -5].flatMap((wrong) => [
      [`lift ${wrong}`, constantLaw(wrong, 0.25)] as const,
      [`drag ${wrong}`, constantLaw(0.2, wrong)] as const,
    ]),
    ['noise', noise()],
  ];
  const problem = sceneProblem(resolveScene({}));
  setLaunch(problem, 70, 0.2, 0, 270, 0.1, 0);

  const fly = (law: CompiledLaw, tolerance: number): CompiledEnd | undefined =>
    createCompiledEngine(false, () => law).fly(problem, tolerance, 60);

  it.each(laws)('ends in numbers or in the hands of the general engine: %s', (_name, law) => {
    for (const tolerance of [1, 1e-4, 1e-5]) {
      const flight = fly(law, tolerance);
      if (flight === undefined) continue;
      expect([...flight.state, flight.time, flight.apex].every(Number.isFinite)).toBe(true);
    }
  });

  it('is handed over where no step is short enough, unlike one that a ball might have', () => {
    expect(fly(noise(), 1e-4)).toBeUndefined();
    expect(fly(constantLaw(0.2, 0.25), 1e-4)).toBeDefined();
  });

  it.each(laws)('does the same in WebAssembly: %s', async (_name, law) => {
    const kernel = await loadBatchKernel();
    if (kernel === undefined) throw new Error('this runtime has no WebAssembly SIMD');
    for (const tolerance of [1, 1e-4, 1e-5]) {
      let rows = 0;
      flyBatch(
        kernel,
        law,
        problem,
        7,
        tolerance,
        60,
        () => {},
        (_row, flight) => {
          rows++;
          if (flight === undefined) return;
          expect([...flight.state, flight.time, flight.apex].every(Number.isFinite)).toBe(true);
        },
      );
      expect(rows).toBe(7);
    }
  });
});
