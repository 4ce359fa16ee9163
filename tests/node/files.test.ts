import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { tableFromIPC } from 'apache-arrow';
import { csvParse } from 'd3-dsv';
import { asyncBufferFromFile, parquetMetadataAsync, parquetReadObjects } from 'hyparquet';
import { describe, expect, it } from 'vitest';
import { loadBatchKernel } from '../../src/batch.js';
import { inspectSweepFile, type SweepFormat, sweepToFile } from '../../src/node/index.js';
import { rowStatuses, type SweepResult, sweep } from '../../src/sweep/index.js';
import { cheap, listOf, rejected, scratchFolder } from './support.js';

const folder = scratchFolder();
const design = listOf(230);
const whole = sweep(design, {}, { ...cheap, kernel: await loadBatchKernel() });
const formats: readonly SweepFormat[] = ['csv', 'parquet', 'arrow'];
const here = { ...cheap, workers: 0, chunkSize: 64 } as const;

type Row = Record<string, number | string>;

/** The rows of a result as records; a missing number is NaN. */
function recordsOf({ about, values, status, count }: SweepResult): Row[] {
  return Array.from({ length: count }, (_, i) => ({
    ...Object.fromEntries(about.columns.map(({ name }, j) => [name, values[j]?.[i] as number])),
    status: rowStatuses[status[i] as number] as string,
  }));
}

/** Reads a file by a package that had no part in writing it, or by the format's own reference reader. */
const readers: Readonly<Record<SweepFormat, (path: string) => Promise<Row[]>>> = {
  csv: async (path) => {
    const lines = readFileSync(path, 'utf8').split('\n');
    const table = csvParse(lines.filter((line) => !line.startsWith('#')).join('\n'));
    return table.map((row) =>
      Object.fromEntries(
        Object.entries(row).map(([name, text]) => [
          name.replace(/ \(.*\)$/, ''),
          name === 'status' ? text : text === '' ? Number.NaN : Number(text),
        ]),
      ),
    );
  },
  parquet: async (path) => (await parquetReadObjects({ file: await asyncBufferFromFile(path) })) as Row[],
  arrow: async (path) =>
    tableFromIPC(readFileSync(path))
      .toArray()
      .map((row) => row.toJSON() as Row),
};

describe.each(formats)('a sweep in a %s file', (format) => {
  const path = join(folder, `whole.${format}`);

  it('is read back digit for digit', async () => {
    const report = await sweepToFile(path, design, {}, here);
    expect(report).toMatchObject({ path, format, rows: 230, resumedAt: 0, bytes: readFileSync(path).length });
    expect(await readers[format](path)).toEqual(recordsOf(whole));
    expect(existsSync(`${path}.partial`) || existsSync(`${path}.journal`)).toBe(false);
  });

  it('says which sweep it is', async () => {
    expect(await inspectSweepFile(path)).toEqual({ format, state: 'whole', about: whole.about });
  });

  it('carries units, models, version, design and seed where the format keeps such things', async () => {
    const seeded = join(folder, `seeded.${format}`);
    const factors = [{ name: 'launch.ballSpeed', from: 40, to: 70 }] as never;
    const { about } = await sweepToFile(seeded, { kind: 'sobol', count: 8, seed: 42, factors }, {}, here);
    expect(about).toMatchObject({
      seed: 42,
      models: { aerodynamics: 'fitted-modern' },
      design: { kind: 'sobol' },
    });
    expect(about.columns[0]).toEqual({ name: 'launch.ballSpeed', unit: 'm/s', role: 'input' });
    const text = JSON.stringify(about);
    if (format === 'csv') {
      const [first, second] = readFileSync(seeded, 'utf8').split('\n');
      expect(first).toBe(`# fairflight.sweep: ${text}`);
      expect(second).toBe(
        'launch.ballSpeed (m/s),carry (m),flight.apex (m),flight.descentAngle (rad),status',
      );
    } else if (format === 'parquet') {
      const { key_value_metadata, created_by } = await parquetMetadataAsync(
        await asyncBufferFromFile(seeded),
      );
      expect(key_value_metadata).toEqual([{ key: 'fairflight.sweep', value: text }]);
      expect(created_by).toBe(`fairflight version ${about.version}`);
    } else {
      const { schema } = tableFromIPC(readFileSync(seeded));
      expect(schema.metadata.get('fairflight.sweep')).toBe(text);
      expect(schema.fields[1]?.metadata).toEqual(
        new Map([
          ['unit', 'm'],
          ['role', 'output'],
        ]),
      );
    }
  });

  it('is told from one that is cut short, wherever it is cut', async () => {
    const bytes = readFileSync(path);
    const cut = join(folder, `cut.${format}`);
    const lengths = [
      0,
      1,
      5,
      9,
      20,
      500,
      bytes.length >> 1,
      bytes.length - 200,
      bytes.length - 9,
      bytes.length - 1,
    ];
    for (const length of lengths) {
      writeFileSync(cut, bytes.subarray(0, length));
      expect([length, await inspectSweepFile(cut)]).toEqual([length, { format, state: 'cut-short' }]);
    }
  });

  it('is not written over unless asked', async () => {
    const other = listOf(10);
    expect(await rejected(sweepToFile(path, other, {}, here))).toMatchObject({ code: 'invalid-input' });
    expect(await rejected(sweepToFile(path, other, {}, { ...here, resume: true }))).toMatchObject({
      message: expect.stringContaining('overwrite: true'),
    });
    expect(readFileSync(path).length).toBeGreaterThan(5000);
    await sweepToFile(path, other, {}, { ...here, overwrite: true });
    expect(await readers[format](path)).toHaveLength(10);
  });
});

