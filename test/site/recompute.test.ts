/** The page that recomputes, in a real browser, served below a path: against the register, and against the command. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { readRegister } from '../../src/register/packed-register.ts';
import type { Figure } from '../../src/register/register.ts';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { launchOptions } from '../support/chromium.ts';
import { openCopy } from '../support/project-copy.ts';
import { serveFolder, type FolderServer } from '../support/serve-folder.ts';

const project = openCopy(inject('builtProject'));
const { dist } = project;
const register = readRegister(readFileSync(join(dist, 'figures.json'), 'utf8'));
const sessions = register.figures.flatMap(({ kind, of }) => (kind === 'total' ? (of['session'] ?? []) : []));

const read = (path: string): string => readFileSync(join(dist, path), 'utf8');

let server: FolderServer;
let browser: Browser;
let page: Page;
const requests: string[] = [];
const faults: string[] = [];
beforeAll(async () => {
  server = await serveFolder(dist, '/some/prefix/');
  browser = await chromium.launch(launchOptions(inject('chromium')));
  page = await (await browser.newContext()).newPage();
  page.on('request', (request) => requests.push(request.url()));
  page.on('pageerror', (error) => faults.push(String(error)));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
});
afterAll(async () => {
  await browser.close();
  await server[Symbol.asyncDispose]();
});

/** What the page says once it is done with what was asked last. */
async function status(of: Page = page): Promise<string> {
  await of.waitForFunction(() => {
    const said = document.getElementById('status');
    return (
      said?.classList.contains('fault') || /verified|as this page states|Recomputed with/.test(said?.textContent ?? '')
    );
  });
  return (await of.textContent('#status')) ?? '';
}

async function open(query: string): Promise<string> {
  await page.goto(`${server.home}recompute/?${query}`);
  return status();
}

/** Fills in what is stated otherwise, and waits for the figures. */
async function change(act: () => Promise<unknown>): Promise<string> {
  await page.evaluate(() => document.getElementById('status')?.replaceChildren());
  await act();
  return status();
}

async function state(file: string, key: string, value: string): Promise<string> {
  const input = page.locator(`input[name="${file}:${key}"]`);
  return change(async () => {
    await input.fill(value);
    await input.press('Tab');
  });
}

/** Of a column: what a figure is, to the last digit. */
async function exactIn(column: number): Promise<Record<string, string>> {
  const rows = await page
    .locator('tr[data-of-figure]')
    .evaluateAll(
      (all, at) =>
        all.map((row) => [
          row.getAttribute('data-of-figure') ?? '',
          row.querySelectorAll('td')[at]?.querySelector('.words')?.textContent ?? '',
        ]),
      column,
    );
  return Object.fromEntries(rows) as Record<string, string>;
}

function exact({ value, interval }: Figure): string {
  return interval === undefined ? String(value) : `${value}, ${interval.low} to ${interval.high}`;
}

/**
 * The whole publication, below, holds the figures of every session; alone, one of each method, or each where so asked.
 */
const alone =
  process.env['EVERY_SESSION'] === undefined
    ? [...new Map(sessions.map((id) => [/^method: .*/m.exec(read(`data/sessions/${id}.md`))?.[0], id])).values()]
    : sessions;

describe('recomputed in a browser', () => {
  it.each(alone.map((id) => [id]))('%s is what is published, to the last digit', async (id) => {
    const own = register.figures.filter(({ of }) => of['session'] === id && of['than'] === undefined);
    expect(own.length).toBeGreaterThan(9);
    expect(await open(`session=${id}`)).toMatch(
      new RegExp(`^\\d+ raw files verified by SHA-256\\. ${own.length} figures identical to the last digit\\.$`),
    );
    expect(await exactIn(1)).toEqual(Object.fromEntries(own.map((figure) => [figure.id, exact(figure)])));
    expect(await page.locator('[data-verified]').count()).toBe(await page.locator('[data-verified="true"]').count());
  });

  it('difference, ratio and verdict of two sessions are, with the family they are adjusted in', async () => {
    const verdict = register.figures.find((figure) => (figure.verdict?.familySize ?? 0) > 2);
    const { session = '', than = '' } = verdict?.of ?? {};
    expect(await open(`session=${session}&than=${than}`)).toMatch(/\d+ figures identical to the last digit\.$/);
    const shown = await page
      .locator('tr[data-of-figure]')
      .evaluateAll((rows) => rows.map((row) => row.getAttribute('data-of-figure')));
    expect(shown).toEqual(
      expect.arrayContaining([verdict?.id, `difference/${session}/${than}`, `ratio/${session}/${than}`]),
    );
    const family = page.locator(`details[data-family="${verdict?.verdict?.family}"]`);
    expect(await family.locator('li').count()).toBe(verdict?.verdict?.familySize);
  });

  it('the whole publication is, and the figure that a reader came from stands first', async () => {
    const { id } = register.figures.find(({ kind }) => kind === 'element')!;
    expect(await open(`figure=${encodeURIComponent(id)}`)).toBe(
      `${
        project
          .read('dist/lagfolio.sha256')
          .split('\n')
          .filter((line) => / data\//.test(line))
          .filter((line) => !line.endsWith('.html')).length
      } raw files verified by SHA-256. ${register.figures.length} figures identical to the last digit.`,
    );
    expect(Object.keys(await exactIn(1))).toEqual([id]);
  });

  it('says so where a raw file is not the one that the page states', async () => {
    const copy = mkdtempSync(join(tmpdir(), 'changed-'));
    cpSync(dist, copy, { recursive: true });
    const [id = ''] = sessions;
    const file = join(copy, `data/sessions/${id}.md`);
    writeFileSync(file, `${readFileSync(file, 'utf8')}\nOne more line.\n`);
    await using other = await serveFolder(copy);
    const elsewhere = await browser.newPage();
    await elsewhere.goto(`${other.home}recompute/?session=${id}`);
    expect(await status(elsewhere)).toMatch(
      new RegExp(
        `^1 raw file of \\d+ not as this page states: data/sessions/${id}\\.md\\. total/${id}: .*; differs in files`,
      ),
    );
    await elsewhere.close();
    rmSync(copy, { recursive: true });
  });
});

