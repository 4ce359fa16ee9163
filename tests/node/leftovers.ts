import { readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { SweepFormat } from '../../src/node/index.js';

export const formats: readonly SweepFormat[] = ['csv', 'parquet', 'arrow'];

/** What lies beside a path and is not the file itself. */
export function leftovers(path: string): string[] {
  const folder = dirname(path);
  return readdirSync(folder)
    .filter((name) => name.startsWith(`${basename(path)}.`))
    .map((name) => join(folder, name));
}
