import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inspectSweepFile, sweepToFile } from '../../src/node/index.js';
import { formats, leftovers } from './leftovers.js';
import { cheap, listOf, rejected, scratchFolder } from './support.js';

const folder = scratchFolder();
/** Rows of a row group of a small file. */
const GROUP = 8192;
const ROWS = 3 * GROUP + 100;
const design = listOf(ROWS);
// No outputs, so that nothing is flown: what is written is at stake here.
const here = { ...cheap, outputs: [], workers: 0 } as const;

describe.each(formats)('an unfinished %s file', (format) => {
  const path = join(folder, `resumed.${format}`);
  const plain = join(folder, `plain.${format}`);
  const expected = async (): Promise<Buffer> => {
    if (!existsSync(plain)) await sweepToFile(plain, design, {}, here);
    return readFileSync(plain);
  };

  /** Stops after some chunks, as a crash would, and returns what lies on the disk. */
  async function crash(chunks: number): Promise<{ folder: string; rows: Buffer; journal: Buffer }> {
    const signal = { aborted: false };
    const onProgress = ({ done }: { done: number }): void => {
      signal.aborted = done >= GROUP * chunks;
    };
    const error = await rejected(
      sweepToFile(path, design, {}, { ...here, signal, onProgress, overwrite: true }),
    );
    expect(error.code).toBe('aborted');
    expect(existsSync(path)).toBe(false);
    const [left = ''] = leftovers(path);
    return {
      folder: left,
      rows: readFileSync(join(left, 'rows')),
      journal: readFileSync(join(left, 'journal')),
    };
  }

  /** Lays an unfinished file out, in the place of what is there. */
  function lay(rows: Uint8Array, journal: Uint8Array, name = 'aaaaaaaa'): void {
    const place = `${path}.${name}.partial`;
    mkdirSync(place, { recursive: true });
    writeFileSync(join(place, 'rows'), rows);
    writeFileSync(join(place, 'journal'), journal);
  }

  async function resumed(): Promise<number> {
    const { resumedAt } = await sweepToFile(path, design, {}, { ...here, resume: true });
    expect((await inspectSweepFile(path)).state).toBe('whole');
    expect(leftovers(path)).toEqual([]);
    return resumedAt;
  }

  /** Takes the finished file away and returns its bytes. */
  function taken(): Buffer {
    const bytes = readFileSync(path);
    rmSync(path);
    return bytes;
  }

  it('ends byte for byte as if nothing had happened, whatever became of it', async () => {
    const left = await crash(3);
    rmSync(left.folder, { recursive: true });
    const { length } = left.rows;
    const { journal } = left;
    const bytes = await expected();
    const flipped = (of: Buffer, at: number): Buffer => {
      const copy = Buffer.from(of);
      copy[at] = (copy[at] as number) ^ 4;
      return copy;
    };
    const lines = journal.toString('latin1').split('\n');
    const cases: readonly (readonly [string, Buffer, Buffer, number])[] = [
      ['nothing', left.rows, journal, 3],
      ['rows cut to nothing', Buffer.alloc(0), journal, 0],
      ['rows cut in the head', left.rows.subarray(0, 3), journal, 0],
      ['rows cut in the last chunk', left.rows.subarray(0, length - 64), journal, 2],
      ['rows cut in the first chunk', left.rows.subarray(0, length >> 2), journal, 0],
      ['rows are NULs', Buffer.alloc(length), journal, 0],
      ['NULs at the end', Buffer.concat([left.rows.subarray(0, -500), Buffer.alloc(500)]), journal, 2],
      ['bytes beyond', Buffer.concat([left.rows, Buffer.alloc(9e6, 7)]), journal, 3],
      ['a flipped bit in the last chunk', flipped(left.rows, length - 10), journal, 2],
      ['a flipped head', flipped(left.rows, 2), journal, 0],
      ['no journal', left.rows, Buffer.alloc(0), 0],
      ['journal of NULs', left.rows, Buffer.alloc(journal.length), 0],
      ['half a title', left.rows, journal.subarray(0, 40), 0],
      ['half a line', left.rows, journal.subarray(0, -5), 2],
      ['a broken line', left.rows, Buffer.concat([journal, Buffer.from('{"rows":\n')]), 3],
      ['odd lines', left.rows, Buffer.concat([journal, Buffer.from('null\n7\n[]\n{}\n\n')]), 3],
      ['a flipped bit in a line', left.rows, flipped(journal, journal.length - 30), 2],
      ['a flipped bit in the title', left.rows, flipped(journal, 60), 0],
      [
        'a line twice',
        left.rows,
        Buffer.from([...lines.slice(0, 3), ...lines.slice(2)].join('\n'), 'latin1'),
        2,
      ],
      ['lines exchanged', left.rows, Buffer.from([lines[0], lines[2], lines[1], ''].join('\n'), 'latin1'), 0],
    ];
    for (const [name, rows, notes, from] of cases) {
      lay(rows, notes);
      expect([name, await resumed()]).toEqual([name, from * GROUP]);
      expect([name, taken().equals(bytes)]).toEqual([name, true]);
    }
  });

  it('is not taken for that of another sweep, nor begun anew in silence', async () => {
    await crash(1);
    const other = sweepToFile(path, listOf(231), {}, { ...here, resume: true });
    expect(await rejected(other)).toMatchObject({ message: expect.stringContaining('another sweep') });
    const anew = sweepToFile(path, design, {}, here);
    expect(await rejected(anew)).toMatchObject({ message: expect.stringContaining('unfinished') });
    expect(await resumed()).toBe(GROUP);
    rmSync(path);
  });

  it('of several goes on with the longest, and none is left', async () => {
    const short = await crash(1);
    rmSync(short.folder, { recursive: true });
    const long = await crash(2);
    lay(short.rows, short.journal);
    lay(long.rows.subarray(0, 99), long.journal, 'ffffffff');
    expect(await resumed()).toBe(2 * GROUP);
    expect(taken().equals(await expected())).toBe(true);
  });

  it('that took its name but for the last step, its folder, changes nothing', async () => {
    const left = await crash(2);
    cpSync(left.folder, `${path}.bbbbbbbb.partial`, { recursive: true });
    cpSync(plain, path);
    expect(await resumed()).toBe(ROWS);
    expect(taken().equals(await expected())).toBe(true);
  });
});

