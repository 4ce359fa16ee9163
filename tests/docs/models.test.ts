import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { renderModelsPage } from '../../docs/write/models-page.js';

it('docs/models.md is what `npm run docs:models` writes', () => {
  const page = readFileSync(fileURLToPath(new URL('../../docs/models.md', import.meta.url)), 'utf8');
  expect(page).toBe(renderModelsPage());
});
