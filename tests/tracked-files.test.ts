import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

function trackedFiles(): string[] {
  return execFileSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' }).split('\0').filter(Boolean);
}

// A copy of the sources that is no checkout has no list of tracked files.
describe.skipIf(!existsSync(join(root, '.git')))('the files in the repository', () => {
  it('are all text: what is binary is built from sources that are here', () => {
    const files = trackedFiles();
    expect(files.length).toBeGreaterThan(100);
    const binary = files.filter((file) => {
      const path = join(root, file);
      return existsSync(path) && readFileSync(path).includes(0);
    });
    expect(binary).toEqual([]);
  });

  it('do not hold what the build generates', () => {
    const files = trackedFiles();
    expect(files).toContain('src/wasm/batch.ts');
    expect(files.filter((file) => file.includes('.generated.'))).toEqual([]);
  });
});