describe.each(formats)('an unfinished %s file', (format) => {
  const path = join(folder, `resumed.${format}`);
  const partial = `${path}.partial`;
  const journal = `${path}.journal`;

  /** Stops after some chunks of 64, as a crash would, and returns what lies on the disk. */
  async function crash(chunks: number): Promise<{ partial: Buffer; journal: Buffer }> {
    const signal = { aborted: false };
    const onProgress = ({ done }: { done: number }): void => {
      signal.aborted = done >= 64 * chunks;
    };
    const error = await rejected(
      sweepToFile(path, design, {}, { ...here, signal, onProgress, overwrite: true }),
    );
    expect(error.code).toBe('aborted');
    expect(existsSync(path)).toBe(false);
    return { partial: readFileSync(partial), journal: readFileSync(journal) };
  }

  async function resumed(): Promise<number> {
    const { resumedAt } = await sweepToFile(path, design, {}, { ...here, resume: true });
    const { state } = await inspectSweepFile(path);
    expect(state).toBe('whole');
    expect(existsSync(partial) || existsSync(journal)).toBe(false);
    return resumedAt;
  }

  /** Takes the finished file away and returns its bytes. */
  function taken(): Buffer {
    const bytes = readFileSync(path);
    rmSync(path);
    return bytes;
  }

  it('ends byte for byte as if nothing had happened, wherever it was cut', async () => {
    const plain = join(folder, `plain.${format}`);
    await sweepToFile(plain, design, {}, here);
    const expected = readFileSync(plain);
    const left = await crash(2);
    const { length } = left.partial;
    const places = [0, 3, 8, 40, length >> 2, length >> 1, length - 64, length - 1, length];
    const reached = new Set<number>();
    for (const place of places) {
      writeFileSync(partial, left.partial.subarray(0, place));
      writeFileSync(journal, left.journal);
      reached.add(await resumed());
      expect([place, taken().equals(expected)]).toEqual([place, true]);
    }
    // What was whole was kept: nothing at one end, both chunks at the other.
    expect([...reached]).toEqual(expect.arrayContaining([0, 64, 128]));
  });

  it('goes on from what the journal vouches for when that is cut, or the file has grown or rotted', async () => {
    const left = await crash(3);
    const expected = readFileSync(join(folder, `plain.${format}`));
    const rotten = Buffer.from(left.partial);
    rotten[left.partial.length - 10] = (rotten[left.partial.length - 10] as number) ^ 1;
    const cases: readonly (readonly [string, Buffer, Buffer, number])[] = [
      ['no journal', left.partial, Buffer.alloc(0), 0],
      ['half a title', left.partial, left.journal.subarray(0, 40), 0],
      ['half a line', left.partial, left.journal.subarray(0, left.journal.length - 5), 128],
      ['a broken line', left.partial, Buffer.concat([left.journal, Buffer.from('{"rows":\n')]), 192],
      ['bytes beyond', Buffer.concat([left.partial, Buffer.alloc(999)]), left.journal, 192],
      ['a flipped bit', rotten, left.journal, 128],
      ['a flipped head', Buffer.concat([Buffer.from('XXXX'), left.partial.subarray(4)]), left.journal, 0],
    ];
    for (const [name, file, notes, from] of cases) {
      writeFileSync(partial, file);
      writeFileSync(journal, notes);
      expect([name, await resumed()]).toEqual([name, from]);
      expect([name, taken().equals(expected)]).toEqual([name, true]);
    }
  });

  it('is not taken for that of another sweep, nor begun anew in silence', async () => {
    await crash(1);
    const other = sweepToFile(path, listOf(231), {}, { ...here, resume: true });
    expect(await rejected(other)).toMatchObject({ message: expect.stringContaining('another sweep') });
    const anew = sweepToFile(path, design, {}, here);
    expect(await rejected(anew)).toMatchObject({ message: expect.stringContaining('unfinished') });
    expect(await resumed()).toBe(64);
  });

  it('that is finished already is left as it is', async () => {
    const before = readFileSync(path);
    const seen: number[] = [];
    const onProgress = ({ done }: { done: number }): number => seen.push(done);
    const report = await sweepToFile(path, design, {}, { ...here, resume: true, onProgress });
    expect(report.resumedAt).toBe(230);
    expect(seen).toEqual([230]);
    expect(readFileSync(path).equals(before)).toBe(true);
    rmSync(path);
  });

  it('that was finished but for its journal loses that, unless an unfinished file needs it', async () => {
    const left = await crash(1);
    expect(await resumed()).toBe(64);
    const again = (): Promise<unknown> => sweepToFile(path, design, {}, { ...here, resume: true });
    writeFileSync(journal, left.journal);
    writeFileSync(partial, left.partial);
    await again();
    expect([existsSync(partial), existsSync(journal)]).toEqual([true, true]);
    rmSync(partial);
    await again();
    expect(existsSync(journal)).toBe(false);
    rmSync(path);
  });

  it('goes on with another chunk size', async () => {
    await crash(2);
    await sweepToFile(path, design, {}, { ...here, chunkSize: 17, resume: true });
    expect(await readers[format](path)).toEqual(recordsOf(whole));
  });
});

describe('a file that cannot be written', () => {
  it('is refused before anything is computed', async () => {
    expect(await rejected(sweepToFile(join(folder, 'x.txt'), design, {}, here))).toMatchObject({
      message: expect.stringContaining('.parquet'),
    });
    const options = { ...here, format: 'xml' as never };
    expect(await rejected(sweepToFile(join(folder, 'x'), design, {}, options))).toMatchObject({
      code: 'invalid-input',
    });
    expect(await rejected(sweepToFile(join(folder, 'x.csv'), design, {}, { workers: 0 }))).toMatchObject({
      code: 'invalid-input',
    });
    expect(existsSync(join(folder, 'x.csv.partial'))).toBe(false);
  });
});
