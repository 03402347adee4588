/** That no table hides a column or cuts one off, on a phone, between phone and desk, or on paper. */
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { launchOptions } from '../support/chromium.ts';
import { openCopy } from '../support/project-copy.ts';
import { serveFolder, type FolderServer } from '../support/serve-folder.ts';
import { hiddenColumns, overflowPx } from './in-page.ts';

const { dist } = openCopy(inject('builtProject'));
const site = demonstrationSite();
/** Of pages that are alike, such as those of sessions, the longest stand for the rest; all with `EVERY_PAGE=1`. */
const OF_A_KIND = process.env['EVERY_PAGE'] === undefined ? 3 : Infinity;
const kindOf = (path: string): string => path.replace(/^(\/[\w-]+\/).+/, '$1…');
const withTables = [
  ...Map.groupBy(
    site.pages.filter(({ elements }) => elements.some(({ tagName }) => tagName === 'table')),
    ({ path }) => kindOf(path),
  ).values(),
].flatMap((alike) => alike.toSorted((a, b) => b.html.length - a.html.length).slice(0, OF_A_KIND));

/** Phones, the widths at which columns have just come to stand side by side again, and a desk. */
const WIDTHS = [320, 390, 640, 720, 1024];
/** An A4 sheet less the margins of the stylesheet, in CSS pixels: (210 − 2 × 16) mm at 96 px an inch. */
const SHEET_PX = Math.floor(((210 - 2 * 16) / 25.4) * 96);

let browser: Browser;
let server: FolderServer;
let page: Page;

beforeAll(async () => {
  server = await serveFolder(dist, '/some/prefix/');
  browser = await chromium.launch(launchOptions(inject('chromium')));
  page = await browser.newPage();
});
afterAll(async () => {
  await browser?.close();
  await server?.[Symbol.asyncDispose]();
});

async function open(path: string): Promise<void> {
  await page.goto(server.home + path.slice(1), { waitUntil: 'load' });
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  await page.evaluate(() => document.querySelectorAll('details').forEach((one) => one.setAttribute('open', '')));
}

describe('no table hides a column', () => {
  it('of any page with tables', () => {
    expect(withTables.length).toBeGreaterThan(20);
  });

  it.each(withTables.map(({ path }) => [path]))('%s', async (path) => {
    await open(path);
    let looked = 0;
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 900 });
      const found = await page.evaluate(hiddenColumns);
      expect(found.faults, `at ${width} px`).toEqual([]);
      expect(await page.evaluate(overflowPx), `px wider than a window of ${width} px`).toBe(0);
      looked += found.looked;
    }
    await page.setViewportSize({ width: SHEET_PX, height: 900 });
    await page.emulateMedia({ media: 'print' });
    const printed = await page.evaluate(hiddenColumns);
    await page.emulateMedia({ media: null });
    expect(printed.faults, 'on paper').toEqual([]);
    expect(looked + printed.looked).toBeGreaterThan(6);
  });
});

it('paper shows what is folded for small screens only', async () => {
  const seen = (): Promise<boolean[]> =>
    page.locator('details.on-paper td').evaluateAll((cells) => cells.map((cell) => cell.checkVisibility()));
  await page.goto(`${server.home}guide/`, { waitUntil: 'load' });
  expect(new Set(await seen())).toEqual(new Set([false]));
  await page.emulateMedia({ media: 'print' });
  expect(new Set(await seen())).toEqual(new Set([true]));
  await page.emulateMedia({ media: null });
});