describe('what a reader changes moves the same as in files changed by hand', () => {
  /** One with two timers and several runs, so that everything can be changed. */
  const id = sessions.find((one) => /^run,source,shown,[^]*^2,/m.test(read(`data/sessions/${one}.csv`))) ?? '';
  const front = read(`data/sessions/${id}.md`);
  const rig = `data/rigs/${/^rig: (.*)$/m.exec(front)?.[1]}.md`;
  const rigText = read(rig);
  const readings = `data/sessions/${id}.csv`;

  /** The command on a copy of the raw files in which one text was changed. */
  function byCommand(file: string, edit: (text: string) => string, words: readonly string[] = []) {
    const folder = mkdtempSync(join(tmpdir(), 'by-hand-'));
    cpSync(join(dist, 'data'), join(folder, 'data'), { recursive: true });
    const [before, after] = [readFileSync(join(folder, file), 'utf8'), edit(readFileSync(join(folder, file), 'utf8'))];
    expect(after).not.toBe(before);
    writeFileSync(join(folder, file), after);
    const { stdout, stderr } = project.run('recompute', [folder, '--session', id, ...words]);
    rmSync(folder, { recursive: true });
    expect(stderr).toBe('');
    return Object.fromEntries(readRegister(stdout).figures.map((figure) => [figure.id, exact(figure)]));
  }

  const stated = (key: string): string => new RegExp(`^ *${key}: (.*)$`, 'm').exec(rigText)?.[1] ?? '';
  const restated = (key: string, to: string) => (text: string) =>
    text.replace(new RegExp(`^( *${key}:) .*$`, 'm'), `$1 ${to}`);

  const ASSUMPTIONS = [
    ['source-timer.refresh', 'refresh', '120'],
    ['observer.exposure', 'exposure', '1/250 s'],
    ['observer.readout', 'readout', '2 ms'],
    ['observer.source-row', 'source-row', '0.9'],
    ['observer.display-row', 'display-row', '0.1'],
    ['source-timer.clock-tolerance', 'clock-tolerance', '400 ppm'],
    ['digits-row', 'digits-row', '0.95'],
  ] as const;

  it('what rig and display are taken to be', async () => {
    await open(`session=${id}`);
    for (const [index, [path, key, to]] of ASSUMPTIONS.entries()) {
      expect(stated(key), `${rig} states ${key}`).not.toBe('');
      expect(await state(rig, path, to)).toMatch(new RegExp(`^Recomputed with ${index + 1} changes?\\.$`));
      expect(await page.locator('#changed li').last().textContent()).toBe(`${rig}, ${path}: ${stated(key)} → ${to}`);
    }
    const restateAll = (text: string): string => ASSUMPTIONS.reduce((so, [, key, to]) => restated(key, to)(so), text);
    expect(await exactIn(2)).toEqual(byCommand(rig, restateAll));
  });

  it('readings left out, restored and corrected, one run only, and another coverage', async () => {
    const [header = '', first = '', ...rest] = readFileSync(join(dist, readings), 'utf8').trimEnd().split('\n');
    await open(`session=${id}`);
    await page.click('summary:has-text("Readings of")');
    await change(() => page.uncheck('tr[data-line="2"] input[type="checkbox"]'));
    expect(await exactIn(2)).not.toEqual(await exactIn(1));
    expect(await change(() => page.check('tr[data-line="2"] input[type="checkbox"]'))).toMatch(/identical/);
    const cells = first.split(',');
    const shown = page.locator('tr[data-line="2"] input[aria-label^="shown"]');
    const corrected = (cells[2] ?? '').replace(/\d$/, (digit) => String((Number(digit) + 1) % 10));
    await change(async () => {
      await shown.fill(corrected);
      await shown.press('Tab');
    });
    await change(() => page.selectOption('#changing details select', '1'));
    await change(async () => {
      await page.fill('#level', '99');
      await page.press('#level', 'Tab');
    });
    const byHand = [header, [cells[0], cells[1], corrected, ...cells.slice(3)].join(','), ...rest, '']
      .join('\n')
      .replace(/^([2-9],[^,]*,[^,]*),,/gm, '$1,left out by a reader,');
    expect(await exactIn(2)).toEqual(byCommand(readings, () => byHand, ['--level', '0.99']));
  });

  it('the latency of a display, in the figures of the chain', async () => {
    const display = demonstrationSite()
      .files.filter((path) => path.startsWith('data/displays/') && path.endsWith('.md'))
      .find((path) => /^latency:/m.test(read(path)))!;
    await open('all');
    expect(await state(display, 'latency.value', '9 ms')).toBe('Recomputed with 1 change.');
    const folder = mkdtempSync(join(tmpdir(), 'by-hand-'));
    cpSync(join(project.root, 'data'), join(folder, 'data'), { recursive: true });
    cpSync(join(project.root, 'content'), join(folder, 'content'), { recursive: true });
    // Write-ups may claim what does not hold any more.
    rmSync(join(folder, 'content/reports'), { recursive: true });
    rmSync(join(folder, 'content/ledger'), { recursive: true });
    writeFileSync(join(folder, display), read(display).replace(/(latency:[^]*?value: )[^,\n]*/, '$19 ms'));
    const { stdout } = project.run('figures', ['--data', join(folder, 'data'), '--content', join(folder, 'content')]);
    rmSync(folder, { recursive: true });
    const ofChain = readRegister(stdout).figures.filter(({ kind }) => ['element', 'bracket'].includes(kind));
    const moved = ofChain.filter(
      ({ id: one, text }) => text !== register.figures.find((each) => each.id === one)?.text,
    );
    expect(moved.length).toBeGreaterThan(0);
    const shown = await exactIn(2);
    expect(moved.map((figure) => [figure.id, shown[figure.id]])).toEqual(
      moved.map((figure) => [figure.id, exact(figure)]),
    );
  });

  it('what makes no sense is said with its file, and published figures stay', async () => {
    await open(`session=${id}`);
    expect(await state(rig, 'source-timer.refresh', 'fast')).toContain(`${rig}:`);
    expect(await page.locator('tr[data-same="identical"]').count()).toBeGreaterThan(9);
  });
});

