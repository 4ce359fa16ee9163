import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { CHROMIUM, demo, give, pageInBrowser } from './browser.js';

const built = pageInBrowser({ catalogue: fileURLToPath(new URL('made-up-language.ts', import.meta.url)) });

/**
 * Texts that are not the page's own: the file's and the person's, the library's on reading, and sentences, tables and
 * chart labels that the page shares with the programs, which speak English.
 */
const NOT_OURS = [
  '.mark',
  '.drawing',
  '.file :is(h3, ul, tbody, .comment, .answer, .problem)',
  '#answers :is(table, li, div > p)',
  '#about-club',
  '.sheet .small',
].join(', ');

describe('the catalogue (skipped where Chromium is not installed)', () => {
  it.skipIf(CHROMIUM === undefined)(
    'holds every text of the page and of the sheet',
    async () => {
      const { page, troubles } = await built.open();
      const words = (): Promise<readonly string[]> =>
        page.evaluate((notOurs) => {
          const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
          const left: string[] = [];
          while (walker.nextNode()) {
            const parent = walker.currentNode.parentElement;
            if (parent === null || parent.closest(`script, ${notOurs}`) !== null) continue;
            const text = (walker.currentNode.textContent ?? '').replace(/\b(mph|yd|ft|rpm|mm|deg)\b/g, '');
            if (/[a-z]{2,}/i.test(text)) left.push(text);
          }
          return left;
        }, NOT_OURS);
      expect(await words()).toEqual([]);
      await give(page, demo('speed-ladder-demo'));
      expect(await words()).toEqual([]);
      expect(await page.textContent('h1')).toMatch(/[\u{10300}-\u{1031f}]/u);
      expect(await page.textContent('.sheet')).toMatch(/[\u{10300}-\u{1031f}]/u);
      expect(troubles).toEqual([]);
    },
    120_000,
  );
});
