/** The built site in a real browser, served below a path: for each kind of page, phone and desk, light and dark. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axe from 'axe-core';
import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { launchOptions } from '../support/chromium.ts';
import { attributeOf, elementsOf, parsePage } from '../../src/verify/html.ts';
import { openCopy } from '../support/project-copy.ts';
import { serveFolder, type FolderServer } from '../support/serve-folder.ts';
import { chartFaults, contrastFaults, overflowPx, type Looked } from './in-page.ts';

const { dist } = openCopy(inject('builtProject'));
const site = demonstrationSite();

/** One of each kind; of sessions one per method, and those with excluded readings, one run and a cut short. */
const PAGES = [
  '/',
  '/reports/',
  '/reports/stage-screen/',
  '/reports/how-we-measure/',
  '/bodies/',
  '/bodies/vennick-q4/',
  '/comparison/',
  '/comparison/carried/',
  '/chain/',
  '/guide/',
  '/corrections/',
  '/documentation/',
  '/documentation/file-formats/',
  '/documentation/publication/',
  '/documentation/write-ups/',
  '/404.html',
  '/coverage/',
  '/display-pairs/pit-beside-workshop/',
  '/glossary/',
  '/sessions/',
  '/figures/rate-laws/dunmere-30-5-1-balcony-uhd-off-0-off-auto-free/',
  '/figures/chain/',
  '/figures/repeats/',
  '/figures/bodies-balcony-uhd-59-94-off-0-off-auto-free/',
  '/rigs/',
  '/rigs/balcony/',
  '/method/',
  '/method/two-timers/',
  '/data/',
  '/recompute/',
  '/search/',
  '/sessions/vennick-uhd50-a/',
  '/sessions/vennick-flash-uhd60/',
  '/sessions/skelby-sensor-hd50/',
  '/sessions/skelby-hd100-quiet/',
];
const PHONE = { width: 360, height: 740 };
const DESK = { width: 1440, height: 900 };

/** WCAG 2.2, success criterion 1.4.3, for text of any size. */
const LEAST_CONTRAST = 4.5;
/** In CSS pixels; common practice for the smallest print in a figure, no source. */
const LEAST_TEXT_PX = 11;

let browser: Browser;
let server: FolderServer;
/** Made when a test fails, and then left for whoever looks into it. */
let pictures: string | undefined;

beforeAll(async () => {
  server = await serveFolder(dist, '/some/prefix/');
  browser = await chromium.launch(launchOptions(inject('chromium')));
});

afterAll(async () => {
  await browser?.close();
  await server?.[Symbol.asyncDispose]();
});

const address = (path: string): string => server.home + path.slice(1);

/**
 * Opens a page, hands it to the test with what it asked for and complained of, and takes its picture when that fails.
 */
async function look(
  path: string,
  options: BrowserContextOptions,
  test: (page: Page, troubles: readonly string[]) => Promise<void>,
): Promise<void> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  try {
    const troubles: string[] = [];
    page.on('request', (request) => {
      const url = request.url();
      if (!url.startsWith(server.home) && !url.startsWith('data:')) troubles.push(`asked for ${url}`);
    });
    page.on('requestfailed', (request) => troubles.push(`could not load ${request.url()}`));
    page.on('response', (response) => {
      if (response.status() >= 400) troubles.push(`${response.status()} for ${response.url()}`);
    });
    page.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') troubles.push(`console: ${message.text()}`);
    });
    page.on('pageerror', (error) => troubles.push(`error: ${error.message}`));
    await page.goto(address(path), { waitUntil: 'load' });
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    await test(page, troubles);
  } catch (error) {
    pictures ??= mkdtempSync(join(tmpdir(), 'pages-'));
    const picture = join(
      pictures,
      `${path.replaceAll('/', '_')}${options.viewport?.width}-${options.colorScheme ?? 'light'}.png`,
    );
    await page.screenshot({ path: picture, fullPage: true }).then(
      () => console.error(`What ${path} looked like: ${picture}`),
      () => console.error(`${path} could not be pictured`),
    );
    throw error;
  } finally {
    await context.close();
  }
}

/** Pages of words and lists, which a desk shows as a phone does, only wider. */
const ALIKE_AT_ANY_WIDTH = /^\/(?:documentation|figures|glossary|rigs\/$|reports\/$|404)/;
/** Of the others, those that a desk arranges otherwise than a phone; what markup alone decides is the same at either. */
const ARRANGED_AT_A_DESK = new Set([
  '/',
  '/reports/how-we-measure/',
  '/bodies/vennick-q4/',
  '/comparison/',
  '/corrections/',
  '/sessions/vennick-uhd50-a/',
]);
const LOOKS = PAGES.flatMap((path) =>
  (ALIKE_AT_ANY_WIDTH.test(path) ? [PHONE] : [PHONE, DESK]).map(
    (viewport) => [path, viewport.width, viewport] as const,
  ),
);

