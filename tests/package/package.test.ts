import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import vm from 'node:vm';
import { build, transform } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describePrograms } from './programs.js';

/** The packed tarball, installed in an empty folder as a user would, with run-time dependencies taken from here. */

const root = fileURLToPath(new URL('../..', import.meta.url));
const consumer = fileURLToPath(new URL('consumer', import.meta.url));
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
  dependencies: Record<string, string>;
  exports: Record<string, unknown>;
};
const CHROMIUM = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(
  existsSync,
);

interface Distances {
  readonly carry: number;
  readonly total: number;
}

let folder = '';
let packedBytes = Number.NaN;
let fromNode: Distances;

function run(command: string, ...args: string[]): string {
  return execFileSync(command, args, { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
}

function runNode(name: string, code: string): unknown {
  writeFileSync(join(folder, name), code);
  return JSON.parse(run(process.execPath, name));
}

/** The one block of the README in this language. */
function readme(language: string): string {
  const blocks = readFileSync(join(root, 'README.md'), 'utf8').matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm);
  const found = [...blocks].filter(([, name]) => name === language);
  expect(found.length).toBe(1);
  return found[0]?.[2] ?? '';
}

function expectSame(actual: Distances): void {
  // Another JavaScript engine may round a transcendental function differently in the last bit.
  expect(actual.carry).toBeCloseTo(fromNode.carry, 9);
  expect(actual.total).toBeCloseTo(fromNode.total, 9);
}

async function bundleForBrowser(): Promise<string> {
  const entry = join(folder, 'bundle-entry.js');
  writeFileSync(
    entry,
    `import * as fairflight from 'fairflight'; import { drive } from './drive.mjs';
     export const result = JSON.stringify(drive(fairflight));`,
  );
  const { outputFiles, warnings } = await build({
    entryPoints: [entry],
    absWorkingDir: folder,
    bundle: true,
    format: 'iife',
    globalName: 'bundle',
    minify: true,
    platform: 'browser',
    write: false,
  });
  expect(warnings).toEqual([]);
  return outputFiles[0]?.text ?? '';
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'fairflight-package-'));
  const [{ filename, size }] = JSON.parse(
    execFileSync('npm', ['pack', '--ignore-scripts', '--json', '--pack-destination', folder], {
      cwd: root,
      encoding: 'utf8',
    }),
  ) as [{ filename: string; size: number }];
  packedBytes = size;
  writeFileSync(join(folder, 'package.json'), '{"private":true}');
  const dependencies = Object.keys(manifest.dependencies).map((name) => join(root, 'node_modules', name));
  run(
    'npm',
    'install',
    '--offline',
    '--ignore-scripts',
    '--no-audit',
    '--no-fund',
    `./${filename}`,
    ...dependencies,
  );
  copyFileSync(join(consumer, 'drive.js'), join(folder, 'drive.mjs'));
  for (const name of ['types.mts', 'types.cts']) copyFileSync(join(consumer, name), join(folder, name));
  writeFileSync(join(folder, 'readme.mts'), readme('ts'));
  fromNode = runNode(
    'import.mjs',
    `import * as fairflight from 'fairflight'; import { drive } from './drive.mjs';
     console.log(JSON.stringify(drive(fairflight)));`,
  ) as Distances;
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('the packed package', () => {
  it('holds the build and the papers, and no sources', () => {
    const packed = run('tar', '-tzf', 'fairflight-0.1.0.tgz').trim().split('\n');
    const outside = packed.filter(
      (name) => !/^package\/(dist\/|package\.json|README\.md|LICENSE|CHANGELOG\.md)/.test(name),
    );
    expect(outside).toEqual([]);
    expect(packed).toEqual(
      expect.arrayContaining(['package/LICENSE', 'package/CHANGELOG.md', 'package/README.md']),
    );
  });

  it('is small, and asks for three packages', () => {
    expect(packedBytes).toBeLessThan(900_000);
    expect(Object.keys(manifest.dependencies)).toEqual(['odex', 'pure-rand', 'zod']);
  });

  it('plays a shot when imported', () => {
    // The tour average this launch belongs to carries 275 yd (from memory); validation proper is in tests/published.
    expect(fromNode.carry).toBeGreaterThan(250);
    expect(fromNode.carry).toBeLessThan(300);
    expect(fromNode.total).toBeGreaterThan(fromNode.carry);
  });

  it('plays the same shot when required', () => {
    const required = runNode(
      'require.cjs',
      `import('./drive.mjs').then(({ drive }) => console.log(JSON.stringify(drive(require('fairflight')))));`,
    );
    expect(required).toEqual(fromNode);
  });

  it('prints what the README says its example prints', async () => {
    const { code } = await transform(readme('ts'), { loader: 'ts', format: 'esm' });
    writeFileSync(join(folder, 'readme.mjs'), code);
    expect(run(process.execPath, 'readme.mjs')).toBe(readme('text'));
    expect(readme('ts').trim().split('\n').length).toBeLessThanOrEqual(15);
  });

  it('has every entry in both formats, with the same names', () => {
    const entries = Object.keys(manifest.exports)
      .filter((entry) => entry !== './package.json')
      .map((entry) => entry.replace('.', 'fairflight'));
    const names = runNode(
      'names.cjs',
      `const entries = ${JSON.stringify(entries)};
       Promise.all(entries.map(async (entry) => [
         Object.keys(await import(entry)).sort(), Object.keys(require(entry)).sort(),
       ])).then((pairs) => console.log(JSON.stringify(pairs)));`,
    ) as [string[], string[]][];
    for (const [imported, required] of names) {
      expect(imported.length).toBeGreaterThan(0);
      // Node adds these two when it imports a CommonJS module; an ES module has neither.
      expect(required.filter((name) => name !== '__esModule' && name !== 'default')).toEqual(imported);
    }
  });

  it('knows its errors across the two formats', () => {
    const seen = runNode(
      'errors.cjs',
      `const required = require('fairflight');
       import('fairflight').then((imported) => {
         const error = new imported.FairflightError('invalid-input', 'no');
         console.log(JSON.stringify([error instanceof required.FairflightError, required.isFairflightError(error)]));
       });`,
    );
    expect(seen).toEqual([false, true]);
  });

  it('has types that compile in both module systems, libraries checked, and refuse wrong units', () => {
    const options = { noEmit: true, strict: true, exactOptionalPropertyTypes: true, module: 'nodenext' };
    const config = {
      compilerOptions: { ...options, target: 'es2022', lib: ['es2022'], types: [], skipLibCheck: false },
      files: ['types.mts', 'types.cts', 'readme.mts', 'console.d.ts'],
    };
    writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(config));
    // The only thing of its surroundings that the README's example uses.
    writeFileSync(join(folder, 'console.d.ts'), 'declare const console: { log(line: string): void };');
    const compiler = join(root, 'node_modules/typescript/bin/tsc');
    const compiled = spawnSync(process.execPath, [compiler], { cwd: folder, encoding: 'utf8' });
    expect(compiled.stdout + compiled.stderr).toBe('');
    expect(compiled.status).toBe(0);
  });

  it('bundles for the browser and runs with nothing but the language', async () => {
    const context = vm.createContext({});
    const code = await bundleForBrowser();
    expect(code).not.toMatch(/\brequire\(|\bprocess\./);
    expectSame(JSON.parse(String(vm.runInContext(`${code};bundle.result`, context))) as Distances);
  });

  it.skipIf(CHROMIUM === undefined)(
    'runs in a real browser (skipped where Chromium is not installed)',
    async () => {
      const page = join(folder, 'page.html');
      // The bundle is minified and holds no closing tag; the page says what it computed in its body.
      writeFileSync(
        page,
        `<!doctype html><meta charset="utf-8"><body><script>${await bundleForBrowser()};document.body.textContent = bundle.result;</script>`,
      );
      const dom = run(
        CHROMIUM ?? '',
        ...['--headless', '--no-sandbox', '--disable-gpu', `--user-data-dir=${join(folder, 'browser')}`],
        ...['--dump-dom', `file://${page}`],
      );
      expectSame(JSON.parse(/<body>(\{.*?\})<\/body>/.exec(dom)?.[1] ?? 'null') as Distances);
    },
  );

  describePrograms(() => folder);
});
