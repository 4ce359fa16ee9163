import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { MOST_BYTES } from '../../examples/page/bundle.js';
import { CHROMIUM, demo, give, pageInBrowser, printedPages, questions, ready } from './browser.js';

const built = pageInBrowser();
const inBrowser = it.skipIf(CHROMIUM === undefined);

const sentences = (page: Page): Promise<string[]> =>
  page.$$eval('.sheet .said p', (said) => said.map((each) => each.textContent ?? ''));

describe('the file', () => {
  it('is one file of less than 600 kB that may connect to nothing', () => {
    const html = built.html();
    expect(Buffer.byteLength(html)).toBeLessThanOrEqual(MOST_BYTES);
    expect(html).toContain("default-src 'none'");
    const [, policy = ''] = /Content-Security-Policy" content="([^"]*)"/.exec(html) ?? [];
    expect(policy).not.toMatch(/connect-src|unsafe|https?:|\*/);
    // What is left when the script and the licences of what was bundled are taken away.
    expect(html.replace(/<script>[\s\S]*<\/script>/, '').replace(/<!--[\s\S]*-->/, '')).not.toMatch(
      /https?:|<(iframe|object|embed|base)\b/i,
    );
  });
});

describe('the page in a browser (skipped where Chromium is not installed)', () => {
  inBrowser.each([
    ['speed-ladder-demo', 'What did each step of speed bring?'],
    ['face-map-demo', 'Where on the face?'],
    ['speed-log-demo', 'Did the weeks of practice work?'],
    ['bag-demo', 'How far elsewhere?'],
  ])(
    'answers %s on one printed side, silently and without a request',
    async (name, question) => {
      const { page, troubles } = await built.open();
      // As dropped: the browser hands the file over in a drop event.
      const text = readFileSync(demo(name), 'utf8');
      const data = await page.evaluateHandle(
        ([content, title]) => {
          const transfer = new DataTransfer();
          transfer.items.add(new File([content ?? ''], `${title}.csv`, { type: 'text/csv' }));
          return transfer;
        },
        [text, name],
      );
      await page.dispatchEvent('body', 'drop', { dataTransfer: data });
      await ready(page);
      expect(await questions(page)).toContain(question);
      expect(await page.textContent('#files')).toContain('INVENTED DATA');
      expect(await sentences(page)).toHaveLength(3);
      expect(await page.textContent('main')).not.toMatch(/NaN|undefined|Infinity|\[object/);
      await page.fill('#about-player', 'A. Player');
      await page.fill('#about-note', 'Tee it a little lower.\nThree sessions a week.');
      await page.waitForTimeout(400);
      expect(await printedPages(page, 'A4')).toBe(1);
      expect(await printedPages(page, 'Letter')).toBe(1);
      expect(troubles).toEqual([]);
      await page.context().close();
    },
    180_000,
  );

  inBrowser(
    'takes a correction at once: metres for yards, a column for another',
    async () => {
      const { page, troubles } = await built.open();
      await give(page, demo('bag-demo'));
      const side = (): Promise<string[]> =>
        page.$$eval('#preview-0 tbody tr td:last-child', (cells) =>
          cells.map((cell) => cell.textContent ?? ''),
        );
      expect((await side()).slice(0, 2)).toEqual(['1.5', '9.0']);
      await page.click('#columns-0 > summary');
      const columnOf = (header: string): Promise<number> =>
        page.$$eval(
          '#columns-0 tbody th',
          (heads, name) => heads.findIndex((head) => head.textContent === name),
          header,
        );
      await page.selectOption(`#unit-0-${await columnOf('side (yd)')}`, 'm');
      await ready(page);
      // International yard and pound agreement, 1959: 1 yd = 0.9144 m, so 1.5 m are 1.64 yd and 9.0 m are 9.84 yd.
      expect((await side()).slice(0, 2)).toEqual(['1.6', '9.8']);
      const at = await columnOf('carry (yd)');
      await page.selectOption(`#meaning-0-${at}`, '');
      await ready(page);
      expect(await page.textContent('#files')).toContain('"carry (yd)" is kept aside');
      expect(troubles).toEqual([]);
      await page.context().close();
    },
    120_000,
  );

  inBrowser(
    'speaks metres throughout once asked to',
    async () => {
      const { page } = await built.open();
      await give(page, demo('bag-demo'));
      await page.click('label[for=units-metric]');
      await ready(page);
      const shown = await page.$$eval('#answers, #the-sheet, #about', (places) =>
        places.map((place) => place.textContent).join(' '),
      );
      expect(shown).not.toMatch(/\d (yd|mph|ft|°F)\b/);
      expect(shown).toMatch(/\d m\b/);
      await page.context().close();
    },
    120_000,
  );

  inBrowser(
    'shows cells that hold markup as text',
    async () => {
      const { page, troubles } = await built.open();
      const evil = '<img src=x onerror=document.title=1><script>document.title=1</script>';
      const text = readFileSync(demo('bag-demo'), 'utf8')
        .replaceAll('driver', `"${evil}"`)
        .replace('# INVENTED', `# ${evil}`);
      const file = join(built.folder(), 'evil.csv');
      writeFileSync(file, text);
      await give(page, file);
      expect(await page.textContent('#files')).toContain('onerror');
      expect(await page.$$('main img, main script, [onerror]')).toEqual([]);
      expect(await page.title()).not.toBe('1');
      expect(troubles).toEqual([]);
      await page.context().close();
    },
    120_000,
  );

  inBrowser(
    'sets last time beside this time, and opens a saved study with the same answers',
    async () => {
      const { page, troubles } = await built.open({ acceptDownloads: true });
      await give(page, demo('face-map-demo'), demo('speed-ladder-demo'));
      expect(await questions(page)).toContain('What changed since last time?');
      await page.fill('#about-player', 'A. Player');
      const said = await sentences(page);
      const save = async (id: string): Promise<string> => {
        const [download] = await Promise.all([page.waitForEvent('download'), page.click(id)]);
        const path = join(built.folder(), download.suggestedFilename());
        await download.saveAs(path);
        return path;
      };
      const study = await save('#save-study');
      expect(study).toMatch(/a-player-2026-03-11-study\.json$/);
      expect(JSON.parse(readFileSync(study, 'utf8'))).toMatchObject({
        kind: 'fairflight study',
        version: expect.any(String),
      });
      const sheet = readFileSync(await save('#save-sheet'), 'utf8');
      expect(sheet).toContain("default-src 'none'");
      expect(sheet).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
      expect(sheet).toContain('A. Player');
      const again = await built.open();
      await give(again.page, study);
      expect(await again.page.inputValue('#about-player')).toBe('A. Player');
      expect(await sentences(again.page)).toEqual(said);
      expect([...troubles, ...again.troubles]).toEqual([]);
      await page.context().close();
      await again.page.context().close();
    },
    180_000,
  );
});
