import { execFile, execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { buildSync } from 'esbuild';

const run = promisify(execFile);
const here = fileURLToPath(new URL('.', import.meta.url));
const peers = fileURLToPath(new URL('../peers/', import.meta.url));
const root = fileURLToPath(new URL('../../', import.meta.url));
const built = join(root, 'out/bench');

/** The reference flights, as the programs are told of them. */
export const reference: string = join(peers, 'flights-reference.csv');

/** A program of the benchmark, and what it is called in progress messages. */
export interface Program {
  readonly label: string;
  readonly command: string;
  readonly args: readonly string[];
}

/** Something to install before the C++ or SciPy peers can run. */
export class MissingPeer extends Error {}

const APT = 'apt-get install g++ libboost-dev libsundials-dev libgsl-dev python3-scipy';
const LIBRARIES = [
  'sundials_cvode',
  'sundials_nvecserial',
  'sundials_sunmatrixdense',
  'sundials_sunlinsoldense',
  'sundials_sunnonlinsolfixedpoint',
  'gsl',
  'gslcblas',
  'm',
];

/** Runs a program to its end and returns what it printed. */
export async function output({ label, command, args }: Program): Promise<string> {
  try {
    return (await run(command, args, { maxBuffer: 1 << 26 })).stdout;
  } catch (error) {
    throw new Error(`${label} failed`, { cause: error });
  }
}

/** Bundles our own programs the way the package is built, so that no loader stands between them and the engine. */
export function buildOurs(): (name: 'ours' | 'flights' | 'tasks', ...args: readonly string[]) => Program {
  // The kernels are not in version control.
  execFileSync('npm', ['run', '--silent', 'generate'], { cwd: root, stdio: ['ignore', 2, 2] });
  const entry = (path: string): string => join(here, path);
  buildSync({
    entryPoints: {
      ours: entry('ours.ts'),
      flights: entry('flights.ts'),
      tasks: entry('tasks.ts'),
      'node-worker': entry('../../src/node/worker.ts'),
    },
    outdir: built,
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'es2022',
    logLevel: 'warning',
  });
  return (name, ...args) => ({
    label: `${name} ${args.at(-1) ?? ''}`,
    command: process.execPath,
    args: [join(built, `${name}.js`), ...args],
  });
}

/** Installs the JavaScript peers in their own folder where they are not there yet. */
export function installJavaScriptPeers(): void {
  const stamp = join(peers, 'node_modules/.package-lock.json');
  const lock = join(peers, 'package-lock.json');
  if (existsSync(stamp) && statSync(stamp).mtimeMs >= statSync(lock).mtimeMs) return;
  execFileSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: peers, stdio: ['ignore', 2, 2] });
}

/** The JavaScript peers, one library to a process. */
export function javaScriptPeers(rounds: number): Program[] {
  const libraries = ['odex 2', 'odex 3', 'dopri', 'numeric', 'ode45-cash-karp', 'mathjs', 'ode-rk4'];
  return libraries.map((library) => ({
    label: library,
    command: process.execPath,
    args: [join(peers, 'js_peers.mjs'), reference, String(rounds), library],
  }));
}

/** Builds the C++ peers. @throws MissingPeer when the compiler or a library is not there */
export async function cppPeers(rounds: number): Promise<{ program: Program; versions: string }> {
  mkdirSync(built, { recursive: true });
  const binary = join(built, 'cpp_peers');
  const flags = ['-O3', '-march=native', '-std=c++17', join(peers, 'cpp_peers.cpp'), '-o', binary];
  try {
    await run('g++', [...flags, ...LIBRARIES.map((name) => `-l${name}`)]);
  } catch (error) {
    const { code, stderr = '' } = error as { code?: unknown; stderr?: string };
    const reason =
      code === 'ENOENT' ? 'no g++' : (/fatal error: .*|cannot find -l\S+/.exec(stderr)?.[0] ?? stderr);
    throw new MissingPeer(`C++ peers not built (${reason}). On Debian: ${APT}`);
  }
  const version = { label: 'versions of the C++ peers', command: binary, args: ['--versions'] };
  return {
    program: { label: 'C++ peers', command: binary, args: [reference, String(rounds)] },
    versions: (await output(version)).trim(),
  };
}

/** Finds a Python with SciPy. @throws MissingPeer when there is none */
export async function scipyPeers(every: number): Promise<{ program: Program; versions: string }> {
  const ask =
    'import platform, scipy; print("Python", platform.python_version() + ", SciPy", scipy.__version__)';
  for (const command of ['python3', '/usr/bin/python3']) {
    const found = await run(command, ['-c', ask]).catch(() => undefined);
    if (found === undefined) continue;
    const args = [join(peers, 'scipy_peers.py'), reference, String(every)];
    return { program: { label: 'SciPy peers', command, args }, versions: found.stdout.trim() };
  }
  throw new MissingPeer(`SciPy peers not run (no python3 that can import scipy). On Debian: ${APT}`);
}
