import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { UsageError, whyNot } from './command.js';

/** Makes a folder when missing. @throws UsageError when that cannot be */
export function makeFolder(folder: string): void {
  intoFolder(folder, () => mkdirSync(folder, { recursive: true }));
}

/**
 * Writes files of one name and several endings into a folder, which is made when missing. Where one of them is there
 * already, all get the next number, unless they are to be replaced.
 * @returns their paths
 * @throws UsageError when the system refuses
 */
export function writeNamed(
  folder: string,
  name: string,
  contents: Readonly<Record<string, string>>,
  replace: boolean,
): readonly string[] {
  makeFolder(folder);
  for (let number = 1; ; number++) {
    const stem = join(folder, number === 1 ? name : `${name}-${number}`);
    const files = Object.entries(contents).map(([ending, content]) => ({ path: stem + ending, content }));
    if (!replace && files.some(({ path }) => existsSync(path))) continue;
    return intoFolder(folder, () =>
      files.map(({ path, content }) => {
        // Another program may have taken the name since: then it is refused, not overwritten.
        writeFileSync(path, content, { flag: replace ? 'w' : 'wx' });
        return path;
      }),
    );
  }
}

function intoFolder<T>(folder: string, write: () => T): T {
  try {
    return write();
  } catch (error) {
    throw new UsageError(`cannot write to ${folder}: ${whyNot(error)}`);
  }
}