describe('a page', () => {
  it('of every kind is looked at', () => {
    const kind = (path: string): string => path.replace(/^(\/[\w-]+\/).+/, '$1…');
    expect([...new Set(PAGES.map(kind))].sort()).toEqual([...new Set(site.pages.map(({ path }) => kind(path)))].sort());
  });

  it.concurrent.each(LOOKS)(
    '%s at %d px, light and dark: accessible, legible, and asking nobody else',
    async (path, _width, viewport) => {
      await look(path, { viewport, colorScheme: 'light' }, async (page, troubles) => {
        expect(await page.evaluate(overflowPx), 'px wider than the window').toBe(0);
        // What is folded away has to be as good as what is not.
        await page.evaluate(() => document.querySelectorAll('details').forEach((one) => one.setAttribute('open', '')));
        expect(await page.evaluate(overflowPx), 'px wider than the window, all unfolded').toBe(0);

        const drawn = site.page(path).elements.filter(({ tagName }) => tagName === 'svg').length / 2;
        for (const colorScheme of ['light', 'dark'] as const) {
          await page.emulateMedia({ colorScheme });
          const contrast: Looked = await page.evaluate(contrastFaults, LEAST_CONTRAST);
          expect(contrast.faults, colorScheme).toEqual([]);
          expect(contrast.looked).toBeGreaterThan(20);

          const charts: Looked = await page.evaluate(chartFaults, LEAST_TEXT_PX);
          expect(charts.faults, colorScheme).toEqual([]);
          expect(charts.looked).toBeGreaterThanOrEqual(drawn * 3);
        }
        if (viewport === PHONE || ARRANGED_AT_A_DESK.has(path)) {
          // in the dark, where the page is now; nothing but contrast, looked at above, differs in the light
          await page.evaluate(axe.source);
          const { violations, passes } = await page.evaluate(() =>
            (globalThis as unknown as { axe: typeof axe }).axe.run({
              resultTypes: ['violations'],
              rules: { 'color-contrast': { enabled: false } },
            }),
          );
          expect(
            violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`),
          ).toEqual([]);
          expect(passes.length).toBeGreaterThan(15);
        }
        expect(troubles).toEqual([]);
      });
    },
  );
});

/** Pages that show a chart, and one that shows none. */
const PRINTED = ['/reports/stage-screen/', '/sessions/vennick-uhd50-a/', '/bodies/vennick-q4/', '/method/'];

describe('on paper', () => {
  it.concurrent.each(PRINTED)('%s has no navigation, and the wide drawing of each chart', async (path) => {
    await look(path, { viewport: PHONE, colorScheme: 'dark' }, async (page) => {
      const visible = (selector: string) =>
        page.locator(selector).evaluateAll((all) => all.filter((one) => one.checkVisibility()).length);
      const charts = await page.locator('.chart').count();
      expect(await visible('nav a')).toBeGreaterThan(3);
      expect([await visible('.chart-wide'), await visible('.chart-narrow')]).toEqual([0, await visible('.chart')]);
      await page.emulateMedia({ media: 'print' });
      expect(await visible('nav a')).toBe(0);
      expect([await visible('.chart-wide'), await visible('.chart-narrow')]).toEqual([await visible('.chart'), 0]);
      expect(charts > 0).toBe(path !== '/method/');
      const { faults, looked }: Looked = await page.evaluate(contrastFaults, LEAST_CONTRAST);
      expect(faults).toEqual([]);
      expect(looked).toBeGreaterThan(10);
      expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(255, 255, 255)');
    });
  });
});

describe('without JavaScript', () => {
  it('there is nothing to run on any page but two, which say without it what to do instead', () => {
    const running = site.pages.filter(({ elements }) =>
      elements.some(
        (element) => element.tagName === 'script' && attributeOf(element, 'type') !== 'application/ld+json',
      ),
    );
    expect(running.map(({ path }) => path)).toEqual(['/recompute/', '/search/']);
  });

  it.concurrent.each(['/', '/sessions/', ...PRINTED])('%s reads the same', async (path) => {
    const texts: string[] = [];
    for (const javaScriptEnabled of [true, false]) {
      await look(path, { viewport: DESK, javaScriptEnabled }, async (page) => {
        texts.push(await page.locator('body').innerText());
      });
    }
    expect(texts[0]?.length).toBeGreaterThan(200);
    expect(texts[1]).toBe(texts[0]);
  });
});

describe('below a path of a host', () => {
  it('every page and every download can be reached by following links', async () => {
    const reached = new Set<string>();
    const troubles: string[] = [];
    const queue = [server.home];
    for (let url = queue.pop(); url !== undefined; url = queue.pop()) {
      if (reached.has(url)) continue;
      reached.add(url);
      const response = await fetch(url);
      if (response.status !== 200) troubles.push(`${response.status} for ${url}`);
      if (!url.endsWith('/')) continue;
      const links = elementsOf(parsePage(await response.text()), ({ tagName }) => tagName === 'a');
      const targets = links.flatMap((link) => attributeOf(link, 'href') ?? []).map((href) => new URL(href, url));
      queue.push(...targets.map(({ origin, pathname }) => origin + pathname));
    }
    const pages = [...reached].filter((url) => url.endsWith('/'));
    expect(pages.sort()).toEqual(
      site.pages
        .map(({ path }) => path)
        .filter((path) => path !== '/404.html')
        .map(address)
        .sort(),
    );
    expect(reached.size - pages.length).toBeGreaterThan(80);
    expect([...reached].filter((url) => !url.startsWith(server.home))).toEqual([]);
    expect(troubles).toEqual([]);
  });
});
