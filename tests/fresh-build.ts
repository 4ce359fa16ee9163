import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** When each file in a folder, or below it, was last written; none where there is no folder. */
export function timesBelow(folder: string, of: (name: string) => boolean = () => true): number[] {
  const path = join(root, folder);
  if (!existsSync(path)) return [];
  return readdirSync(path, { recursive: true, encoding: 'utf8' })
    .filter(of)
    .map((name) => statSync(join(path, name)))
    .filter((entry) => entry.isFile())
    .map((entry) => entry.mtimeMs);
}

/** Runs a script of package.json. */
export function runScript(name: string): void {
  const { status, stdout, stderr } = spawnSync('npm', ['run', name], { cwd: root, encoding: 'utf8' });
  if (status !== 0) throw new Error(`npm run ${name} failed:\n${`${stdout}\n${stderr}`.slice(-3000)}`);
}

/**
 * Builds dist/ when a source is newer, or bundles the programs alone when only they are, so that the tests of the built
 * package never run on yesterday's code.
 */
export default function setup(): void {
  const newestSource = Math.max(statSync(join(root, 'package.json')).mtimeMs, ...timesBelow('src'));
  const programs = timesBelow('dist/bin');
  const oldestOutput = Math.min(...timesBelow('dist'));
  if (programs.length === 0 || oldestOutput < newestSource) runScript('build');
  else if (Math.min(...programs) < Math.max(...timesBelow('examples'))) runScript('bundle');
}
