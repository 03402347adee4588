/**
 * Pages by keyboard alone: each stop comes after the last one in the text, can be seen, shows that it has the focus, and
 * none holds the reader. WCAG 2.2, success criteria 2.1.2, 2.4.3, 2.4.7 and 2.4.11.
 */
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { launchOptions } from '../support/chromium.ts';
import { openCopy } from '../support/project-copy.ts';
import { serveFolder, type FolderServer } from '../support/serve-folder.ts';

/** No page has as many: whoever comes to it is held. */
const MOST_STOPS = 600;

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

interface Stop {
  readonly html: string;
  /** Its place among all elements of the page. */
  readonly place: number;
  readonly isSeen: boolean;
  readonly showsFocus: boolean;
}

/** What has the focus; undefined once it has left the page. */
function stopOf(page: Page): Promise<Stop | undefined> {
  return page.evaluate(() => {
    const element = document.activeElement;
    if (element === null || element === document.body) return undefined;
    const { outlineStyle, outlineWidth } = getComputedStyle(element);
    const { left, right, top, bottom } = element.getBoundingClientRect();
    return {
      html: element.outerHTML.slice(0, 100),
      place: [...document.querySelectorAll('*')].indexOf(element),
      isSeen: right > left && bottom > top && bottom > 0 && top < innerHeight && right > 0 && left < innerWidth,
      showsFocus: outlineStyle !== 'none' && Number.parseFloat(outlineWidth) > 0,
    };
  });
}

/** What is wrong with the stops of a page, and how many it has. */
async function walk(page: Page): Promise<{ readonly faults: readonly string[]; readonly stops: number }> {
  const faults: string[] = [];
  let last = -1;
  for (let stops = 0; stops < MOST_STOPS; stops += 1) {
    await page.keyboard.press('Tab');
    const stop = await stopOf(page);
    if (stop === undefined) return { faults, stops };
    if (stop.place <= last) faults.push(`before the last: ${stop.html}`);
    if (!stop.isSeen) faults.push(`out of sight: ${stop.html}`);
    if (!stop.showsFocus) faults.push(`shows no focus: ${stop.html}`);
    last = stop.place;
  }
  return { faults: [...faults, 'the page holds the focus'], stops: MOST_STOPS };
}

async function openPage(path: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(server.home + path.slice(1), { waitUntil: 'load' });
  // the page that searches starts in its field
  await page.evaluate(() => (document.activeElement as HTMLElement).blur());
  return page;
}

it.concurrent.each(['/', '/comparison/', '/search/', '/bodies/skelby-dome/'])('%s is walked in order', async (path) => {
  const page = await openPage(path);
  const { faults, stops } = await walk(page);
  expect(faults).toEqual([]);
  expect(stops).toBeGreaterThan(15);
  await page.close();
});

it('notices a focus that jumps, and one that does not show', async () => {
  const page = await openPage('/');
  await page.evaluate(() => {
    document.querySelectorAll('a')[5]!.tabIndex = 1;
    document.querySelectorAll('a')[7]!.style.outline = 'none';
  });
  const { faults } = await walk(page);
  expect(faults.map((fault) => fault.replace(/:.*/s, ''))).toEqual(['before the last', 'shows no focus']);
  await page.close();
});
