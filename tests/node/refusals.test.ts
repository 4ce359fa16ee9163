import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { isFairflightError } from '../../src/errors.js';
import { inspectSweepFile, sweepInParallel, sweepToFile } from '../../src/node/index.js';
import { strange } from '../sweep/strange.js';
import { cheap, listOf, rejected, scratchFolder } from './support.js';

const folder = scratchFolder();
const design = listOf(3);
const here = { ...cheap, workers: 0 } as const;
let files = 0;
const fresh = (): string => join(folder, `${files++}.csv`);

/** Names of the options that say how, and not what. */
const OPTIONS = [
  'chunkSize',
  'signal',
  'onProgress',
  'workers',
  'webAssembly',
  'modelFrom',
  'format',
  'resume',
  'overwrite',
] as const;

describe.each(strange)('%s', (_, value) => {
  /** Each place an argument has, filled with the value; a chunk of a row says that it was allowed. */
  const calls: Readonly<Record<string, () => Promise<unknown>>> = {
    path: () => sweepToFile(value as never, design, {}, here),
    'path with an ending': () => sweepToFile(`${folder}/${String(value)}.csv`, design, {}, here),
    'path to look at': () => inspectSweepFile(value as never),
    'format to look at': () => inspectSweepFile(fresh(), value as never),
    design: () => sweepToFile(fresh(), value as never, {}, here),
    scene: () => sweepToFile(fresh(), design, value as never, here),
    options: () => sweepToFile(fresh(), design, {}, value as never),
    'module of a model': () =>
      sweepToFile(fresh(), design, {}, { ...here, modelFrom: { module: value } } as never),
    'export of a module': () =>
      sweepToFile(fresh(), design, {}, { ...here, modelFrom: { module: 'node:os', name: value } } as never),
    'design of chunks': () => sweepInParallel(value as never, {}, here).next(),
    'scene of chunks': () => sweepInParallel(design, value as never, here).next(),
    'options of chunks': () => sweepInParallel(design, {}, value as never).next(),
    'rows of chunks': () => sweepInParallel(design, {}, { ...here, rows: value } as never).next(),
    ...Object.fromEntries(
      OPTIONS.map((name) => [
        `options.${name}`,
        () => sweepToFile(fresh(), design, {}, { ...here, [name]: value } as never),
      ]),
    ),
  };

  it.each(Object.keys(calls))('as %s is a typed error, or allowed', async (place) => {
    // A symbol and a record without a prototype make no text.
    const textless = typeof value === 'symbol' || (typeof value === 'object' && value !== null);
    if (place === 'path with an ending' && textless) return;
    // Worker threads need the built package.
    if (place === 'options.workers' && value === 4) return;
    const error = await (calls[place] as () => Promise<unknown>)().then(
      () => undefined,
      (reason: unknown) => reason,
    );
    expect(error === undefined || isFairflightError(error), String(error)).toBe(true);
  });
});

describe('a path', () => {
  it('to a folder, below no folder, or to no file is refused before a row is computed', async () => {
    const taken = join(folder, 'taken.csv');
    mkdirSync(taken);
    const seen: number[] = [];
    const onProgress = ({ done }: { done: number }): number => seen.push(done);
    for (const path of [taken, join(folder, 'none', 'x.csv')]) {
      for (const more of [{}, { overwrite: true }, { resume: true }]) {
        const error = await rejected(sweepToFile(path, design, {}, { ...here, ...more, onProgress }));
        expect(error).toMatchObject({ code: 'invalid-input', field: 'path' });
      }
    }
    expect(seen).toEqual([]);
    expect(existsSync(`${taken}.partial`)).toBe(false);
    for (const ending of ['csv', 'parquet', 'arrow']) {
      const error = await rejected(inspectSweepFile(join(folder, `nothing.${ending}`)));
      expect(error).toMatchObject({ code: 'invalid-input', field: 'path' });
    }
  });
});
