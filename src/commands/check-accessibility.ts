/** Whether pages are accessible, as far as a program can tell: looked at in a browser, where this machine has one. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe from 'axe-core';
import { chromium, type Page } from 'playwright-core';
import type { NamedCheck } from '../verify/verify-site.ts';
import { firstStarting, launchOptions } from './chromium.ts';
import { sayMeanwhile } from './say.ts';

/** Wide enough for all columns; what is narrower only stacks them. */
const VIEWPORT = { width: 1280, height: 900 };
const WORDS_SHOWN = 120;

/** Of pages that the tool alone writes, one like the other: of a group of entries, of a session. */
const ALIKE_LOOKED_AT = 2;
const ALIKE = /^\/(?:figures|sessions)\/[^/]+\/$/;

/** Why pages were not looked at. */
export interface NotLooked {
  readonly why: string;
}

/**
 * The pages of a site, opened from the disk, everything unfolded, in light and in dark colours; of those that are alike,
 * some.
 *
 * @param folder of the built site
 * @param all site paths of its pages
 */
export async function checkAccessibility(folder: string, all: readonly string[]): Promise<NamedCheck | NotLooked> {
  const { path, passedOver } = await firstStarting();
  if (path === undefined) return { why: ['no Chromium was found', ...passedOver].join('; ') };
  const paths = withoutAlike(all);
  const browser = await chromium.launch(launchOptions(path));
  try {
    const context = await browser.newContext({ viewport: VIEWPORT, bypassCSP: true, offline: true });
    const page = await context.newPage();
    const faults: string[] = [];
    for (const [index, each] of paths.entries()) {
      sayMeanwhile(`Looking at pages: ${index + 1} of ${paths.length}`);
      faults.push(...(await faultsOf(page, folder, each)).map((fault) => `${each}: ${fault}`));
    }
    sayMeanwhile();
    return {
      what: 'pages',
      holds: `are accessible, as far as a program can tell${paths.length < all.length ? `; ${all.length - paths.length} more are alike` : ''}`,
      looked: paths.length,
      faults,
    };
  } finally {
    await browser.close();
  }
}

function withoutAlike(paths: readonly string[]): readonly string[] {
  const seen = new Map<string, number>();
  return paths.filter((path) => {
    const [kind = ''] = ALIKE.test(path) ? (/^\/[^/]+\//.exec(path) ?? []) : [];
    const before = seen.get(kind) ?? 0;
    seen.set(kind, before + 1);
    return kind === '' || before < ALIKE_LOOKED_AT;
  });
}

async function faultsOf(page: Page, folder: string, path: string): Promise<readonly string[]> {
  const file = join(folder, path.endsWith('/') ? `${path}index.html` : path);
  await page.emulateMedia({ colorScheme: 'light' });
  await page.goto(pathToFileURL(file).href);
  await page.evaluate(() => document.querySelectorAll('details').forEach((one) => one.setAttribute('open', '')));
  await page.evaluate(axe.source);
  const light = await run(page, {});
  await page.emulateMedia({ colorScheme: 'dark' });
  // Nothing else differs in the dark.
  const dark = await run(page, { runOnly: ['color-contrast'] });
  return [...light, ...dark.map((fault) => `in dark colours, ${fault}`)];
}

async function run(page: Page, options: axe.RunOptions): Promise<readonly string[]> {
  const { violations } = await page.evaluate(
    (asked) => (globalThis as unknown as { axe: typeof axe }).axe.run(asked),
    // what passes is not described node by node, which takes longer than looking at it
    { ...options, resultTypes: ['violations' as const] },
  );
  return violations.map(
    ({ help, nodes }) => `${help} (${nodes.length}): ${nodes[0]?.html.slice(0, WORDS_SHOWN) ?? ''}`,
  );
}
