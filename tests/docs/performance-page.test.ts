import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { page } from '../../docs/write/performance-page.js';

/** What a page says apart from what was measured: no tables, and nothing about the machine. */
function prose(text: string): string[] {
  return text
    .replace(/^## Machine\n[^#]*/m, '## Machine\n')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('|'));
}

it('docs/performance.md says what the benchmark prints, and nothing added by hand', () => {
  const path = fileURLToPath(new URL('../../docs/performance.md', import.meta.url));
  const printed = page({ machine: [], rows: [], tasks: [], counts: [], cores: [] });
  expect(prose(readFileSync(path, 'utf8'))).toEqual(prose(printed));
});
