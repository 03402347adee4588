/** The page that searches: what it can find, in a real browser, served below a path and opened from a disk. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { runInNewContext } from 'node:vm';
import { chromium } from 'playwright-core';
import { expect, inject, it } from 'vitest';
import type { Register } from '../../src/register/register.ts';
import type { SearchFacts } from '../../src/search/facts.ts';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { launchOptions } from '../support/chromium.ts';
import { openCopy } from '../support/project-copy.ts';
import { serveFolder } from '../support/serve-folder.ts';

const { dist } = openCopy(inject('builtProject'));
const site = demonstrationSite();
const scope: { publicationFacts?: SearchFacts } = {};
runInNewContext(readFileSync(join(dist, 'search/facts.js'), 'utf8'), scope);
const facts = scope.publicationFacts!;

it('knows every figure of the register by the address of its entry, and no page that is not there', () => {
  const { figures } = JSON.parse(readFileSync(join(dist, 'figures.json'), 'utf8')) as Register;
  const entries = facts.pages.flatMap(({ path, figures: own = [] }) =>
    own.map(([, , , anchor]) => `${path}#${anchor}`),
  );
  expect(entries.length).toBeGreaterThan(800);
  expect(entries.toSorted()).toEqual(figures.map(({ entry }) => entry).toSorted());
  const paths = facts.pages.map(({ path }) => path.split('#')[0] ?? '');
  expect(paths.filter((path) => !site.pages.some((page) => page.path === path))).toEqual([]);
  for (const kind of ['bodies', 'reports', 'sessions', 'rigs', 'method', 'figures', 'documentation']) {
    const there = site.pages.map(({ path }) => path).filter((path) => path.startsWith(`/${kind}/`));
    expect(new Set(paths).isSupersetOf(new Set(there.filter((path) => path !== `/${kind}/`))), kind).toBe(true);
  }
});

it('answers while a reader types, below any path and from a disk, and asks nobody else', async () => {
  await using server = await serveFolder(dist, '/some/prefix/');
  const browser = await chromium.launch(launchOptions(inject('chromium')));
  try {
    for (const home of [server.home, pathToFileURL(`${dist}/`).href]) {
      const page = await browser.newPage();
      const troubles: string[] = [];
      page.on('request', (request) => {
        if (!request.url().startsWith(home)) troubles.push(request.url());
      });
      page.on('pageerror', (error) => troubles.push(String(error)));
      page.on('console', (message) => {
        // from a disk a browser hands no font ahead, says so, and reads it when the stylesheet asks
        const { url } = message.location();
        const isFontAhead = home.startsWith('file:') && /\.woff2/.test(`${url} ${message.text()}`);
        if (!isFontAhead) troubles.push(message.text());
      });
      await page.goto(`${home}search/index.html`);
      await page.fill('#question', 'vennick uhd 50');
      expect(await page.textContent('#status')).toMatch(/^\d+ found for “vennick uhd 50”\.$/);
      const first = page.locator('#results section', { hasText: 'Sessions' }).locator('a').first();
      await first.click();
      expect(await page.textContent('h1')).toMatch(/^Vennick Q4, 50 frames\/s/);
      await page.goBack();
      // What was asked stands in the address.
      expect(await page.inputValue('#question')).toBe('vennick uhd 50');
      expect(await page.locator('#results a').count()).toBeGreaterThan(0);
      expect(troubles).toEqual([]);
      await page.close();
    }
    const plain = await browser.newPage({ javaScriptEnabled: false });
    await plain.goto(`${server.home}search/`);
    expect(await plain.locator('#ask').isVisible()).toBe(false);
    expect(await plain.locator('main a').count()).toBeGreaterThan(8);
  } finally {
    await browser.close();
  }
});
