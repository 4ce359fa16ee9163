import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type BuildOptions, build, type Plugin, transform } from 'esbuild';
import { noticesFor } from '../build-time/notices.js';

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));

/** Largest size of the page [bytes]. */
export const MOST_BYTES = 600_000;

/** How the page is built. */
export interface PageOptions {
  /** File that stands in for the catalogue, such as one in another language. */
  readonly catalogue?: string;
}

/** Builds the page: one HTML text that fetches nothing and may connect to nothing. */
export async function builtPage({ catalogue }: PageOptions = {}): Promise<string> {
  const { version } = JSON.parse(readFileSync(here('../../package.json'), 'utf8')) as { version: string };
  const swap = catalogue === undefined ? [] : [catalogueFrom(catalogue)];
  const common: BuildOptions = {
    bundle: true,
    minify: true,
    write: false,
    format: 'iife',
    target: 'es2022',
    legalComments: 'none',
    charset: 'utf8',
    define: { FAIRFLIGHT_VERSION: JSON.stringify(version) },
    loader: { '.css': 'text', '.csv': 'text' },
  };
  const worker = await bundled({ ...common, entryPoints: [here('worker.ts')], plugins: swap });
  const main = await bundled({
    ...common,
    entryPoints: [here('main.ts')],
    plugins: [...swap, textFrom('./worker.bundle', worker.code)],
  });
  // Nothing in the code may end the element it stands in.
  const script = main.code.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
  const styles = `${readFileSync(here('page.css'), 'utf8')}${readFileSync(here('sheet.css'), 'utf8')}`;
  const { code: style } = await transform(styles, { loader: 'css', minify: true });
  const notices = noticesFor([...worker.inputs, ...main.inputs]);
  const policy = [
    "default-src 'none'",
    `script-src '${hashOf(script)}'`,
    `style-src '${hashOf(style)}'`,
    'worker-src blob:',
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark">',
    '<link rel="icon" href="data:,"><title>fairflight</title>',
    `<style>${style}</style></head><body><script>${script}</script></body></html>`,
    `<!--\n${notices.replaceAll('--', '—')}-->\n`,
  ].join('\n');
}

function hashOf(text: string): string {
  return `sha256-${createHash('sha256').update(text).digest('base64')}`;
}

async function bundled(
  options: BuildOptions,
): Promise<{ readonly code: string; readonly inputs: readonly string[] }> {
  const { outputFiles, metafile } = await build({ ...options, write: false, metafile: true });
  const inputs = Object.values(metafile.outputs).flatMap((output) => Object.keys(output.inputs));
  return { code: outputFiles[0]?.text ?? '', inputs };
}

function textFrom(path: string, contents: string): Plugin {
  const filter = new RegExp(`^${path.replaceAll('.', '\\.')}$`);
  return {
    name: 'text',
    setup: ({ onResolve, onLoad }) => {
      onResolve({ filter }, () => ({ path, namespace: 'text' }));
      onLoad({ filter: /.*/, namespace: 'text' }, () => ({ contents, loader: 'text' }));
    },
  };
}

function catalogueFrom(file: string): Plugin {
  return {
    name: 'catalogue',
    setup: ({ onResolve }) => {
      onResolve({ filter: /catalogue\/messages\.js$/ }, ({ importer }) =>
        importer === file ? undefined : { path: file },
      );
    },
  };
}
