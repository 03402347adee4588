/** That nothing moves while a page is read, though fonts come late and scripts start: on one page of every kind. */
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { pagesOfEveryKind } from '../gallery/pages-of-every-kind.ts';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { launchOptions } from '../support/chromium.ts';
import { openCopy } from '../support/project-copy.ts';
import { serveFolder, type FolderServer } from '../support/serve-folder.ts';

/** Half of what web.dev, “Cumulative Layout Shift”, calls good. */
const MOST = 0.05;
/** Longer than the 100 ms for which CSS Fonts 4, 11, lets text wait for its font. */
const LATE_MS = 300;

const { dist } = openCopy(inject('builtProject'));
const PAGES = pagesOfEveryKind(demonstrationSite().pages.map(({ path }) => path));
/** Each on a phone, and those on a desk of which most once moved. */
const LOOKS = [
  ...PAGES.map((path) => [path, 360] as const),
  ...['/bodies/dunmere-30/', '/comparison/', '/sessions/'].map((path) => [path, 768] as const),
];

let browser: Browser;
let server: FolderServer;
beforeAll(async () => {
  server = await serveFolder(dist);
  browser = await chromium.launch(launchOptions(inject('chromium')));
});
afterAll(async () => {
  await browser?.close();
  await server?.[Symbol.asyncDispose]();
});

interface Shifted {
  shifted: number;
}

/** Counts from now on what moves, as the browser adds it up. */
async function countShifts(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const counted = globalThis as unknown as Shifted;
    counted.shifted = 0;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) counted.shifted += (entry as unknown as { value: number }).value;
    }).observe({ type: 'layout-shift', buffered: true });
  });
}

/** What has moved; shifts are told of after the frame that they are part of. */
async function shiftOf(page: Page): Promise<number> {
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 100))));
  return page.evaluate(() => (globalThis as unknown as Shifted).shifted);
}

describe('when fonts come late', () => {
  it.concurrent.each(LOOKS)('%s at %d px hardly moves', async (path, width) => {
    const page = await browser.newPage({ viewport: { width, height: 800 } });
    let late = 0;
    await page.route('**/*.woff2', async (route) => {
      late += 1;
      await new Promise((resolve) => setTimeout(resolve, LATE_MS));
      await route.continue();
    });
    await countShifts(page);
    await page.goto(server.home + path.slice(1), { waitUntil: 'load' });
    expect(await shiftOf(page)).toBeLessThan(MOST);
    expect(late, 'fonts that came late').toBeGreaterThan(1);
    await page.close();
  });
});

it('notices what moves', async () => {
  const page = await browser.newPage({ viewport: { width: 360, height: 800 } });
  await countShifts(page);
  await page.goto(server.home, { waitUntil: 'load' });
  await shiftOf(page);
  await page.evaluate(() => document.querySelector('h1')!.before(document.querySelector('.colophon')!));
  expect(await shiftOf(page)).toBeGreaterThan(MOST);
  await page.close();
});
