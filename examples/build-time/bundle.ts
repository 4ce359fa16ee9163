/**
 * Bundles the programs for the package, into dist/bin: what they need beside the package itself is put in, with its
 * licence, so that who installs the package installs nothing more. Run from the repository root by `npm run build`.
 */

import { copyFileSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { noticesFor } from './notices.js';

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

const inside = Object.values(metafile.outputs).flatMap(({ inputs }) => Object.keys(inputs));
writeFileSync(join(OUT, 'LICENSES.txt'), noticesFor(inside));

mkdirSync(join(OUT, 'data'));
for (const name of readdirSync(DATA)) {
  if (name.endsWith('.csv')) copyFileSync(join(DATA, name), join(OUT, 'data', name));
}
