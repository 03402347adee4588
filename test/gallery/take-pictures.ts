/**
 * Pictures of a built site, to look at: one page of every kind at the width of a phone, a tablet and a desk, light and
 * dark, and on paper.
 *
 *     npm run gallery -- FOLDER [--site DIR] [--only /path/]
 */
import { mkdirSync, readdirSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { chromium, type Browser, type Page } from 'playwright-core';
import { pageOfFile } from '../../src/register/paths.ts';
import { findChromium, launchOptions } from '../support/chromium.ts';
import { serveFolder } from '../support/serve-folder.ts';
import { pagesOfEveryKind } from './pages-of-every-kind.ts';

const WIDTHS = [360, 768, 1440];
const HEIGHT = 900;
/** An A4 sheet less its margins, (210 − 2 × 16) mm at 96 px an inch. */
const SHEET_PX = 672;
/** The browser takes no picture above 16384 px (measured); a page that is longer is pictured in pieces. */
const LONGEST_PX = 16_000;
const SCHEMES = ['light', 'dark'] as const;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { site: { type: 'string', default: 'dist' }, only: { type: 'string', multiple: true, default: [] } },
});
const [folder] = positionals;
if (folder === undefined) throw new Error('usage: npm run gallery -- FOLDER [--site DIR] [--only /path/]');
const site = resolve(values.site);
mkdirSync(folder, { recursive: true });

await using server = await serveFolder(site);
const browser = await chromium.launch(launchOptions(await findChromium()));
try {
  const paths = values.only.length > 0 ? values.only : pagesOfEveryKind(pagesIn(site));
  for (const path of paths) await picture(browser, path);
  console.log(`${paths.length} pages, in ${folder}`);
} finally {
  await browser.close();
}

function pagesIn(dist: string): readonly string[] {
  return readdirSync(dist, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.html') && statSync(join(dist, path)).isFile())
    .map(pageOfFile)
    .sort();
}

async function picture(from: Browser, path: string): Promise<void> {
  const name = path === '/' ? 'home' : path.replaceAll('/', ' ').trim().replaceAll(' ', '_');
  for (const width of WIDTHS)
    for (const colorScheme of SCHEMES) {
      const page = await from.newPage({ viewport: { width, height: HEIGHT }, colorScheme });
      await page.goto(server.home + path.slice(1), { waitUntil: 'load' });
      await page.evaluate(() => document.fonts.ready.then(() => undefined));
      await pictureWhole(page, join(folder ?? '', `${name}-${width}-${colorScheme}`));
      await page.close();
    }
  await picturePaper(from, path, join(folder ?? '', name));
}

/** The sheets, and the whole length of paper as a picture. */
async function picturePaper(from: Browser, path: string, to: string): Promise<void> {
  const page = await from.newPage({ viewport: { width: SHEET_PX, height: HEIGHT } });
  await page.goto(server.home + path.slice(1), { waitUntil: 'load' });
  await page.pdf({ path: `${to}.pdf`, format: 'A4', preferCSSPageSize: true });
  await page.emulateMedia({ media: 'print' });
  await pictureWhole(page, `${to}-print`);
  await page.close();
}

async function pictureWhole(page: Page, to: string): Promise<void> {
  const { width, height } = await page.evaluate(() => ({
    width: document.documentElement.scrollWidth,
    height: document.documentElement.scrollHeight,
  }));
  for (let y = 0; y < height; y += LONGEST_PX)
    await page.screenshot({
      path: y === 0 ? `${to}.png` : `${to}-${y / LONGEST_PX + 1}.png`,
      fullPage: true,
      clip: { x: 0, y, width, height: Math.min(LONGEST_PX, height - y) },
    });
}
