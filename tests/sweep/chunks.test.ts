import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aerodynamicModels, scaledModel } from '../../src/aerodynamics/index.js';
import { balls } from '../../src/ball/index.js';
import { loadBatchKernel } from '../../src/batch.js';
import { isFairflightError } from '../../src/errors.js';
import type { Scene } from '../../src/scene/index.js';
import {
  columnOf,
  type Design,
  designRows,
  type SobolDesign,
  type SweepChunk,
  type SweepOptions,
  type SweepProgress,
  sweep,
  sweepChunks,
} from '../../src/sweep/index.js';
import { sweepPlan } from '../../src/sweep/plan.js';
import { readSweep } from '../../src/sweep/request.js';
import { turfs } from '../../src/turf/index.js';
import {
  celsius,
  degrees,
  degreesPerSecond,
  kilograms,
  metres,
  metresPerSecond,
  mph,
  seconds,
} from '../../src/units/index.js';

const factors = [
  { name: 'delivery.clubSpeed', from: mph(70), to: mph(125) },
  { name: 'delivery.attackAngle', from: degrees(-5), to: degrees(5) },
  { name: 'delivery.dynamicLoft', from: degrees(8), to: degrees(24) },
  { name: 'delivery.strikeOffset.toe', from: -0.02, to: 0.02 },
  { name: 'air.temperature', from: celsius(0), to: celsius(35) },
  { name: 'wind.along', from: metresPerSecond(-8), to: metresPerSecond(8) },
] as unknown as SobolDesign['factors'];
const designs: readonly Design[] = [
  { kind: 'sobol', count: 300, seed: 5, factors },
  { kind: 'latin-hypercube', count: 300, seed: 5, factors },
  { kind: 'sobol-indices', base: 37, seed: 5, factors },
  {
    kind: 'grid',
    factors: [
      { name: 'delivery.clubSpeed', from: mph(70), to: mph(125), steps: 12 },
      { name: 'delivery.dynamicLoft', from: degrees(8), to: degrees(24), steps: 25 },
    ],
  },
];
const base: SweepOptions = {
  fixed: {},
  from: { clubSpeed: mph(100), attackAngle: degrees(0), dynamicLoft: degrees(12) },
};

async function collect(chunks: AsyncIterable<SweepChunk>): Promise<SweepChunk[]> {
  const all: SweepChunk[] = [];
  for await (const chunk of chunks) all.push(chunk);
  return all;
}

function bytes(parts: readonly SweepChunk[], column: number): Uint8Array[] {
  return parts.map(({ values }) => new Uint8Array((values[column] as Float64Array).buffer));
}

const kernel = await loadBatchKernel();

describe('the batch kernel', () => {
  it('gives the rows of the JavaScript engine, and says that it was at work', () => {
    for (const design of designs) {
      const [fast, plain] = [sweep(design, {}, { ...base, kernel }), sweep(design, {}, base)];
      expect([fast.about.engine, plain.about.engine]).toEqual([kernel?.name, 'JavaScript']);
      expect(fast.status).toEqual(plain.status);
      // Both carries are good to the tolerance of 0.1 mm; a bounce makes more of a difference.
      for (const [name, most] of [
        ['carry', 2e-4],
        ['flight.side', 2e-4],
        ['total', 0.05],
        ['side', 0.05],
      ] as const) {
        const [values, expected] = [columnOf(fast, name), columnOf(plain, name)];
        const off = Math.max(...values.map((value, i) => Math.abs(value - (expected[i] as number))));
        expect(off, name).toBeLessThan(most);
      }
    }
  });
});

