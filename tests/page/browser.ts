import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { builtPage, type PageOptions } from '../../examples/page/bundle.js';

/** The system's browser; tests of the page are skipped where there is none. */
export const CHROMIUM: string | undefined = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
].find(existsSync);

/** A file of the invented data. */
export function demo(name: string): string {
  return fileURLToPath(new URL(`../../examples/data/${name}.csv`, import.meta.url));
}

/** A page opened from disk as by double click, and everything that went wrong in it or left it. */
export interface OpenPage {
  readonly page: Page;
  readonly troubles: readonly string[];
}

/** The page built once, in a browser of its own. */
export function pageInBrowser(options: PageOptions = {}): {
  readonly open: (how?: BrowserContextOptions) => Promise<OpenPage>;
  readonly html: () => string;
  readonly folder: () => string;
} {
  const folder = mkdtempSync(join(tmpdir(), 'page-'));
  const file = join(folder, 'fairflight.html');
  let browser: Browser | undefined;
  beforeAll(async () => {
    writeFileSync(file, await builtPage(options));
    if (CHROMIUM !== undefined) {
      browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
    }
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true });
  });
  return {
    html: () => readFileSync(file, 'utf8'),
    folder: () => folder,
    open: async (how = {}) => {
      if (browser === undefined) throw new Error('no browser');
      const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...how });
      const page = await context.newPage();
      const troubles: string[] = [];
      page.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') troubles.push(message.text());
      });
      page.on('pageerror', (error) => troubles.push(error.message));
      page.on('request', (request) => {
        if (!/^(file|blob|data):/.test(request.url())) troubles.push(`request to ${request.url()}`);
      });
      await page.goto(pathToFileURL(file).href);
      return { page, troubles };
    },
  };
}

/** Waits until all answers of the last choice are there. */
export async function ready(page: Page): Promise<void> {
  // A choice is taken up after a short wait, and the bar shows from then on.
  await page.waitForFunction(() => document.querySelector('.work.unseen') === null, null, { timeout: 5000 });
  await page.waitForFunction(() => document.querySelector('.work.unseen') !== null, null, {
    timeout: 120_000,
  });
}

/** Gives the page files and waits for the answers. */
export async function give(page: Page, ...files: readonly string[]): Promise<void> {
  await page.setInputFiles('#choose', [...files]);
  await ready(page);
}

/** Headings of the questions answered. */
export async function questions(page: Page): Promise<readonly string[]> {
  return page.$$eval('#answers > section:not([hidden]) > h3', (heads) =>
    heads.map((head) => head.textContent ?? ''),
  );
}

/** Pages that printing takes. */
export async function printedPages(page: Page, format: 'A4' | 'Letter'): Promise<number> {
  const pdf = await page.pdf({ format });
  return pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g)?.length ?? 0;
}
