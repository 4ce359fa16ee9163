import { describe, expect, it } from 'vitest';
import { sobol } from '../../src/numerics/index.js';
import { type Design, type ListRow, rowStatuses, sweep, sweepFactors } from '../../src/sweep/index.js';
import { designPoints } from '../../src/sweep/points.js';
import { readDesign } from '../../src/sweep/read-design.js';
import { degrees, metresPerSecond, mph, rpm } from '../../src/units/index.js';
import { caught } from '../caught.js';

const speed = { name: 'delivery.clubSpeed', from: mph(80), to: mph(120) } as const;
const attack = { name: 'delivery.attackAngle', from: degrees(-4), to: degrees(4) } as const;
const loft = { name: 'delivery.dynamicLoft', from: degrees(10), to: degrees(18) } as const;

/** All rows of a design, one array a row. */
function rowsOf(design: Design): number[][] {
  const { rows, names, fill } = designPoints(readDesign(design));
  const columns = names.map(() => new Float64Array(rows));
  fill(0, rows, columns);
  return Array.from({ length: rows }, (_, i) => columns.map((column) => column[i] as number));
}

describe('a grid', () => {
  it('holds every combination once, the last factor fastest', () => {
    const rows = rowsOf({
      kind: 'grid',
      factors: [
        { ...speed, steps: 3 },
        { name: 'delivery.attackAngle', values: [degrees(-2), degrees(1)] },
      ],
    });
    const middle = expect.closeTo(mph(100), 12);
    expect(rows).toEqual([
      [mph(80), degrees(-2)],
      [mph(80), degrees(1)],
      [middle, degrees(-2)],
      [middle, degrees(1)],
      [mph(120), degrees(-2)],
      [mph(120), degrees(1)],
    ]);
  });

  it('ends exactly on the ends', () => {
    const rows = rowsOf({ kind: 'grid', factors: [{ ...speed, steps: 41 }] });
    expect(rows).toHaveLength(41);
    expect(rows[0]).toEqual([mph(80)]);
    expect(rows[40]).toEqual([mph(120)]);
    expect(rows[1]?.[0]).toBeCloseTo(mph(81), 12);
  });
});

describe('a Latin hypercube', () => {
  it('has one row in every slice of every factor', () => {
    const count = 500;
    const rows = rowsOf({ kind: 'latin-hypercube', count, seed: 3, factors: [speed, attack, loft] });
    [speed, attack, loft].forEach(({ from, to }, j) => {
      const slices = rows.map((row) => Math.floor(((row[j] as number) - from) / ((to - from) / count)));
      expect([...slices].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
    });
  });
});

describe('a Sobol design', () => {
  it('is the published sequence scaled to the ranges when nothing scrambles it', () => {
    const rows = rowsOf({ kind: 'sobol', count: 64, scramble: 'none', factors: [speed, attack] });
    const points = sobol(2);
    expect(rows[0]).toEqual([speed.from, attack.from]);
    // First points of the sequence after the origin: (1/2, 1/2), (3/4, 1/4), (1/4, 3/4) (Joe and Kuo 2008).
    expect(rows[1]?.[0]).toBeCloseTo(mph(100), 12);
    expect(rows[2]).toEqual([expect.closeTo(mph(110), 12), expect.closeTo(degrees(-2), 12)]);
    const [u = 0, v = 0] = points.point(63);
    expect(rows[63]).toEqual([
      speed.from + u * (speed.to - speed.from),
      attack.from + v * (attack.to - attack.from),
    ]);
  });

  it('depends on its seed and on nothing else', () => {
    const design = { kind: 'sobol', count: 32, factors: [speed, attack] } as const;
    expect(rowsOf({ ...design, seed: 7 })).toEqual(rowsOf({ ...design, seed: 7 }));
    expect(rowsOf({ ...design, seed: 8 })).not.toEqual(rowsOf({ ...design, seed: 7 }));
    expect(rowsOf({ ...design, count: 64, seed: 7 }).slice(0, 32)).toEqual(rowsOf({ ...design, seed: 7 }));
  });
});

describe('a design for Sobol indices', () => {
  it('repeats each base row as A, B, and A with one factor of B', () => {
    const rows = rowsOf({ kind: 'sobol-indices', base: 4, seed: 1, factors: [speed, attack, loft] });
    expect(rows).toHaveLength(4 * 5);
    for (let at = 0; at < rows.length; at += 5) {
      const [a = [], b = [], ...mixed] = rows.slice(at, at + 5);
      mixed.forEach((row, j) => {
        expect(row).toEqual(a.map((value, factor) => (factor === j ? b[factor] : value)));
      });
      expect(a).not.toEqual(b);
    }
  });
});

describe('a list', () => {
  const launch = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2600) };

  it('flags a row outside its range and goes on', () => {
    const rows: ListRow[] = [mph(150), metresPerSecond(150), metresPerSecond(Number.NaN), mph(120)].map(
      (ballSpeed) => ({ 'launch.ballSpeed': ballSpeed }),
    );
    const result = sweep({ kind: 'list', rows }, {}, { from: launch });
    expect(Array.from(result.status, (code) => rowStatuses[code])).toEqual([
      'landed',
      'outside-range',
      'outside-range',
      'landed',
    ]);
    result.about.columns.forEach(({ role, name }, j) => {
      const values = Array.from(result.values[j] as Float64Array);
      if (role === 'input') expect([name, values[1]]).toEqual([name, 150]);
      else expect(values.map(Number.isNaN)).toEqual([false, true, true, false]);
    });
  });

  it('is told by a checksum that changes with any value', () => {
    const about = (ballSpeed: number) =>
      designPoints(readDesign({ kind: 'list', rows: [{ 'launch.ballSpeed': metresPerSecond(ballSpeed) }] }))
        .about;
    expect(about(60)).toEqual(about(60));
    expect(about(60)).not.toEqual(about(60 + 1e-14));
  });
});

