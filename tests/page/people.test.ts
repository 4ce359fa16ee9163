import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CHROMIUM, demo, give, pageInBrowser, ready } from './browser.js';
import { traced } from './traced.js';

const built = pageInBrowser();
const inBrowser = it.skipIf(CHROMIUM === undefined);
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  readonly id: string;
  readonly impact: string | null;
  readonly nodes: readonly { readonly html: string }[];
}

describe('the page for everyone (skipped where Chromium is not installed)', () => {
  inBrowser.each(['light', 'dark'] as const)(
    'has no fault that axe-core finds, %s',
    async (colorScheme) => {
      const { page } = await built.open({ colorScheme });
      await give(page, demo('face-map-demo'));
      await page.evaluate(() => {
        for (const details of document.querySelectorAll('details')) details.open = true;
      });
      await page.evaluate(AXE);
      const violations = await page.evaluate(async () => {
        const { axe } = globalThis as unknown as { axe: { run: () => Promise<{ violations: Violation[] }> } };
        return (await axe.run()).violations;
      });
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`)).toEqual([]);
      await page.context().close();
    },
    120_000,
  );

  inBrowser(
    'fits a phone: nothing wider than 390 px, no letter of a chart under 11 px',
    async () => {
      const { page } = await built.open({ viewport: { width: 390, height: 844 } });
      await give(page, demo('speed-log-demo'));
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
      const smallest = await page.evaluate(() => {
        const sizes = [...document.querySelectorAll<SVGTextElement>('.drawing svg text')].map((text) => {
          const { a = 1, b = 0 } = text.getScreenCTM() ?? {};
          return Number.parseFloat(getComputedStyle(text).fontSize) * Math.hypot(a, b);
        });
        return { count: sizes.length, least: Math.min(...sizes) };
      });
      expect(smallest.count).toBeGreaterThan(100);
      expect(smallest.least).toBeGreaterThanOrEqual(11);
      await page.context().close();
    },
    120_000,
  );

  inBrowser(
    'gives every chart a sentence and its figures, every table its headings',
    async () => {
      const { page } = await built.open();
      await give(page, demo('speed-log-demo'));
      const faults = await page.evaluate(() => [
        ...[...document.querySelectorAll('#answers figure')].flatMap((figure) => {
          const title = figure.querySelector('h4')?.textContent ?? 'a chart';
          const sentence = (figure.querySelector('figcaption p')?.textContent ?? '').length > 20;
          const rows = figure.querySelectorAll('details tbody tr').length > 0;
          return sentence && rows ? [] : [`${title}: ${sentence ? 'no figures' : 'no sentence'}`];
        }),
        ...[...document.querySelectorAll('table')].flatMap((table) =>
          table.querySelector('caption') !== null && table.querySelectorAll('th:not([scope])').length === 0
            ? []
            : ['a table without caption or scope'],
        ),
      ]);
      expect(faults).toEqual([]);
      const levels = await page.$$eval('h1, h2, h3, h4', (heads) =>
        heads.map(({ tagName }) => Number(tagName[1])),
      );
      expect(levels[0]).toBe(1);
      for (const [i, level] of levels.entries()) expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1);
      await page.context().close();
    },
    120_000,
  );

  inBrowser(
    'can be used with the keyboard alone',
    async () => {
      const { page } = await built.open();
      const reached: string[] = [];
      for (let i = 0; i < 8; i++) {
        await page.keyboard.press('Tab');
        reached.push(await page.evaluate(() => document.activeElement?.id ?? ''));
        if (reached.at(-1) === 'demo') break;
      }
      expect(reached).toEqual(expect.arrayContaining(['units-imperial', 'choose', 'demo']));
      await page.keyboard.press('Enter');
      await ready(page);
      await page.focus('#about-hand');
      await page.keyboard.press('ArrowDown');
      await ready(page);
      // The answers came anew; the focus is where it was.
      expect(await page.evaluate(() => document.activeElement?.id)).toBe('about-hand');
      await page.context().close();
    },
    120_000,
  );

  inBrowser(
    'stays awake over 10,000 shots, and stops when told to',
    async () => {
      const { page, troubles } = await built.open();
      const [, , head = '', ...rows] = readFileSync(demo('speed-ladder-demo'), 'utf8').trim().split('\n');
      const many = Array.from({ length: 10_000 }, (_, i) => rows[(7 * i) % rows.length]);
      const file = join(built.folder(), 'many.csv');
      writeFileSync(file, [head, ...many].join('\n'));
      const tasks = await traced(page, () => give(page, file));
      // Processor time, not time of the clock: what else the machine does is not the page's.
      expect(tasks.count).toBeGreaterThan(100);
      expect(tasks.longest).toBeLessThan(100);
      expect(await page.textContent('#answer-speeds')).toContain('of 10\u00a0000 shots are drawn');
      await page.selectOption('#about-turf', 'soft');
      await page.waitForSelector('#stop:visible');
      await page.click('#stop');
      expect(await page.isVisible('#again')).toBe(true);
      expect(await page.isVisible('#answer-speeds')).toBe(true);
      expect(troubles).toEqual([]);
      await page.context().close();
    },
    300_000,
  );
});
