/**
 * Writes the page for people without a terminal: `npm run page`, then open out/page/fairflight.html by double click.
 * `npm run page -- --out DIR` writes it elsewhere.
 */

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { builtPage, MOST_BYTES } from './bundle.js';

const { values } = parseArgs({ options: { out: { type: 'string', default: 'out/page' } } });
const page = await builtPage();
const bytes = Buffer.byteLength(page);
if (bytes > MOST_BYTES) throw new Error(`the page has ${bytes} bytes, more than ${MOST_BYTES}`);
mkdirSync(values.out, { recursive: true });
const path = join(values.out, 'fairflight.html');
writeFileSync(path, page);
process.stdout.write(`Written: ${path}, ${Math.round(bytes / 1000)} kB of at most ${MOST_BYTES / 1000}\n`);
