import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { numbersIn, summaryOf } from '../../docs/write/doc-comments.js';
import { airLaws, coefficientLaws } from '../../docs/write/flight-chapter.js';
import { renderModelsPage } from '../../docs/write/models-page.js';

it('docs/models.md is what `npm run docs:models` writes', () => {
  const page = readFileSync(fileURLToPath(new URL('../../docs/models.md', import.meta.url)), 'utf8');
  expect(page).toBe(renderModelsPage());
});

/** Numbers of a text that are no whole numbers, or are written with commas: the constants of a law. */
function constantsIn(text: string): number[] {
  const found = text.match(/\d[\d,]*(?:\.\d+)?(?:e-?\d+)?/g) ?? [];
  return found.filter((figure) => /[.,e]\d/.test(figure)).map((figure) => Number(figure.replaceAll(',', '')));
}

// These formulas stand on the page as their comments have them; the other constants there are printed from the code.
it.each([...airLaws, ...Object.values(coefficientLaws)])(
  'src/%s: the formula in words of %s has the constants of the code',
  (file, name) => {
    const written = numbersIn(file);
    expect(constantsIn(summaryOf(file, name)).filter((constant) => !written.has(constant))).toEqual([]);
  },
);