describe('a bad design', () => {
  const fault = (design: unknown) => caught(() => sweep(design as Design));

  it('is refused with the names and the range that are allowed', () => {
    const misspelt = fault({ kind: 'sobol', count: 4, factors: [{ ...speed, name: 'delivery.speed' }] });
    expect(misspelt).toMatchObject({ code: 'invalid-input', field: 'design.factors[0].name' });
    expect(misspelt.message).toContain('delivery.clubSpeed');
    expect(fault({ kind: 'sobol', count: 4, factors: [{ ...speed, name: 'club' }] }).message).toContain(
      'turf.bounce.friction',
    );
    const fast = fault({ kind: 'sobol', count: 4, factors: [{ ...speed, to: 120 }] });
    expect(fast).toMatchObject({ code: 'outside-range', value: 120, unit: 'm/s', range: [1, 90] });
    expect(fast.message).toContain('delivery.clubSpeed');
  });

  it.each([
    ['no object', 4],
    ['no kind', { factors: [speed] }],
    ['an unknown kind', { kind: 'random', factors: [speed] }],
    ['an unknown field', { kind: 'sobol', count: 4, factors: [speed], rows: 3 }],
    ['no factors', { kind: 'sobol', count: 4, factors: [] }],
    ['a factor twice', { kind: 'sobol', count: 4, factors: [speed, speed] }],
    ['a factor that is null', { kind: 'sobol', count: 4, factors: [null] }],
    ['a factor without an end', { kind: 'sobol', count: 4, factors: [{ ...speed, to: undefined }] }],
    ['an infinite end', { kind: 'sobol', count: 4, factors: [{ ...speed, to: Number.POSITIVE_INFINITY }] }],
    ['steps in a Sobol factor', { kind: 'sobol', count: 4, factors: [{ ...speed, steps: 3 }] }],
    ['a broken count', { kind: 'sobol', count: 4.5, factors: [speed] }],
    ['no count', { kind: 'latin-hypercube', factors: [speed] }],
    ['a count of 0', { kind: 'latin-hypercube', count: 0, factors: [speed] }],
    ['a broken seed', { kind: 'sobol', count: 4, factors: [speed], seed: 0.5 }],
    ['one step', { kind: 'grid', factors: [{ ...speed, steps: 1 }] }],
    ['no values', { kind: 'grid', factors: [{ name: 'delivery.clubSpeed', values: [] }] }],
    ['a value outside', { kind: 'grid', factors: [{ name: 'delivery.clubSpeed', values: [200] }] }],
    ['no rows', { kind: 'list', rows: [] }],
    ['an empty row', { kind: 'list', rows: [{}] }],
    ['a row that lacks a factor', { kind: 'list', rows: [{ 'launch.spinRate': 1 }, {}] }],
    [
      'a row with one more',
      { kind: 'list', rows: [{ 'launch.spinRate': 1 }, { 'launch.spinRate': 1, 'launch.ballSpeed': 1 }] },
    ],
    ['a text for a number', { kind: 'list', rows: [{ 'launch.spinRate': '200' }] }],
    ['a null row', { kind: 'list', rows: [null] }],
    ['one base row', { kind: 'sobol-indices', base: 1, factors: [speed] }],
  ])('with %s is a typed error', (_, design) => {
    expect(fault(design).code).toMatch(/^(invalid-input|outside-range)$/);
  });

  it('says how many factors a Sobol sequence takes', () => {
    const names = Object.keys(sweepFactors).slice(0, 33);
    const factors = names.map((name) => ({
      name,
      from: sweepFactors[name as keyof typeof sweepFactors].min,
      to: sweepFactors[name as keyof typeof sweepFactors].max,
    }));
    expect(fault({ kind: 'sobol', count: 4, factors })).toMatchObject({ range: [1, 32], value: 33 });
    expect(fault({ kind: 'sobol-indices', base: 4, factors })).toMatchObject({ range: [1, 16] });
  });
});