describe('chunks', () => {
  it.each([1, 7, 64, 299, 300, 5000])('of %i rows are the whole sweep bit for bit', async (chunkSize) => {
    for (const [design, options] of designs.flatMap((each) => [
      [each, {}] as const,
      [each, { kernel }] as const,
    ])) {
      const whole = sweep(design, {}, { ...base, ...options });
      const parts = await collect(sweepChunks(design, {}, { ...base, ...options, chunkSize }));
      whole.about.columns.forEach((_, column) => {
        const expected = new Uint8Array((whole.values[column] as Float64Array).buffer);
        expect(Buffer.concat(bytes(parts, column)).equals(expected)).toBe(true);
      });
      expect(Buffer.concat(parts.map(({ status }) => status)).equals(whole.status)).toBe(true);
      expect(parts.map(({ start }) => start)).toEqual(parts.map((_, i) => i * chunkSize));
    }
  });

  it('can be computed in any order, and begin anywhere', () => {
    const [design] = designs as [Design];
    const whole = columnOf(sweep(design, {}, base), 'carry');
    const plan = sweepPlan(readSweep(design, {}, base));
    const carry = plan.about.columns.findIndex(({ name }) => name === 'carry');
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 299 }), fc.integer({ min: 1, max: 50 }), (start, size) => {
        const count = Math.min(size, 300 - start);
        expect(plan.evaluate(start, count).values[carry]).toEqual(whole.slice(start, start + count));
      }),
      { numRuns: 50 },
    );
  });

  it('differ with the seed', () => {
    const [design] = designs as [Design];
    const other = sweep({ ...design, seed: 6 } as Design, {}, base);
    expect(columnOf(other, 'carry')).not.toEqual(columnOf(sweep(design, {}, base), 'carry'));
    expect(other.about.seed).toBe(6);
  });

  it('report their progress', async () => {
    const seen: SweepProgress[] = [];
    const [design] = designs as [Design];
    await collect(sweepChunks(design, {}, { ...base, chunkSize: 128, onProgress: (at) => seen.push(at) }));
    expect(seen).toEqual([
      { done: 128, total: 300 },
      { done: 256, total: 300 },
      { done: 300, total: 300 },
    ]);
  });

  it('stop when the signal says so, at once and between chunks', async () => {
    const [design] = designs as [Design];
    const abort = new AbortController();
    const seen: number[] = [];
    const run = async (): Promise<void> => {
      const options = { ...base, chunkSize: 50, signal: abort.signal };
      for await (const { start } of sweepChunks(design, {}, options)) {
        seen.push(start);
        // From a timer, as a user's click would: the sweep must give way between chunks.
        if (start === 50) setTimeout(() => abort.abort('enough'), 0);
      }
    };
    const error = await run().catch((reason: unknown) => reason);
    expect(isFairflightError(error) && error.code).toBe('aborted');
    expect(error).toMatchObject({ value: 'enough' });
    expect(seen.length).toBeLessThan(6);
    const again = await run().catch((reason: unknown) => reason);
    expect(again).toMatchObject({ code: 'aborted' });
  });

  it('are made when they are asked for, one at a time, however many rows there are', async () => {
    for (const count of [4096, 40_960]) {
      const design = { ...(designs[0] as Extract<Design, { kind: 'sobol' }>), count };
      const asked: number[] = [];
      const made: number[] = [];
      const sizes: number[] = [];
      let retained: SweepChunk | undefined;
      const chunks = sweepChunks(
        design,
        {},
        {
          ...base,
          outputs: ['launch.ballSpeed'],
          chunkSize: 1024,
          onProgress: ({ done }) => made.push(done),
        },
      );
      for (;;) {
        asked.push(asked.length);
        const { value, done } = await chunks.next();
        // What exists beyond the caller's own chunk: nothing has been computed ahead.
        expect(made.length).toBe(Math.min(asked.length, count / 1024));
        if (done === true) break;
        // A chunk is its own memory, not a window on a growing buffer, and never the last one again.
        expect(value.values.every((column) => column.buffer !== retained?.values[0]?.buffer)).toBe(true);
        sizes.push(
          value.values.reduce(
            (sum, column) => sum + column.buffer.byteLength,
            value.status.buffer.byteLength,
          ),
        );
        retained = value;
      }
      expect(made.length).toBe(count / 1024);
      expect(Math.max(...sizes)).toBe(1024 * (8 * 7 + 1));
    }
  });

  it.each([
    { chunkSize: 0 },
    { chunkSize: 1.5 },
    { rows: { from: -1, to: 3 } },
    { rows: { from: 1, to: 301 } },
    { rows: { from: 3, to: 3 } },
    { start: 1 },
  ])('refuse %o', async (options) => {
    const error = await collect(
      sweepChunks(designs[0] as Design, {}, { ...base, ...(options as object) }),
    ).catch((reason: unknown) => reason);
    expect(isFairflightError(error)).toBe(true);
  });
});

describe('some rows of a design', () => {
  const rows = { from: 37, to: 141 };
  it('are those of the whole bit for bit, in one go, in chunks and as inputs alone', async () => {
    for (const design of designs) {
      const whole = sweep(design, {}, base);
      const part = sweep(design, {}, { ...base, rows });
      const chunks = await collect(sweepChunks(design, {}, { ...base, rows, chunkSize: 11 }));
      const inputs = designRows(design, { rows });
      expect([part.start, part.count, part.about.rows, inputs.start, inputs.count]).toEqual([
        37, 104, 104, 37, 104,
      ]);
      expect(part.about.part).toEqual({ ...rows, of: whole.about.rows });
      expect(whole.about.part).toBeUndefined();
      expect(chunks.map(({ start }) => start)).toEqual(chunks.map((_, k) => 37 + 11 * k));
      expect(part.status).toEqual(whole.status.slice(37, 141));
      whole.values.forEach((column, j) => {
        const expected = Buffer.from(column.slice(37, 141).buffer);
        expect(Buffer.from((part.values[j] as Float64Array).buffer).equals(expected)).toBe(true);
        expect(Buffer.concat(bytes(chunks, j)).equals(expected)).toBe(true);
        if (j < inputs.names.length)
          expect(Buffer.from((inputs.values[j] as Float64Array).buffer).equals(expected)).toBe(true);
      });
    }
  });

  it('put together are the whole', () => {
    const [design] = designs as [Design];
    const cuts = [0, 1, 100, 299, 300];
    const carry = cuts.slice(1).flatMap((to, k) => {
      const from = cuts[k] as number;
      return [...columnOf(sweep(design, {}, { ...base, rows: { from, to } }), 'carry')];
    });
    expect(carry).toEqual([...columnOf(sweep(design, {}, base), 'carry')]);
  });
});

