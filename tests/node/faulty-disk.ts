import { open } from 'node:fs/promises';
import { devNull } from 'node:os';

/** Steps of an open file that a disk can refuse. */
export type DiskStep = 'write' | 'datasync' | 'sync' | 'truncate' | 'read';

/** Steps to draw from, with how often a file of five chunks takes each, and codes. */
export const breakable: {
  readonly steps: readonly (readonly [step: DiskStep, calls: number])[];
  readonly codes: readonly string[];
} = {
  steps: [
    ['write', 13],
    ['datasync', 6],
    ['sync', 1],
    ['truncate', 1],
  ],
  codes: ['ENOSPC', 'EROFS', 'EIO', 'EDQUOT'],
};

const WORDS: Readonly<Record<string, string>> = {
  ENOSPC: 'no space left on device',
  EROFS: 'read-only file system',
  EIO: 'i/o error',
  EDQUOT: 'disk quota exceeded',
};

type Step = (this: unknown, ...given: unknown[]) => Promise<unknown>;

/** Puts another step in the place of that of every open file, in this process; returns what puts it back. */
async function exchange(step: DiskStep, make: (sound: Step) => Step): Promise<() => void> {
  const probe = await open(devNull);
  const handles = Object.getPrototypeOf(probe) as Record<string, Step>;
  await probe.close();
  const sound = handles[step] as Step;
  handles[step] = make(sound);
  return () => {
    handles[step] = sound;
  };
}

/**
 * Makes a step of every open file fail from one call on, as the system would. The last write before it ends half done, as
 * on a disk that fills up.
 * @returns what mends the disk
 */
export function breakDisk(step: DiskStep, calls: number, code: string): Promise<() => void> {
  let left = calls;
  return exchange(
    step,
    (sound) =>
      async function broken(...given) {
        left--;
        if (step === 'write' && left === 0) {
          const [bytes, from, length, position] = given as [Uint8Array, number, number, number];
          return sound.call(this, bytes, from, Math.ceil(length / 2), position);
        }
        if (left >= 0) return sound.apply(this, given);
        throw Object.assign(new Error(`${code}: ${WORDS[code]}, ${step}`), { code, syscall: step });
      },
  );
}

/** Makes one call of a step wait, so that its writer stands still there; all other calls go on. */
export async function holdDisk(
  step: DiskStep,
  call: number,
): Promise<{ readonly reached: Promise<void>; readonly release: () => void }> {
  let calls = 0;
  let arrive = (): void => undefined;
  let go = (): void => undefined;
  const reached = new Promise<void>((resolve) => {
    arrive = resolve;
  });
  const gate = new Promise<void>((resolve) => {
    go = resolve;
  });
  const mend = await exchange(
    step,
    (sound) =>
      async function held(...given) {
        if (calls++ === call) {
          arrive();
          await gate;
        }
        return sound.apply(this, given);
      },
  );
  const release = (): void => {
    mend();
    go();
  };
  return { reached, release };
}
