import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type CoefficientGrid,
  fittedModern,
  resolveModel,
  SPIN_DECAY,
  tabulatedModel,
  testRangeLine,
} from '../../src/aerodynamics/index.js';
import type { Source } from '../../src/source.js';
import { caught } from '../caught.js';
import { even } from '../even.js';
import reference from '../published/data/monotone-grid.json' with { type: 'json' };

const source: Source = { authors: 'nobody', year: 2026, work: 'an invented grid', confidence: 'assumption' };
const grid: CoefficientGrid = { id: 'own', source, ...reference.grid };
const table = (own: CoefficientGrid) => resolveModel(tabulatedModel(own));
const model = table(grid);

describe('a grid of one’s own', () => {
  it('gives back its nodes', () => {
    grid.reynolds.forEach((re, i) => {
      grid.spinRatio.forEach((s, j) => {
        expect(model.dragCoefficient(re, s)).toBeCloseTo(grid.drag[i]?.[j] ?? Number.NaN, 14);
        expect(model.liftCoefficient(re, s)).toBeCloseTo(grid.lift[i]?.[j] ?? Number.NaN, 14);
      });
    });
  });
  it('interpolates as scipy does, 65 points', () => {
    // Source and limits: the about block of the data.
    expect(reference.points).toHaveLength(65);
    for (const point of reference.points) {
      expect(model.dragCoefficient(point.reynolds, point.spinRatio)).toBeCloseTo(point.drag, 13);
      expect(model.liftCoefficient(point.reynolds, point.spinRatio)).toBeCloseTo(point.lift, 13);
    }
  });
  it('never leaves the span of the four nodes around a point, whatever the grid', () => {
    const steps = (length: number) => fc.array(even(0.01, 1), { minLength: length, maxLength: length });
    const entries = fc.array(fc.array(even(0.1, 1), { minLength: 5, maxLength: 5 }), {
      minLength: 4,
      maxLength: 4,
    });
    fc.assert(
      fc.property(steps(4), steps(5), entries, even(0, 1), even(0, 1), (reSteps, sSteps, drag, u, v) => {
        const running = (all: readonly number[], scale: number) => {
          let sum = 0;
          return all.map((step) => {
            sum += step * scale;
            return sum;
          });
        };
        const reynolds = running(reSteps, 1e5);
        const spinRatio = running(sSteps, 0.3);
        const made = table({ id: 'random', source, reynolds, spinRatio, drag, lift: drag });
        const within = (nodes: readonly number[], t: number) =>
          (nodes[0] ?? 0) + t * ((nodes.at(-1) ?? 0) - (nodes[0] ?? 0));
        const [re, s] = [within(reynolds, u), within(spinRatio, v)];
        const i = Math.min(Math.max(reynolds.filter((node) => node <= re).length - 1, 0), 2);
        const j = Math.min(Math.max(spinRatio.filter((node) => node <= s).length - 1, 0), 3);
        const corners = [i, i + 1].flatMap((row) =>
          [j, j + 1].map((column) => drag[row]?.[column] ?? Number.NaN),
        );
        const got = made.dragCoefficient(re, s);
        expect(got).toBeGreaterThanOrEqual(Math.min(...corners) - 1e-12);
        expect(got).toBeLessThanOrEqual(Math.max(...corners) + 1e-12);
      }),
      { numRuns: 500 },
    );
  });
  it('follows a smooth law it was sampled from', () => {
    const reynolds = Array.from({ length: 96 }, (_, i) => 30_000 + 2_000 * i);
    const spinRatio = Array.from({ length: 121 }, (_, j) => 0.005 * j);
    const sampled = table({
      id: 'sampled',
      source,
      reynolds,
      spinRatio,
      drag: reynolds.map((re) => spinRatio.map((s) => fittedModern.dragCoefficient(re, s))),
      lift: reynolds.map((re) => spinRatio.map((s) => fittedModern.liftCoefficient(re, s))),
    });
    for (let re = 31_000; re < 219_000; re += 3700) {
      for (let s = 0.005; s < 0.6; s += 0.013) {
        expect(Math.abs(sampled.dragCoefficient(re, s) - fittedModern.dragCoefficient(re, s))).toBeLessThan(
          1e-3,
        );
        expect(Math.abs(sampled.liftCoefficient(re, s) - fittedModern.liftCoefficient(re, s))).toBeLessThan(
          1e-3,
        );
      }
    }
  });
  it('holds its edges outside, and lets lift run straight to 0 below its smallest spin ratio', () => {
    expect(model.dragCoefficient(1e3, 0.15)).toBe(model.dragCoefficient(40e3, 0.15));
    expect(model.dragCoefficient(1e9, 0.15)).toBe(model.dragCoefficient(220e3, 0.15));
    expect(model.dragCoefficient(1e5, 50)).toBe(model.dragCoefficient(1e5, 0.6));
    expect(model.liftCoefficient(1e5, 50)).toBe(model.liftCoefficient(1e5, 0.6));
    expect(model.dragCoefficient(1e5, 0)).toBe(model.dragCoefficient(1e5, 0.02));
    expect(model.liftCoefficient(1e5, 0)).toBe(0);
    expect(model.liftCoefficient(1e5, 0.01)).toBeCloseTo(model.liftCoefficient(1e5, 0.02) / 2, 14);
    for (const value of [0, Number.MAX_VALUE, Number.POSITIVE_INFINITY]) {
      expect(Number.isFinite(model.dragCoefficient(value, value))).toBe(true);
      expect(Number.isFinite(model.liftCoefficient(value, value))).toBe(true);
    }
  });
  it('takes one row (one wind speed) and two columns', () => {
    const small = table({
      id: 'small',
      source,
      reynolds: [1e5],
      spinRatio: [0, 0.4],
      drag: [[0.2, 0.4]],
      lift: [[0, 0.3]],
    });
    expect(small.dragCoefficient(5e4, 0.1)).toBeCloseTo(0.25, 14);
    expect(small.liftCoefficient(2e5, 0.1)).toBeCloseTo(0.075, 14);
    const two = table({
      ...grid,
      id: 'two',
      reynolds: [5e4, 1e5],
      drag: grid.drag.slice(0, 2),
      lift: grid.lift.slice(0, 2),
    });
    expect(two.dragCoefficient(7.5e4, 0.02)).toBeCloseTo((0.48 + 0.35) / 2, 14);
  });
  it('states its range, and defaults label, spin and spin decay', () => {
    expect(model.validity).toEqual({
      reynolds: { min: 40e3, max: 220e3 },
      spinRatio: { min: 0.02, max: 0.6 },
    });
    expect(model).toMatchObject({
      id: 'own',
      label: 'own',
      source,
      spinEntering: 'across',
      spinDecay: SPIN_DECAY,
    });
    const spelled = table({ ...grid, label: 'Mine', spinEntering: 'total', spinDecay: 1e-5 });
    expect(spelled).toMatchObject({ label: 'Mine', spinEntering: 'total', spinDecay: 1e-5 });
  });
  it('does not change when the caller’s arrays do', () => {
    const reynolds = [5e4, 1e5];
    const drag = [
      [0.2, 0.3],
      [0.25, 0.35],
    ];
    const made = table({ id: 'kept', source, reynolds, spinRatio: [0.1, 0.2], drag, lift: drag });
    const before = made.dragCoefficient(7e4, 0.15);
    reynolds[0] = 1;
    (drag[0] as number[])[0] = 9;
    expect(made.dragCoefficient(7e4, 0.15)).toBe(before);
  });
});

