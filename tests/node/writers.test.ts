import { existsSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { type FileOptions, inspectSweepFile, sweepToFile } from '../../src/node/index.js';
import type { Design } from '../../src/sweep/index.js';
import { holdDisk } from './faulty-disk.js';
import { formats, leftovers } from './leftovers.js';
import { cheap, rejected, scratchFolder } from './support.js';

const folder = scratchFolder();

// No outputs, so that nothing is flown: what is written is at stake here.
const light = { ...cheap, outputs: [], workers: 0 } as const;

function study(seed: number): Design {
  const factors = [{ name: 'launch.ballSpeed', from: 40, to: 70 }] as never;
  return { kind: 'sobol', count: 5 * 8192, seed, factors };
}

describe.each(formats)('two writers of one %s file', (format) => {
  const path = join(folder, `both.${format}`);
  const alone = async (seed: number): Promise<Buffer> => {
    const plain = join(folder, `seed-${seed}.${format}`);
    if (!existsSync(plain)) await sweepToFile(plain, study(seed), {}, light);
    return readFileSync(plain);
  };
  const write = (seed: number, options: FileOptions = {}) =>
    sweepToFile(path, study(seed), {}, { ...light, ...options });

  afterEach(() => {
    for (const left of [path, ...leftovers(path)]) rmSync(left, { recursive: true, force: true });
  });

  /** Starts a writer that stands still after a chunk; what it returns lets it go on, to its end. */
  async function standing(seed: number, onProgress = (): void => undefined): Promise<() => Promise<unknown>> {
    const { reached, release } = await holdDisk('datasync', 2);
    const outcome = write(seed, { onProgress }).catch((error: unknown) => error);
    await Promise.race([reached, outcome]);
    return () => {
      release();
      return outcome;
    };
  }

  /** What is there is the whole file of one of the studies, and nothing else is left. */
  async function requireOneWhole(...seeds: number[]): Promise<void> {
    expect((await inspectSweepFile(path)).state).toBe('whole');
    const bytes = readFileSync(path);
    const which = await Promise.all(seeds.map(async (seed) => bytes.equals(await alone(seed))));
    expect(which).toContain(true);
    expect(leftovers(path)).toEqual([]);
    rmSync(path);
  }

  it('at once, each told to overwrite: each is whole or is refused in words', async () => {
    for (let round = 0; round < 3; round++) {
      const outcomes = await Promise.allSettled([
        write(1, { overwrite: true }),
        write(2, { overwrite: true }),
      ]);
      const refused = outcomes.filter(({ status }) => status === 'rejected');
      for (const outcome of refused) {
        expect(outcome).toMatchObject({ reason: { code: 'system' } });
      }
      expect(refused.length).toBeLessThan(2);
      await requireOneWhole(1, 2);
    }
  });

  it('at once, neither told to overwrite: one alone takes the name', async () => {
    const outcomes = await Promise.allSettled([write(1), write(2)]);
    const refused = outcomes.filter(({ status }) => status === 'rejected');
    expect(refused).toHaveLength(1);
    expect(refused[0]).toMatchObject({ reason: { field: 'path' } });
    expect((await inspectSweepFile(path)).state).toBe('whole');
    const winner = outcomes[0]?.status === 'fulfilled' ? 1 : 2;
    expect(readFileSync(path).equals(await alone(winner))).toBe(true);
    // The other may still replace it when told so.
    await write(3 - winner, { overwrite: true, resume: true });
    await requireOneWhole(3 - winner);
  });

  it.each([{ overwrite: true }, { resume: true }])(
    'the second %o: the first is told and stops',
    async (how) => {
      const seed = 'resume' in how ? 1 : 2;
      let chunks = 0;
      const goOn = await standing(1, () => {
        chunks++;
      });
      const second = await write(seed, how);
      const before = readFileSync(path);
      expect(await goOn()).toMatchObject({
        code: 'system',
        field: 'path',
        message: expect.stringContaining('another process'),
      });
      // It stops at the next chunk, not at the end.
      expect(chunks).toBe(3);
      // What the first still had in hand changes nothing.
      expect(readFileSync(path).equals(before)).toBe(true);
      expect(second.rows).toBe(5 * 8192);
      await requireOneWhole(seed);
    },
  );

  it('the second with no more said is refused, and the first goes on', async () => {
    const goOn = await standing(1);
    const error = await rejected(write(1));
    expect(error).toMatchObject({ message: expect.stringContaining('unfinished') });
    expect(await goOn()).toMatchObject({ rows: 5 * 8192 });
    await requireOneWhole(1);
  });

  it('the second is written while the first has the name: neither is mixed', async () => {
    const goOn = await standing(1);
    // As if it had begun at the same moment, so that neither saw the other.
    const [left = ''] = leftovers(path);
    renameSync(left, `${left}.hidden`);
    const second = await write(2);
    renameSync(`${left}.hidden`, left);
    expect(await goOn()).toMatchObject({
      code: 'system',
      message: expect.stringContaining('in the meantime'),
    });
    expect(readFileSync(path).equals(await alone(2))).toBe(true);
    expect(second.rows).toBe(5 * 8192);
    await write(1, { overwrite: true, resume: true });
    await requireOneWhole(1);
  });

  it('that resume what a crash left: one goes on with it', async () => {
    const signal = { aborted: false };
    const onProgress = (): void => {
      signal.aborted = true;
    };
    await rejected(write(1, { signal, onProgress }));
    const outcomes = await Promise.allSettled([write(1, { resume: true }), write(1, { resume: true })]);
    for (const outcome of outcomes) {
      if (outcome.status === 'rejected') expect(outcome.reason).toMatchObject({ field: 'path' });
    }
    expect(outcomes.some(({ status }) => status === 'fulfilled')).toBe(true);
    await requireOneWhole(1);
  });
});
