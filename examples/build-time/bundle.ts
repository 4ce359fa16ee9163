/**
 * Bundles the programs for the package, into dist/bin: what they need beside the package itself is put in, with its
 * licence, so that who installs the package installs nothing more. Run from the repository root by `npm run build`.
 */

import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

const OUT = 'dist/bin';
const DATA = 'examples/data';

rmSync(OUT, { recursive: true, force: true });
const { metafile } = await build({
  entryPoints: ['examples/fairflight.ts'],
  outdir: OUT,
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  // The package finds its own entries by name, and they find what they depend on.
  external: ['fairflight', 'fairflight/*'],
  // What is bundled of CommonJS asks for the modules of Node by require.
  banner: {
    js: 'import { createRequire } from "node:module";const require = createRequire(import.meta.url);',
  },
  minifySyntax: true,
  minifyWhitespace: true,
  legalComments: 'none',
  metafile: true,
  logLevel: 'warning',
});

/** `node_modules/d3-array`, `node_modules/@colors/colors`, `node_modules/a/node_modules/b`. */
const PACKAGE = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/u;
const inside = Object.values(metafile.outputs).flatMap(({ inputs }) => Object.keys(inputs));
const bundled = [...new Set(inside.flatMap((path) => PACKAGE.exec(path) ?? []))].sort();
writeFileSync(join(OUT, 'LICENSES.txt'), bundled.map(notice).join('\n'));

/** Name, version and licence of a package, as its licence asks. @throws when it has none */
function notice(folder: string): string {
  const { name, version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Record<
    string,
    string
  >;
  const file = readdirSync(folder).find((each) => /^licen[cs]e/iu.test(each));
  if (file === undefined) throw new Error(`${folder} has no licence file`);
  return `${'='.repeat(72)}\n${name} ${version}\n\n${readFileSync(join(folder, file), 'utf8').trim()}\n`;
}

mkdirSync(join(OUT, 'data'));
for (const name of readdirSync(DATA)) {
  if (name.endsWith('.csv')) copyFileSync(join(DATA, name), join(OUT, 'data', name));
}
