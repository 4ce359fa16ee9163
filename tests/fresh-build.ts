import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

function timesBelow(folder: string): number[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => statSync(join(folder, name)))
    .filter((entry) => entry.isFile())
    .map((entry) => entry.mtimeMs);
}

/** Builds dist/ when a source is newer, so that the tests of the built package never run on yesterday's code. */
export default function setup(): void {
  const newestSource = Math.max(
    statSync(join(root, 'package.json')).mtimeMs,
    ...timesBelow(join(root, 'src')),
  );
  const oldestOutput = Math.min(...timesBelow(join(root, 'dist')));
  if (oldestOutput !== Infinity && oldestOutput >= newestSource) return;
  const built = spawnSync('npm', ['run', 'build'], { cwd: root, encoding: 'utf8' });
  if (built.status !== 0)
    throw new Error(`npm run build failed:\n${`${built.stdout}\n${built.stderr}`.slice(-3000)}`);
}