describe('what a sweep says of itself', () => {
  it('is plain data with units, models, version, design and seed', async () => {
    const manifest = await import('../../package.json', { with: { type: 'json' } });
    const { about } = sweep(designs[0] as Design, { aerodynamics: 'smits-smith-1994' }, base);
    expect(JSON.parse(JSON.stringify(about))).toEqual(about);
    expect(about).toMatchObject({
      library: 'fairflight',
      version: manifest.default.version,
      rows: 300,
      seed: 5,
      design: { kind: 'sobol', count: 300, scramble: 'owen' },
      models: { aerodynamics: 'smits-smith-1994', strike: 'rigid-body impulse', run: 'biber-2023' },
      setup: { clubhead: { name: 'generic driver' }, scene: { turf: turfs.normal } },
    });
    expect(about.columns.find(({ name }) => name === 'carry')).toEqual({
      name: 'carry',
      column: 'carry_m',
      unit: 'm',
      role: 'output',
    });
  });

  it('holds a model given as data, so that two which print alike are told apart', () => {
    const told = [0.97, 0.9701].map((drag) => {
      const aerodynamics = scaledModel('smits-smith-1994', { drag });
      const { about } = sweep(designs[0] as Design, { aerodynamics }, base);
      expect(about.setup).toMatchObject({ scene: { aerodynamics } });
      return JSON.stringify(about);
    });
    expect(told[0]).not.toBe(told[1]);
  });

  it('differs wherever two sweeps differ, and says the same of a preset and its record', () => {
    const design = { kind: 'sobol', count: 2, factors } as const;
    const from = { clubSpeed: mph(100), attackAngle: degrees(0), dynamicLoft: degrees(12) };
    const told = (scene: Scene, options: SweepOptions, other: Design = design): string =>
      JSON.stringify(sweep(other, scene, { from, ...options }).about);
    const ways: readonly string[] = [
      told({}, {}),
      told({}, {}, { ...design, seed: 1 }),
      told({}, {}, { ...design, count: 3 }),
      told({}, {}, { ...design, scramble: 'shift' }),
      told({}, {}, { ...design, kind: 'latin-hypercube' } as never),
      told({}, {}, { ...design, factors: factors.slice(1) }),
      told({}, { from: { ...from, hand: 'left' } }),
      told({}, { from: { ...from, closureRate: degreesPerSecond(300) } }),
      told({}, { from: { ...from, strikeOffset: { toe: metres(0), high: metres(1e-9) } } }),
      told({}, { fixed: { 'turf.bounce.friction': 0.3 } }),
      told({}, { clubhead: 'midIron' }),
      told({}, { outputs: ['carry'] }),
      told({}, { tolerance: metres(1e-3) }),
      told({}, { timeLimit: seconds(30) }),
      told({}, { kernel }),
      told({ turf: 'firm' }, {}),
      told({ ball: { ...balls.conforming, mass: kilograms(0.046) } }, {}),
      told({ ground: { slope: degrees(1) } }, {}),
      told({ wind: { along: metresPerSecond(0), across: metresPerSecond(1) } }, {}),
      told({ aerodynamics: 'smits-smith-1994' }, {}),
    ];
    expect(new Set(ways).size).toBe(ways.length);
    expect(told({ turf: 'normal', ball: 'conforming' }, { clubhead: 'driver' })).toBe(ways[0]);
    const two = { 'turf.bounce.friction': 0.3, 'wind.across': metresPerSecond(1) };
    const turned = { 'wind.across': metresPerSecond(1), 'turf.bounce.friction': 0.3 };
    expect(told({}, { fixed: two })).toBe(told({}, { fixed: turned }));
    expect(told({ turf: turfs.normal, aerodynamics: aerodynamicModels['fitted-modern'] }, {})).toBe(ways[0]);
  });

  it('has no column of another name', () => {
    expect(() => columnOf(sweep(designs[3] as Design, {}, base), 'distance')).toThrow(/carry/);
  });
});