describe('a bad grid', () => {
  const rows = grid.drag;
  const replaced = (row: number, column: number, value: unknown) =>
    rows.map((r, i) => r.map((entry, j) => (i === row && j === column ? value : entry)));
  const bad: readonly [string, object, string, 'invalid-input' | 'outside-range'][] = [
    ['no id', { id: ' ' }, 'grid.id', 'invalid-input'],
    ['the id of a built-in model', { id: testRangeLine.id }, 'grid.id', 'invalid-input'],
    ['no source', { source: undefined }, 'grid.source', 'invalid-input'],
    ['an unknown field', { spin: 1 }, 'grid.spin', 'invalid-input'],
    ['no Reynolds numbers', { reynolds: [] }, 'grid.reynolds', 'invalid-input'],
    ['Reynolds numbers that are no array', { reynolds: 1e5 }, 'grid.reynolds', 'invalid-input'],
    ['a Reynolds number of 0', { reynolds: [0, 6e4, 75e3, 1e5, 2e5] }, 'grid.reynolds[0]', 'outside-range'],
    [
      'Reynolds numbers that repeat',
      { reynolds: [4e4, 6e4, 6e4, 1e5, 2e5] },
      'grid.reynolds[2]',
      'invalid-input',
    ],
    [
      'spin ratios that fall',
      { spinRatio: [0.02, 0.2, 0.1, 0.3, 0.6] },
      'grid.spinRatio[2]',
      'invalid-input',
    ],
    ['one spin ratio', { spinRatio: [0.1] }, 'grid.spinRatio', 'invalid-input'],
    ['a spin ratio below 0', { spinRatio: [-0.1, 0.1, 0.2, 0.3, 0.6] }, 'grid.spinRatio[0]', 'outside-range'],
    ['a row too few', { drag: rows.slice(1) }, 'grid.drag', 'invalid-input'],
    ['rows that are no arrays', { lift: 'flat' }, 'grid.lift', 'invalid-input'],
    [
      'a ragged row',
      { drag: rows.map((r, i) => (i === 3 ? r.slice(1) : r)) },
      'grid.drag[3]',
      'invalid-input',
    ],
    ['a gap', { drag: replaced(1, 2, Number.NaN) }, 'grid.drag[1][2]', 'invalid-input'],
    ['a drag below 0', { drag: replaced(1, 2, -0.2) }, 'grid.drag[1][2]', 'outside-range'],
    ['text for a lift', { lift: replaced(4, 4, '0.3') }, 'grid.lift[4][4]', 'invalid-input'],
    ['lift without spin', { spinRatio: [0, 0.1, 0.2, 0.3, 0.6] }, 'grid.lift[0][0]', 'invalid-input'],
    ['an unknown spin', { spinEntering: 'along' }, 'grid.spinEntering', 'invalid-input'],
    ['a spin decay too large', { spinDecay: 0.1 }, 'grid.spinDecay', 'outside-range'],
  ];
  for (const [what, change, field, code] of bad) {
    it(`${what} is refused by name`, () => {
      const error = caught(() => tabulatedModel({ ...grid, ...change } as CoefficientGrid));
      expect(error.field).toBe(field);
      expect(error.code).toBe(code);
      expect(error.message).toContain(what === 'an unknown field' ? '"spin"' : field);
    });
  }
});
