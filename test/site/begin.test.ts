/** A publication as it begins, and as it grows: built, verified, and looked at in a real browser. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { readBuiltSite } from '../../src/verify/built-site.ts';
import { checkAccessibility } from '../../src/commands/check-accessibility.ts';
import type { NamedCheck } from '../../src/verify/verify-site.ts';
import { launchOptions } from '../support/chromium.ts';
import { openCopy } from '../support/project-copy.ts';
import { serveFolder } from '../support/serve-folder.ts';
import { writeFiles } from '../support/text-files.ts';

const tool = openCopy(inject('builtProject'));
const SESSION = 'data/sessions/fenn-3-50-a';
let outer: string;
let root: string;

beforeAll(() => {
  outer = mkdtempSync(join(tmpdir(), 'begun-'));
  root = join(outer, 'Prüf #1');
  const { code, stderr } = tool.run('begin', [root]);
  if (code !== 0) throw new Error(stderr);
});
afterAll(() => rmSync(outer, { recursive: true, force: true }));

const verify = (...more: readonly string[]) => tool.run('verify', ['--publication', root, ...more]);
const read = (path: string): string => readFileSync(join(root, path), 'utf8');

it('holds what it promises at once, and verifying leaves nothing behind', () => {
  const { code, stdout, stderr } = verify();
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  expect(stdout).toMatch(/✓ +\d+ pages: are accessible, as far as a program can tell\n\nEverything holds\.\n$/);
  expect(existsSync(join(root, 'dist'))).toBe(false);
});

it('has pages that are no wider than a phone, and that ask nobody for anything', async () => {
  expect(tool.run('build', ['--publication', root]).code).toBe(0);
  const site = readBuiltSite(join(root, 'dist'));
  expect(site.pages.length).toBeGreaterThan(12);
  expect(site.pages.filter(({ path }) => path.startsWith('/documentation/'))).toEqual([]);
  await using server = await serveFolder(join(root, 'dist'), '/some/prefix/');
  await using browser = await chromium.launch(launchOptions(inject('chromium')));
  await using context = await browser.newContext({ viewport: { width: 360, height: 740 } });
  const page = await context.newPage();
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  for (const { path } of site.pages) {
    await page.goto(server.home + path.slice(1));
    expect(await page.evaluate(() => document.documentElement.scrollWidth), path).toBeLessThanOrEqual(360);
  }
  expect(asked.filter((url) => !url.startsWith(server.origin) && !url.startsWith('data:'))).toEqual([]);
});

it('tells what shuts readers out, in light and in dark colours', async () => {
  using _page = writeFiles(root, {
    'faulty/index.html':
      '<!doctype html><html lang="en"><head><meta name="color-scheme" content="light dark"><title>A page</title><style>@media (prefers-color-scheme: dark) { body { background: #000; color: #fff } p { color: #333 } }</style></head><body><main><h1>A page</h1><p>Words.</p><img src="data:,"></main></body></html>',
  });
  const { faults } = (await checkAccessibility(join(root, 'faulty'), ['/'])) as NamedCheck;
  expect(faults).toEqual([
    expect.stringMatching(/^\/: Images must have alternative text \(1\): <img/),
    expect.stringMatching(
      /^\/: in dark colours, Elements must meet minimum color contrast ratio thresholds \(1\): <p>/,
    ),
  ]);
});

it('is told of numbers from nowhere and of anchors that are not there', () => {
  using _report = writeFiles(root, {
    'content/reports/first.mdx':
      '---\ntitle: First\nsummary: A first look.\ndate: 2026-04-21\n---\n\nThe body takes 123 ms, see [there](/method/#nowhere).\n',
  });
  const { code, stdout, stderr } = verify('--no-browser');
  expect(code).toBe(1);
  expect(stdout).toContain('Whether pages are accessible was not looked at');
  expect(stdout).toContain('✗');
  expect(stderr).toContain('/reports/first/: nothing accounts for “123 ms” in “The body takes 123 ms, see there.”');
  expect(stderr).toContain('leads to #nowhere, which that page does not have');
  expect(stderr).not.toMatch(/\n\s+at /);
});

it('is told to record what it measured, and holds once that is done, until something moves', () => {
  using _measured = writeFiles(root, {
    [`${SESSION}.md`]: read(`${SESSION}.md`).replace('planned: true\n', '').replace('# date:', 'date:'),
    [`${SESSION}.csv`]: `${read(`${SESSION}.csv`)}1,10.120,10.004,,\n1,13.377,13.254,,\n2,4.551,4.436,,\n2,7.903,7.781,,\n`,
  });
  const before = verify('--no-browser');
  expect([before.code, before.stderr]).toEqual([1, expect.stringContaining('content/ledger/figures.csv')]);
  const record = ['--publication', root, '--reason', 'The first state', '--date', '2026-04-22'];
  expect(tool.run('record', record).code).toBe(0);
  expect(verify('--no-browser')).toMatchObject({ code: 0, stderr: '' });
  writeFileSync(join(root, `${SESSION}.csv`), read(`${SESSION}.csv`).replace('10.004', '10.014'));
  const moved = verify('--no-browser');
  expect([moved.code, moved.stderr]).toEqual([
    1,
    expect.stringMatching(/fenn-3-50-a\.csv changed:\n.*mean\/fenn-3-50-a/s),
  ]);
  rmSync(join(root, 'content/ledger'), { recursive: true });
});
