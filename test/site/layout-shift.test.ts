/** That nothing moves when fonts arrive late: those of the reader's own machine are set as wide as the site's. */
import { chromium, type Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { launchOptions } from '../support/chromium.ts';
import { openCopy } from '../support/project-copy.ts';
import { serveFolder, type FolderServer } from '../support/serve-folder.ts';

/** Half of what web.dev, “Cumulative Layout Shift”, calls good. */
const MOST = 0.05;
const LATE_MS = 700;

let browser: Browser;
let server: FolderServer;
beforeAll(async () => {
  server = await serveFolder(openCopy(inject('builtProject')).dist);
  browser = await chromium.launch(launchOptions(inject('chromium')));
});
afterAll(async () => {
  await browser?.close();
  await server?.[Symbol.asyncDispose]();
});

interface Shifted {
  shifted?: number;
}

/** What moved, as the browser adds it up, once fonts have come late. */
async function shiftOf(path: string, width: number): Promise<number> {
  const page = await browser.newPage({ viewport: { width, height: 800 } });
  let late = 0;
  await page.route('**/*.woff2', async (route) => {
    late += 1;
    await new Promise((resolve) => setTimeout(resolve, LATE_MS));
    await route.continue();
  });
  await page.addInitScript(() => {
    const counted = globalThis as Shifted;
    counted.shifted = 0;
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) counted.shifted! += (entry as unknown as { value: number }).value;
    }).observe({ type: 'layout-shift', buffered: true });
  });
  await page.goto(server.home + path.slice(1), { waitUntil: 'load' });
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  // Shifts are told of after the frame that they are part of.
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 100))));
  const shifted = await page.evaluate(() => (globalThis as Shifted).shifted);
  await page.close();
  expect(late, 'fonts that came late').toBeGreaterThan(1);
  return shifted ?? Number.NaN;
}

it.each([
  ['/', 360],
  ['/', 1440],
  ['/reports/stage-screen/', 360],
  ['/reports/stage-screen/', 1440],
  ['/bodies/vennick-q4/', 360],
  ['/sessions/vennick-uhd50-a/', 768],
])('%s at %d px hardly moves when its fonts come late', async (path, width) => {
  expect(await shiftOf(path, width)).toBeLessThan(MOST);
});