describe('without a network', () => {
  const [id = ''] = sessions;

  it('works after the first visit', async () => {
    const context = await browser.newContext();
    const first = await context.newPage();
    await first.goto(`${server.home}recompute/?session=${id}`);
    await first.waitForFunction(() => document.documentElement.dataset['kept'] !== undefined);
    await first.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await context.setOffline(true);
    await first.goto(`${server.home}recompute/?session=${sessions.at(-1)}`);
    expect(await status(first)).toMatch(/figures identical to the last digit\.$/);
    await context.close();
  });

  it('works from a disk, with the folder of the saved site', async () => {
    const saved = await browser.newPage();
    await saved.goto(`${pathToFileURL(join(dist, 'recompute/index.html')).href}?session=${id}`);
    await saved.setInputFiles('#site-folder', dist);
    expect(await status(saved)).toMatch(/figures identical to the last digit\.$/);
    await saved.close();
  });

  it('and without script, the page names the command', async () => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const plain = await context.newPage();
    await plain.goto(`${server.home}recompute/`);
    expect(await plain.locator('#without-script').isVisible()).toBe(true);
    expect(await plain.textContent('#without-script')).toContain('npm run recompute -- FOLDER');
    expect(await plain.locator('#ask').isVisible()).toBe(false);
    await context.close();
  });
});

it('the script asked for files of the site alone, and nothing went wrong', () => {
  expect(requests.length).toBeGreaterThan(100);
  const own = [server.origin, 'http://127.0.0.1:'];
  expect(requests.filter((url) => !own.some((one) => url.startsWith(one)))).toEqual([]);
  expect(faults).toEqual([]);
});

it('has only its own script, held by its content policy, and no page but it and the search has one', () => {
  const { pages } = demonstrationSite();
  expect(
    pages.filter(({ html }) => /<script(?! type="application\/ld\+json">)/i.test(html)).map(({ path }) => path),
  ).toEqual(['/recompute/', '/search/']);
  const { html } = pages.find(({ path }) => path === '/recompute/')!;
  expect(html).toContain("script-src 'self'; connect-src 'self'; worker-src 'self'\"");
  expect([...html.matchAll(/<script(?! type="application\/ld\+json">)[^>]*>/g)].map(([tag]) => tag)).toEqual([
    '<script defer src="facts.js">',
    '<script defer src="recompute.js">',
  ]);
});

it('every session, entry and comparison leads to it', () => {
  const { pages } = demonstrationSite();
  const entries = pages.filter(({ path }) => /^\/(?:sessions|figures)\/./.test(path));
  expect(entries.length).toBeGreaterThan(50);
  for (const { path, html } of entries) {
    const entered = new Set([...html.matchAll(/data-of-figure="([^"]+)"/g)].map(([, one]) => one));
    const links = [...html.matchAll(/href="[./]*recompute\/\?(?:session|figure)=[^"]+"/g)];
    expect(links.length, path).toBeGreaterThanOrEqual(entered.size);
  }
});
