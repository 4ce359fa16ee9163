import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isFairflightError, type Scene } from 'fairflight';
import { scaledModel, smitsSmith1994 } from 'fairflight/models';
import { inspectSweepFile, type ParallelOptions, sweepInParallel, sweepToFile } from 'fairflight/node';
import { type Design, type SweepBase, type SweepChunk, sweep } from 'fairflight/sweep';
import { celsius, degrees, mph, seconds } from 'fairflight/units';
import { afterAll, describe, expect, it } from 'vitest';

/** Worker threads need the built package: they load a file of it. */

const folder = mkdtempSync(join(tmpdir(), 'fairflight-threads-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const design: Design = {
  kind: 'sobol',
  count: 400,
  seed: 9,
  factors: [
    { name: 'delivery.clubSpeed', from: mph(60), to: mph(125) },
    { name: 'delivery.dynamicLoft', from: degrees(9), to: degrees(30) },
    { name: 'air.temperature', from: celsius(-5), to: celsius(35) },
  ],
};
const base: SweepBase = { fixed: { 'delivery.attackAngle': degrees(-1) } };

async function bytesOf(chunks: AsyncIterable<SweepChunk>): Promise<Buffer> {
  const columns: Buffer[][] = [];
  for await (const { values, status } of chunks) {
    [...values, status].forEach((column, j) => {
      columns[j] ??= [];
      columns[j]?.push(Buffer.from(column.buffer));
    });
  }
  return Buffer.concat(columns.flat());
}

async function failure(chunks: AsyncIterable<SweepChunk>): Promise<unknown> {
  return bytesOf(chunks).then(
    () => undefined,
    (error: unknown) => error,
  );
}

/** A model in a module of its own, with a drag coefficient that may be wrong. */
function ownModel(name: string, drag: string, before = ''): string {
  const path = join(folder, name);
  writeFileSync(
    path,
    `${before}
     export const model = {
       id: 'own', label: 'own', extrapolation: 'none', spinEntering: 'across', spinDecay: 2e-5,
       source: { authors: 'invented', year: 2025, work: 'invented', confidence: 'assumption' },
       validity: { reynolds: { min: 1e4, max: 1e6 }, spinRatio: { min: 0, max: 1 } },
       dragCoefficient: () => ${drag}, liftCoefficient: (re, s) => 0.2 * Math.sqrt(s),
     };`,
  );
  return path;
}

describe('a sweep on worker threads', () => {
  it('gives the same bits for any number of workers and any chunk size', async () => {
    const expected = await bytesOf(sweepInParallel(design, {}, { ...base, workers: 0, chunkSize: 400 }));
    for (const options of [
      { workers: 1, chunkSize: 400 },
      { workers: 1, chunkSize: 33 },
      { workers: 2, chunkSize: 50 },
      { workers: 3, chunkSize: 7 },
    ]) {
      expect((await bytesOf(sweepInParallel(design, {}, { ...base, ...options }))).equals(expected)).toBe(
        true,
      );
    }
  });

  it('in JavaScript alone gives the bits of a sweep on one thread', async () => {
    const { values, status } = sweep(design, {}, base);
    const expected = Buffer.concat([...values, status].map(({ buffer }) => Buffer.from(buffer)));
    const options = { workers: 2, webAssembly: false, chunkSize: 100 };
    expect((await bytesOf(sweepInParallel(design, {}, { ...base, ...options }))).equals(expected)).toBe(true);
  });

  it.each(['csv', 'parquet', 'arrow'] as const)('writes the same %s file as one thread', async (format) => {
    const [one, two] = [join(folder, `one.${format}`), join(folder, `two.${format}`)];
    await sweepToFile(one, design, {}, { ...base, workers: 0 });
    await sweepToFile(two, design, {}, { ...base, workers: 2 });
    expect(readFileSync(two).equals(readFileSync(one))).toBe(true);
  });

  it('reports progress in order, and ends when its signal or its caller says so', async () => {
    const seen: number[] = [];
    const signal = { aborted: false };
    const options: ParallelOptions = {
      workers: 2,
      chunkSize: 20,
      signal,
      onProgress: ({ done }) => {
        seen.push(done);
        signal.aborted = done >= 100;
      },
    };
    expect(await failure(sweepInParallel(design, {}, { ...base, ...options }))).toMatchObject({
      code: 'aborted',
    });
    expect(seen).toEqual([20, 40, 60, 80, 100]);
    for await (const { start } of sweepInParallel(design, {}, { ...base, workers: 2, chunkSize: 20 })) {
      if (start === 40) break;
    }
    // The threads are gone: nothing of theirs would keep the process alive.
    await new Promise((resume) => setTimeout(resume, 50));
    expect(process.getActiveResourcesInfo().filter((name) => /worker/i.test(name))).toEqual([]);
  });

  it('takes a built-in model as a record, a model as data, and a model of one’s own from its module', async () => {
    const byId: Scene = { aerodynamics: 'smits-smith-1994' };
    const byRecord: Scene = { aerodynamics: smitsSmith1994 };
    const two = { ...base, workers: 2, chunkSize: 100 };
    const expected = await bytesOf(sweepInParallel(design, byId, { ...two, workers: 0 }));
    expect((await bytesOf(sweepInParallel(design, byRecord, two))).equals(expected)).toBe(true);

    const scaled: Scene = { aerodynamics: scaledModel(smitsSmith1994, { drag: 0.97 }) };
    const slower = await bytesOf(sweepInParallel(design, scaled, { ...two, workers: 0 }));
    expect((await bytesOf(sweepInParallel(design, scaled, two))).equals(slower)).toBe(true);
    expect(slower.equals(expected)).toBe(false);

    const modelFrom = { module: ownModel('own.mjs', '0.25'), name: 'model' };
    const { model } = await import(modelFrom.module);
    const own: Scene = { aerodynamics: model };
    const here = await bytesOf(sweepInParallel(design, own, { ...two, workers: 0 }));
    expect((await bytesOf(sweepInParallel(design, {}, { ...two, modelFrom }))).equals(here)).toBe(true);
    expect(here.equals(expected)).toBe(false);
    expect(await failure(sweepInParallel(design, own, two))).toMatchObject({
      code: 'unsupported',
      message: expect.stringContaining('modelFrom'),
    });
    expect(await failure(sweepInParallel(design, own, { ...two, modelFrom }))).toMatchObject({
      code: 'invalid-input',
    });
  });

  it('hands on a typed error that was thrown in a thread', async () => {
    const modelFrom = { module: ownModel('broken.mjs', 'Number.NaN'), name: 'model' };
    const error = await failure(sweepInParallel(design, {}, { ...base, workers: 1, modelFrom }));
    expect(isFairflightError(error) && error.code).toBe('invalid-input');
    const wrong = [{ module: modelFrom.module, name: 'nothing' }, { module: join(folder, 'missing.mjs') }];
    for (const each of wrong) {
      const options = { workers: 1, modelFrom: each };
      expect(await failure(sweepInParallel(design, {}, { ...base, ...options }))).toMatchObject({
        code: 'invalid-input',
        field: 'options.modelFrom',
      });
    }
  });

  it.each([
    ['exits', 'process.exit(3)', 'exit code 3', 'system'],
    ['does not return', 'for (;;);', 'no rows for 1 s', 'system'],
    ['throws what it likes', "throw new Error('odd')", 'threw at Re', 'invalid-input'],
  ])('a model that %s in a thread ends the sweep in a typed error', async (name, deed, words, code) => {
    const before = "import { isMainThread } from 'node:worker_threads'; let asked = 0;";
    // It answers while its numbers are looked at, before a ball flies.
    const drag = `{ if (!isMainThread && ++asked > 20000) ${deed}; return 0.25; }`;
    const modelFrom = { module: ownModel(`${name.replace(/ /g, '-')}.mjs`, drag, before), name: 'model' };
    const patience = name === 'does not return' ? { stallAfter: seconds(1) } : {};
    const options = { ...base, workers: 2, modelFrom, ...patience };
    const path = join(folder, `${words}.csv`);
    for (const failed of [
      await failure(sweepInParallel(design, {}, { ...options, chunkSize: 50 })),
      await sweepToFile(path, design, {}, options).catch((error: unknown) => error),
    ]) {
      expect(failed).toMatchObject({ code, message: expect.stringContaining(words) });
      if (code === 'system') expect(failed).toMatchObject({ hint: expect.stringContaining('resume: true') });
    }
    // The file can be gone on with once the model is mended, by its own numbers.
    expect(existsSync(path)).toBe(false);
    const mended = { module: ownModel('mended.mjs', '0.25'), name: 'model' };
    await sweepToFile(path, design, {}, { ...base, workers: 2, modelFrom: mended, resume: true });
    expect((await inspectSweepFile(path)).state).toBe('whole');
  });

  it('notices a module that is another in the threads than in the caller', async () => {
    const before = "import { isMainThread } from 'node:worker_threads';";
    const modelFrom = {
      module: ownModel('two-faced.mjs', '(isMainThread ? 0.25 : 0.26)', before),
      name: 'model',
    };
    expect(await failure(sweepInParallel(design, {}, { ...base, workers: 1, modelFrom }))).toMatchObject({
      code: 'invalid-input',
      field: 'options.modelFrom',
    });
  });

  it('keeps the numbers of a table that a module exports, and refuses to resume with others', async () => {
    const path = join(folder, 'table.csv');
    const table = (lift: number): string => {
      const module = join(folder, `table-${lift}.mjs`);
      const source = "{ authors: 'invented', year: 2025, work: 'invented', confidence: 'assumption' }";
      writeFileSync(
        module,
        `export default { kind: 'table', id: 'mine', reynolds: [1e5], spinRatio: [0, 0.5],
           drag: [[0.25, 0.3]], lift: [[0, ${lift}]], source: ${source} };`,
      );
      return module;
    };
    const write = (lift: number) =>
      sweepToFile(
        path,
        design,
        {},
        { ...base, workers: 1, modelFrom: { module: table(lift) }, resume: true },
      );
    const { about } = await write(0.25);
    expect(about.setup).toMatchObject({ scene: { aerodynamics: { kind: 'table', lift: [[0, 0.25]] } } });
    expect(await write(0.26).catch((error: unknown) => error)).toMatchObject({
      message: expect.stringContaining('is not this sweep'),
    });
  });

  it('runs from CommonJS too', async () => {
    const required = createRequire(import.meta.url)('fairflight/node') as typeof import('fairflight/node');
    const expected = await bytesOf(sweepInParallel(design, {}, { ...base, workers: 0 }));
    expect(
      (await bytesOf(required.sweepInParallel(design, {}, { ...base, workers: 1 }))).equals(expected),
    ).toBe(true);
    const file = join(folder, 'required.parquet');
    expect((await required.sweepToFile(file, design, {}, { ...base, workers: 1 })).rows).toBe(400);
  });
});
