import { describe, expect, it } from 'vitest';
import { fittedModern } from '../../src/aerodynamics/index.js';
import { balls } from '../../src/ball/index.js';
import { loadBatchKernel } from '../../src/batch.js';
import { fly } from '../../src/flight/index.js';
import type { Scene } from '../../src/scene/index.js';
import { playShot } from '../../src/shot/index.js';
import {
  columnOf,
  type Design,
  type ListRow,
  rowWarnings,
  type SobolDesign,
  type SweepOptions,
  sweep,
  sweepChunks,
} from '../../src/sweep/index.js';
import { celsius, degrees, metresPerSecond, mph, rpm } from '../../src/units/index.js';
import { caught } from '../caught.js';

const kernel = await loadBatchKernel();
/** Far beyond the data of every model, on all sides. */
const deliveries: SobolDesign = {
  kind: 'sobol',
  count: 96,
  factors: [
    { name: 'delivery.clubSpeed', from: mph(30), to: mph(140) },
    { name: 'delivery.attackAngle', from: degrees(-6), to: degrees(6) },
    { name: 'delivery.dynamicLoft', from: degrees(4), to: degrees(60) },
    { name: 'delivery.strikeOffset.toe', from: -0.05 as never, to: 0.05 as never },
  ],
};
const start = { clubSpeed: mph(90), attackAngle: degrees(0), dynamicLoft: degrees(15) };

/** Names of the warnings of each row, from its bits. */
const namesOf = (sums: Float64Array): string[][] =>
  Array.from(sums, (bits) => rowWarnings.filter((_, k) => (bits >> k) & 1));

const told = (design: Design, scene: Scene, options: SweepOptions) =>
  sweep(design, scene, { from: start, warnings: 'column', ...options });

describe('the warnings of a row', () => {
  it.each<[string, Scene, SweepOptions]>([
    ['JavaScript', {}, {}],
    ['the kernel', {}, { kernel }],
    ['an iron on firm turf', { turf: 'firm' }, { clubhead: 'midIron', kernel }],
    ['a warm ball', { ball: { ...balls.conforming, temperature: celsius(40) } }, {}],
    ['another model', { aerodynamics: 'smits-smith-1994' }, { kernel }],
    [
      'a wind that only the general engine flies',
      {
        wind: {
          along: metresPerSecond(5),
          across: metresPerSecond(0),
          profile: { kind: 'power', exponent: 0.2 },
        },
      },
      {},
    ],
  ])('are those of its shot: %s', (_, scene, options) => {
    const result = told(deliveries, scene, options);
    const [speed, attack, loft, toe] = result.values as readonly [
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    const expected = Array.from(speed, (clubSpeed, i) => {
      const delivery = {
        clubSpeed,
        attackAngle: attack[i],
        dynamicLoft: loft[i],
        strikeOffset: { toe: toe[i], high: 0 },
      };
      const { clubhead = 'driver' } = options;
      const codes = playShot(delivery as never, scene, { clubhead }).warnings.map(({ code }) => code);
      return rowWarnings.filter((code) => codes.includes(code));
    });
    expect(namesOf(columnOf(result, 'warnings'))).toEqual(expected);
    // All of them occur, so that none is there by chance.
    if (Object.keys(scene).length === 0)
      expect([...new Set(expected.flat())].sort()).toEqual(
        rowWarnings.filter((code) => code !== 'ball-temperature-outside-data').sort(),
      );
  });

  it('are counted by code, over a sweep and over its pieces', async () => {
    const result = told(deliveries, {}, {});
    const names = namesOf(columnOf(result, 'warnings')).flat();
    const counts = rowWarnings.map((code) => names.filter((name) => name === code).length);
    expect(result.about.warnings).toEqual(rowWarnings);
    expect(result.warningCounts).toEqual(counts);
    const sums = rowWarnings.map(() => 0);
    for await (const chunk of sweepChunks(deliveries, {}, { from: start, chunkSize: 7 })) {
      chunk.warningCounts.forEach((rows, k) => {
        (sums[k] as number) += rows;
      });
    }
    expect(sums).toEqual(counts);
    const long = sweep(
      { ...deliveries, count: 4096 },
      {},
      { from: start, outputs: ['launch.ballSpeed'], warnings: 'column' },
    );
    expect(long.warningCounts).toEqual(
      rowWarnings.map((_, k) => columnOf(long, 'warnings').reduce((n, bits) => n + ((bits >> k) & 1), 0)),
    );
  });

  it('are no column unless they are asked for, and only those of what was computed', () => {
    const plain = sweep(deliveries, {}, { from: start });
    expect(plain.about.columns.map(({ name }) => name)).not.toContain('warnings');
    const struck = sweep(deliveries, {}, { from: start, outputs: ['launch.ballSpeed'] });
    expect(struck.warningCounts.slice(0, 2)).toEqual([0, 0]);
    expect(struck.warningCounts[2]).toBeGreaterThan(0);
  });
});

describe('a model of the user’s own that throws', () => {
  const narrow = {
    ...fittedModern,
    id: 'narrow',
    dragCoefficient: (reynolds: number, spinRatio: number): number => {
      if (spinRatio > 0.35) throw new Error('no data up there');
      return fittedModern.dragCoefficient(reynolds, spinRatio);
    },
  };
  const launch = { ballSpeed: mph(150), launchAngle: degrees(12), spinRate: rpm(2500) };
  const rows = (...spins: readonly number[]): Design => ({
    kind: 'list',
    rows: spins.map((spin): ListRow => ({ 'launch.spinRate': rpm(spin) })),
  });

  it('is named with Re and S, and in a sweep with the row', async () => {
    const high = { ...launch, spinRate: rpm(9000) };
    const alone = caught(() => fly(high, { aerodynamics: narrow }));
    expect(alone).toMatchObject({ code: 'invalid-input', field: 'scene.aerodynamics' });
    expect(alone.message).toMatch(/^"narrow" threw at Re \d+ and S 0\.\d+: no data up there; a model must/);
    const { reynolds, spinRatio } = alone.value as { readonly reynolds: number; readonly spinRatio: number };
    expect(spinRatio).toBeGreaterThan(0.35);
    expect(reynolds).toBeGreaterThan(1e4);
    const design = rows(1500, 1800, 9000, 1500, 9000);
    const scene = { aerodynamics: narrow };
    const swept = caught(() => sweep(design, scene, { from: launch }));
    expect(swept.message).toBe(`row 2 of the design: ${alone.message}`);
    const later: unknown = await (async () => {
      for await (const _ of sweepChunks(design, scene, { from: launch, chunkSize: 2 }));
    })().catch((error: unknown) => error);
    expect(later).toMatchObject({ message: swept.message });
  });

  it('flies what stays where it answers, as the model without the limit does', () => {
    const design = rows(1500, 1800);
    const plain = { ...narrow, id: 'whole', dragCoefficient: fittedModern.dragCoefficient };
    const [limited, whole] = [narrow, plain].map((aerodynamics) =>
      columnOf(sweep(design, { aerodynamics }, { from: launch }), 'carry'),
    ) as [Float64Array, Float64Array];
    limited.forEach((carry, i) => {
      expect(carry).toBeCloseTo(whole[i] as number, 3);
    });
  });
});