describe('resuming', () => {
  const path = join(folder, 'model.csv');
  const own = (drag: number) => ({
    id: 'own',
    label: 'own',
    extrapolation: 'none',
    spinEntering: 'across' as const,
    spinDecay: 2e-5,
    source: { authors: 'invented', year: 2025, work: 'invented', confidence: 'assumption' as const },
    validity: { reynolds: { min: 1e4, max: 1e6 }, spinRatio: { min: 0, max: 1 } },
    // Only a narrow band differs.
    dragCoefficient: (re: number) => (re > 1e5 && re < 1.2e5 ? drag : 0.25),
    liftCoefficient: (_: number, s: number) => 0.2 * Math.sqrt(s),
  });

  it('refuses where a model of functions has other numbers behind the same id', async () => {
    const sweepWith = (drag: number) =>
      sweepToFile(path, listOf(10), { aerodynamics: own(drag) }, { ...here, resume: true });
    const { about } = await sweepWith(0.25);
    expect(about.setup).toMatchObject({ scene: { aerodynamics: 'own' } });
    const { reynolds, spinRatio, drag, lift } = about.coefficients;
    expect([reynolds.length, spinRatio.length, drag.length, lift[0]?.length]).toEqual([13, 11, 13, 11]);
    expect([drag[8]?.[1], lift[8]?.[3]]).toEqual([0.25, 0.2 * Math.sqrt(0.1)]);
    expect(await sweepWith(0.25)).toMatchObject({ resumedAt: 10 });
    expect(await rejected(sweepWith(0.251))).toMatchObject({
      code: 'invalid-input',
      message: expect.stringContaining('is not this sweep'),
    });
  });

  it('refuses where any number of head, ball, turf or air differs', async () => {
    const delivery = { clubSpeed: 45, attackAngle: 0, dynamicLoft: 0.2 } as never;
    const base = { fixed: {}, from: delivery, outputs: ['carry'], workers: 0 } as never;
    const one = { kind: 'list', rows: [{ 'delivery.clubPath': 0 }] } as never;
    const options = { ...(base as object), resume: true } as never;
    const target = join(folder, 'setup.csv');
    const { about } = await sweepToFile(target, one, {}, options);
    const { scene, clubhead } = about.setup as { scene: Record<string, object>; clubhead: object };
    const numbers = JSON.stringify({ scene, clubhead }).match(/:-?[\d.]+/g) ?? [];
    expect(numbers.length).toBeGreaterThan(25);
    const { ball, turf, air } = scene as {
      ball: { mass: number };
      turf: { bounce: object };
      air: { density: number };
    };
    const others = [
      { scene: { ball: { ...ball, mass: ball.mass * 1.0001 } } },
      { scene: { turf: { ...turf, bounce: { ...turf.bounce, restitution: 0.31 } } } },
      { scene: { air: { ...air, density: air.density * 1.0001 } } },
      { options: { clubhead: { ...clubhead, mass: 0.2001 } } },
    ];
    for (const { scene: around = {}, options: more = {} } of others) {
      const call = sweepToFile(target, one, around as never, { ...(options as object), ...more } as never);
      expect(await rejected(call)).toMatchObject({ message: expect.stringContaining('is not this sweep') });
    }
  });
});
