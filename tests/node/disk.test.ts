import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inspectSweepFile, sweepToFile } from '../../src/node/index.js';
import { breakDisk, type DiskStep } from './faulty-disk.js';
import { formats, leftovers } from './leftovers.js';
import { cheap, listOf, rejected, scratchFolder } from './support.js';

const folder = scratchFolder();
const design = listOf(3 * 8192);
// No outputs, so that nothing is flown: what is written is at stake here.
const here = { ...cheap, outputs: [], workers: 0 } as const;

describe.each(formats)('a disk that fails under a %s file', (format) => {
  const path = join(folder, `broken.${format}`);
  const plain = join(folder, `plain.${format}`);
  const cases: readonly (readonly [DiskStep, number, string, string])[] = [
    ['write', 0, 'EROFS', 'writable'],
    ['write', 1, 'ENOSPC', 'free some space'],
    ['write', 3, 'ENOSPC', 'free some space'],
    ['write', 7, 'EIO', 'see to the disk'],
    ['write', 8, 'EDQUOT', 'quota'],
    ['datasync', 2, 'EIO', 'see to the disk'],
    ['truncate', 0, 'ENOSPC', 'free some space'],
    ['sync', 0, 'EIO', 'see to the disk'],
  ];

  it.each(cases)('at %s number %i with %s ends in a typed error, and is resumed', async (...given) => {
    const [step, calls, code, remedy] = given;
    if (!existsSync(plain)) await sweepToFile(plain, design, {}, here);
    const mend = await breakDisk(step, calls, code);
    const error = await rejected(sweepToFile(path, design, {}, here)).finally(mend);
    expect(error).toMatchObject({ code: 'system', field: 'path' });
    for (const part of [path, code, remedy, 'resume: true']) expect(error.message).toContain(part);
    expect(existsSync(path)).toBe(false);
    await sweepToFile(path, design, {}, { ...here, resume: true });
    expect(readFileSync(path).equals(readFileSync(plain))).toBe(true);
    expect(leftovers(path)).toEqual([]);
    rmSync(path);
  });

  it('while it is read is a typed error, and no file is called whole', async () => {
    const mend = await breakDisk('read', 0, 'EIO');
    const error = await rejected(inspectSweepFile(plain)).finally(mend);
    expect(error).toMatchObject({
      code: 'invalid-input',
      field: 'path',
      message: expect.stringContaining('EIO'),
    });
  });
});

describe('a path', () => {
  const seen: number[] = [];
  const tried = (path: string, more: object = {}) =>
    rejected(sweepToFile(path, design, {}, { ...here, ...more, onProgress: ({ done }) => seen.push(done) }));

  it('where nothing can be written is refused before a row is computed', async () => {
    const taken = join(folder, 'taken.csv');
    mkdirSync(taken);
    const file = join(folder, 'file');
    writeFileSync(file, '');
    const closed = join(folder, 'closed');
    mkdirSync(closed);
    chmodSync(closed, 0o500);
    const dangling = join(folder, 'nowhere', 'x.csv');
    const long = join(folder, `${'x'.repeat(250)}.csv`);
    // Whoever may write everywhere is not kept out by permissions.
    const barred = process.getuid?.() === 0 ? [] : [join(closed, 'x.csv')];
    for (const path of [
      taken,
      dangling,
      join(file, 'x.csv'),
      long,
      'x\0.csv',
      '/dev/null/x.csv',
      ...barred,
    ]) {
      for (const more of [{}, { overwrite: true }, { resume: true }]) {
        expect(await tried(path, more)).toMatchObject({ code: 'invalid-input', field: 'path' });
      }
    }
    expect(seen).toEqual([]);
    expect(leftovers(taken)).toEqual([]);
  });

  it('that is a link to nothing is not written through, nor is a row computed', async () => {
    const link = join(folder, 'link.csv');
    symlinkSync(join(folder, 'aim.csv'), link);
    expect(await tried(link)).toMatchObject({ field: 'path' });
    expect(existsSync(join(folder, 'aim.csv'))).toBe(false);
    expect(seen).toEqual([]);
  });
});
