/**
 * Writes the page for people without a terminal: `npm run page`, then open out/page/fairflight.html by double click.
 * `npm run page -- --out DIR` writes it elsewhere.
 */

import { runCommand, UsageError, writeFiles } from '../lib/command.js';
import { builtPage, MOST_BYTES } from './bundle.js';

await runCommand(
  {
    name: 'page',
    summary: 'builds one HTML file that reads shots and prints a sheet, without a network',
    usage: '[options]',
    options: { out: { type: 'string', value: 'DIR', help: 'folder for the page (default out/page)' } },
  },
  async (given) => {
    const page = await builtPage();
    const bytes = Buffer.byteLength(page);
    if (bytes > MOST_BYTES) throw new UsageError(`the page has ${bytes} bytes, more than ${MOST_BYTES}`);
    const [path = ''] = writeFiles(given.text('out') ?? 'out/page', { 'fairflight.html': page });
    process.stdout.write(
      `Written: ${path}, ${Math.round(bytes / 1000)} kB of at most ${MOST_BYTES / 1000}\n`,
    );
    return 0;
  },
);
