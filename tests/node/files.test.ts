import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { tableFromIPC } from 'apache-arrow';
import { csvParse } from 'd3-dsv';
import { asyncBufferFromFile, parquetMetadataAsync, parquetReadObjects } from 'hyparquet';
import { describe, expect, it } from 'vitest';
import { loadBatchKernel } from '../../src/batch.js';
import { inspectSweepFile, type SweepFormat, sweepToFile } from '../../src/node/index.js';
import { type Design, rowStatuses, rowWarnings, type SweepResult, sweep } from '../../src/sweep/index.js';
import { metresPerSecond } from '../../src/units/index.js';
import { formats, leftovers } from './leftovers.js';
import { cheap, listOf, rejected, scratchFolder } from './support.js';

const folder = scratchFolder();
const design = listOf(230);
const whole = sweep(design, {}, { ...cheap, kernel: await loadBatchKernel() });
const here = { ...cheap, workers: 0 } as const;

type Row = Record<string, number | string | null>;

/** The rows of a result as records; a missing number is null. */
function recordsOf({ about, values, status, count }: SweepResult): Row[] {
  const orNull = (value: number): number | null => (Number.isNaN(value) ? null : value);
  return Array.from({ length: count }, (_, i) => ({
    ...Object.fromEntries(about.columns.map(({ column }, j) => [column, orNull(values[j]?.[i] as number)])),
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
          name,
          name === 'status' ? text : text === '' ? null : Number(text),
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

/** Columns of the sweep below, in every format. */
const COLUMNS = [
  'launch_ball_speed_m_per_s',
  'carry_m',
  'flight_apex_m',
  'flight_descent_angle_rad',
  'status',
];

describe.each(formats)('a sweep in a %s file', (format) => {
  const path = join(folder, `whole.${format}`);

  it('is read back digit for digit, what is missing as null', async () => {
    const report = await sweepToFile(path, design, {}, here);
    expect(report).toMatchObject({ path, format, rows: 230, resumedAt: 0, bytes: readFileSync(path).length });
    const rows = await readers[format](path);
    expect(rows).toEqual(recordsOf(whole));
    expect(Object.keys(rows[0] ?? {})).toEqual(COLUMNS);
    expect(rows[7]?.['carry_m']).toBeNull();
    expect(leftovers(path)).toEqual([]);
  });

  it('says which sweep it is', async () => {
    const found = await inspectSweepFile(path);
    expect(found).toMatchObject({ format, state: 'whole', about: whole.about });
    expect(found.warnings).toEqual({});
  });

  it('counts the rows that warn, as the sweep itself does', async () => {
    const slow: Design = {
      kind: 'list',
      rows: [18, 22, 26, 60, 65].map((speed) => ({ 'launch.ballSpeed': metresPerSecond(speed) })),
    };
    const counts = sweep(slow, {}, cheap).warningCounts;
    const byCode = Object.fromEntries(
      rowWarnings.map((code, k) => [code, counts[k] ?? 0] as const).filter(([, rows]) => rows > 0),
    );
    // The slow balls lie below the Reynolds numbers of the data, the fast ones do not.
    expect(Object.values(byCode).some((rows) => rows >= 2 && rows < 5)).toBe(true);
    const warned = join(folder, `warned.${format}`);
    expect((await sweepToFile(warned, slow, {}, here)).warnings).toEqual(byCode);
    expect((await inspectSweepFile(warned)).warnings).toEqual(byCode);
    const again = await sweepToFile(warned, slow, {}, { ...here, resume: true });
    expect(again).toMatchObject({ resumedAt: 5, warnings: byCode });
  });

  it('carries units, models, version, design and seed where the format keeps such things', async () => {
    const seeded = join(folder, `seeded.${format}`);
    const factors = [{ name: 'launch.ballSpeed', from: 40, to: 70 }] as never;
    const { about } = await sweepToFile(seeded, { kind: 'sobol', count: 8, seed: 42, factors }, {}, here);
    expect(about).toMatchObject({
      seed: 42,
      models: { aerodynamics: 'fitted-modern' },
      coefficients: { checksum: expect.stringMatching(/^[0-9a-f]{16}$/), drag: expect.any(Array) },
      design: { kind: 'sobol' },
    });
    const described = { name: 'launch.ballSpeed', unit: 'm/s', role: 'input' };
    expect(about.columns[0]).toEqual({ ...described, column: 'launch_ball_speed_m_per_s' });
    const text = JSON.stringify(about);
    if (format === 'csv') {
      const lines = readFileSync(seeded, 'utf8').split('\n');
      expect(lines[0]).toBe(`# fairflight.sweep: ${text}`);
      expect(lines[1]).toBe(COLUMNS.join(','));
      expect(lines.at(-2)).toMatch(/^# end, 8 rows, warnings \{.*\}, fairflight-crc32:[0-9a-f]{8}$/);
      // The one rule of comments: a line that begins with #; no other line holds one.
      expect(lines.slice(1, -2).join('')).not.toContain('#');
    } else if (format === 'parquet') {
      const { key_value_metadata, created_by, row_groups } = await parquetMetadataAsync(
        await asyncBufferFromFile(seeded),
      );
      expect(key_value_metadata).toEqual([
        { key: 'fairflight.sweep', value: text },
        { key: 'fairflight.warnings', value: expect.stringMatching(/^\{.*\}$/) },
        { key: 'fairflight.checksum', value: expect.stringMatching(/^fairflight-crc32:[0-9a-f]{8}$/) },
      ]);
      expect(created_by).toBe(`fairflight version ${about.version}`);
      const of = row_groups[0]?.columns[0]?.meta_data?.key_value_metadata ?? [];
      expect(Object.fromEntries(of.map(({ key, value }) => [key, value]))).toEqual(described);
    } else {
      const { schema } = tableFromIPC(readFileSync(seeded));
      expect(schema.metadata.get('fairflight.sweep')).toBe(text);
      expect(Object.fromEntries(schema.fields[0]?.metadata ?? [])).toEqual(described);
      expect(schema.fields[0]?.nullable).toBe(true);
    }
  });

  it('is told from one that is cut short, wherever it is cut', async () => {
    const bytes = readFileSync(path);
    const { length } = bytes;
    const cut = join(folder, `cut.${format}`);
    for (const place of [0, 1, 5, 9, 20, 500, length >> 1, length - 200, length - 9, length - 1]) {
      writeFileSync(cut, bytes.subarray(0, place));
      const { state } = await inspectSweepFile(cut);
      expect([place, state]).toEqual([place, expect.stringMatching(/^(cut-short|damaged)$/)]);
    }
  });

  it('is told from one in which any byte has changed', async () => {
    const bytes = readFileSync(path);
    const rotten = join(folder, `rotten.${format}`);
    for (let k = 0; k < 200; k++) {
      const place = Math.floor((k * bytes.length) / 200);
      const changed = Buffer.from(bytes);
      changed[place] = (changed[place] as number) ^ (1 << (k & 7));
      writeFileSync(rotten, changed);
      const { state } = await inspectSweepFile(rotten);
      expect([place, state]).toEqual([place, expect.stringMatching(/^(cut-short|damaged)$/)]);
    }
    for (const other of [Buffer.alloc(bytes.length), Buffer.concat([bytes, Buffer.alloc(1)])]) {
      writeFileSync(rotten, other);
      expect((await inspectSweepFile(rotten)).state).not.toBe('whole');
    }
    // Nor does a sweep take it for its own.
    const error = await rejected(sweepToFile(rotten, design, {}, { ...here, resume: true }));
    expect(error).toMatchObject({
      code: 'invalid-input',
      message: expect.stringContaining('overwrite: true'),
    });
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

  it('that is finished already is left as it is', async () => {
    const before = readFileSync(path);
    const seen: number[] = [];
    const onProgress = ({ done }: { done: number }): number => seen.push(done);
    const report = await sweepToFile(path, listOf(10), {}, { ...here, resume: true, onProgress });
    expect(report).toMatchObject({ resumedAt: 10, bytes: before.length });
    expect(seen).toEqual([10]);
    expect(readFileSync(path).equals(before)).toBe(true);
  });
});

it('a file of another format is not taken for whole', async () => {
  const wrong = join(folder, 'wrong.arrow');
  writeFileSync(wrong, readFileSync(join(folder, 'seeded.csv')));
  expect(await inspectSweepFile(wrong)).toEqual({ format: 'arrow', state: 'damaged' });
  writeFileSync(wrong, readFileSync(join(folder, 'seeded.parquet')));
  expect(await inspectSweepFile(wrong)).toEqual({ format: 'arrow', state: 'damaged' });
  expect(await inspectSweepFile(join(folder, 'seeded.csv'), 'parquet')).toMatchObject({ state: 'damaged' });
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
    expect(leftovers(join(folder, 'x.csv'))).toEqual([]);
    expect(existsSync(join(folder, 'x.csv'))).toBe(false);
  });
});
