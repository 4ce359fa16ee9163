import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { renderInputsPage } from '../../docs/write/inputs-page.js';

it('docs/inputs.md is what `npm run docs:inputs` writes', async () => {
  const page = readFileSync(fileURLToPath(new URL('../../docs/inputs.md', import.meta.url)), 'utf8');
  expect(page).toBe(await renderInputsPage());
});
