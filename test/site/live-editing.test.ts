/** The development server in a real browser: what is saved shows in the open page, mistakes too, and both go again. */
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { launchOptions } from '../support/chromium.ts';
import { startDevServer, type DevServer } from '../support/dev-server.ts';
import { copyProject, type ProjectCopy } from '../support/project-copy.ts';

const SESSION = 'vennick-uhd25-a';
const CSV = `data/sessions/${SESSION}.csv`;
const REPORT = 'content/reports/stage-screen.mdx';
/** Narrower than that no phone is. */
const PHONE = { width: 360, height: 740 };

let copy: ProjectCopy;
let server: DevServer;
let browser: Browser;
let page: Page;
let readings: string;

beforeAll(async () => {
  copy = copyProject({ builtAs: inject('builtProject') });
  server = await startDevServer(copy.root);
  browser = await chromium.launch(launchOptions(inject('chromium')));
  page = await browser.newPage({ viewport: PHONE });
  page.setDefaultTimeout(60_000);
  readings = copy.read(CSV);
});
afterAll(async () => {
  await browser?.close();
  await server?.[Symbol.asyncDispose]();
  copy?.[Symbol.dispose]();
});

/** The status of a page that may reload, for what was saved, while it is asked for. */
const statusOf = (address: string): Promise<number | undefined> =>
  page.goto(address).then(
    (response) => response?.status(),
    () => undefined,
  );

/** The readings with the first one's shown time in this many thousandths: `00:08.068` as committed. */
function withShown(thousandths: string): string {
  const changed = readings.replace('00:08.068', `00:08.${thousandths}`);
  if (changed === readings) throw new Error('the edit of the readings changes nothing');
  return changed;
}

const shows = (text: string): Promise<unknown> =>
  page.waitForFunction((wanted) => document.body.textContent?.includes(wanted), text);

it('shows a saved reading and what follows from it in the open page', async () => {
  await page.goto(`${server.origin}/sessions/${SESSION}/`);
  const before = await page.locator('.headline').textContent();
  copy.write(CSV, withShown('008'));
  await shows('00:08.008');
  expect(await page.locator('.headline').textContent()).not.toBe(before);
});

it('shows the last of several quick saves', async () => {
  for (const thousandths of ['011', '022', '033']) {
    copy.write(CSV, withShown(thousandths));
    // long enough for the page to have begun to reload
    await new Promise((resolve) => setTimeout(resolve, 60));
  }
  await shows('00:08.033');
});

it('shows a mistake in the readings with its place, in the page and in the terminal, until it is mended', async () => {
  copy.write(CSV, withShown('4x4'));
  await shows(`${CSV}:2`);
  await shows('found "00:08.4x4"');
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
  expect(server.printed()).toContain(`${CSV}:2`);
  copy.write(CSV, withShown('055'));
  await shows('00:08.055');
  await expect.poll(() => server.printed(), { timeout: 20_000 }).toContain('all mistakes are mended');
});

it('shows a mistake that was there before the page was opened, and comes back when it is mended', async () => {
  copy.write(CSV, withShown('4y4'));
  await shows('found "00:08.4y4"');
  await page.goto(`${server.origin}/bodies/`);
  await shows(`${CSV}:2`);
  copy.write(CSV, readings);
  await shows('Vennick Q4');
});

it('gives a new session its page, and takes it away with its files', async () => {
  const address = `${server.origin}/sessions/brand-new/`;
  await expect.poll(() => statusOf(address), { timeout: 60_000 }).toBe(404);
  copy.write('data/sessions/brand-new.csv', readings);
  copy.write('data/sessions/brand-new.md', copy.read(`data/sessions/${SESSION}.md`));
  await expect.poll(() => statusOf(address), { timeout: 60_000 }).toBe(200);
  await shows('brand-new');
  copy.remove('data/sessions/brand-new.csv');
  copy.remove('data/sessions/brand-new.md');
  await expect.poll(() => statusOf(address), { timeout: 60_000 }).toBe(404);
});

it('shows a saved write-up, and a figure that it misspells until it is mended', async () => {
  await page.goto(`${server.origin}/reports/stage-screen/`);
  copy.edit(REPORT, (text) => text.replace('## The short answer', '## The answer, in short'));
  await shows('The answer, in short');
  copy.edit(REPORT, (text) =>
    text.replace('<Figure id="total/skelby-uhd60-a" />', '<Figure id="total/skelbi-uhd60-a" />'),
  );
  await shows('there is no figure "total/skelbi-uhd60-a". Did you mean total/skelby-uhd60-a');
  expect(server.printed()).toMatch(/content\/reports\/stage-screen\.mdx:\d+:\d+ .*skelbi-uhd60-a/);
  copy.edit(REPORT, (text) => text.replace('total/skelbi-uhd60-a', 'total/skelby-uhd60-a'));
  await shows('The answer, in short');
});

it('shows where a write-up is not MDX, until it is mended', async () => {
  copy.edit(REPORT, (text) => text.replace('## The answer, in short', '## The {answer'));
  await shows('not valid MDX');
  copy.edit(REPORT, (text) => text.replace('## The {answer', '## The answer'));
  await page.waitForFunction(() => document.querySelector('h2')?.textContent?.startsWith('The answer'));
});
