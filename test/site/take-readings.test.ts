/**
 * The page on which readings are taken, in a real browser: a clip with known stamps is opened, stepped and typed in.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, it } from 'vitest';
import { rate } from '../../src/model/rate.ts';
import { renderNewSession } from '../../src/planning/render-session.ts';
import { compileRegister } from '../../src/site/compile.ts';
import { writeBenchFolder, type BenchFolder } from '../support/bench-folder.ts';
import { launchOptions } from '../support/chromium.ts';
import { startDevServer, type DevServer } from '../support/dev-server.ts';
import { makeClip, shownFrame, stampsOf, type FilmedRig, type Stamps } from '../support/made-clip.ts';
import { copyProject, type ProjectCopy } from '../support/project-copy.ts';
import { overflowPx } from './in-page.ts';

const ID = 'vennick-24-a';
const CLIPS = 3;
const READINGS = 8;
const FRAMES = 240;
/** As the rig of the bench has it: a timer at 60, an observer at 120, a display that follows its input. */
const RIGS: readonly FilmedRig[] = [
  { timerPhaseMs: 4, bodyPhaseMs: 9, startMs: 12_217 },
  { timerPhaseMs: 11, bodyPhaseMs: 30, startMs: 58_400 },
  { timerPhaseMs: 7, bodyPhaseMs: 21, startMs: 125_003 },
].map((phases) => ({ ...phases, observerHz: 120, timerHz: 60, bodyHz: 24, pipelineMs: 150 }));

let copy: ProjectCopy;
let folder: BenchFolder;
let server: DevServer;
let browser: Browser;
let page: Page;
const clips: { readonly stamps: readonly Stamps[]; readonly bytes: Buffer }[] = [];
const errors: string[] = [];
/** Of every reading that was typed. */
let keys = 0;

beforeAll(async () => {
  const { front, readings } = renderNewSession({
    id: ID,
    body: 'vennick',
    rig: 'balcony',
    method: 'two-timers',
    condition: { settings: { rate: '24', 'bit-depth': '10' }, rate: rate(24) },
    plan: { runs: CLIPS, readings: READINGS, spacingMs: 200 },
    position: 1,
    of: 1,
  });
  folder = writeBenchFolder({ [`data/sessions/${ID}.md`]: front, [`data/sessions/${ID}.csv`]: readings });
  copy = copyProject({ builtAs: inject('builtProject') });
  server = await startDevServer(copy.root, folder.root);
  browser = await chromium.launch(launchOptions(inject('chromium')));
  page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  page.setDefaultTimeout(60_000);
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto(`${server.origin}/take-readings/`, { timeout: 60_000 });
  await page.waitForSelector('#sessions button');
  // at once: most of the time is spent waiting for the encoder
  const made = RIGS.map(async (rig) => {
    const stamps = stampsOf(rig, FRAMES);
    return { stamps, bytes: await makeClip(page, stamps, rig.observerHz) };
  });
  clips.push(...(await Promise.all(made)));
});
afterAll(async () => {
  await browser?.close();
  await server?.[Symbol.asyncDispose]();
  copy?.[Symbol.dispose]();
  folder?.[Symbol.dispose]();
});

const csv = (): string => readFileSync(join(folder.root, `data/sessions/${ID}.csv`), 'utf8');
const text = (selector: string): Promise<string> => page.locator(selector).innerText();
const value = (selector: string): Promise<string> => page.locator(selector).inputValue();

async function press(key: string): Promise<void> {
  keys += 1;
  await page.keyboard.press(key);
}

/** Types what is missing of a stamp in the field that has the focus, by digits alone. */
async function typeRest(selector: string, stamp: string): Promise<void> {
  const there = (await value(selector)).replace(/\D/g, '');
  const digits = stamp.replace(/\D/g, '');
  expect(digits.startsWith(there), `${there} stands there already, of ${stamp}`).toBe(true);
  for (const digit of digits.slice(there.length)) await press(digit);
}

async function typeReading({ source, shown }: Stamps): Promise<void> {
  await typeRest('#first', source);
  await typeRest('#second', shown);
  await press('Enter');
}

/** Waits until a picture is drawn whose frame the page names. */
async function settled(): Promise<number> {
  await page.waitForFunction(() => {
    const slider = document.querySelector<HTMLInputElement>('#slider')!;
    return document.querySelector('#place')!.textContent?.startsWith(`Frame ${Number(slider.value) + 1} `);
  });
  return Number(await value('#slider'));
}

it('reads back what is set, in large type, and asks for what is missing', async () => {
  await page
    .getByRole('button', { name: /24 frames\/s/ })
    .first()
    .click();
  await page.waitForSelector('#date:visible');
  expect(await text('#settings')).toMatch(/Vennick Q4[\s\S]*Frame rate\s+24[\s\S]*Bit depth\s+10/);
  const size = await page
    .locator('#settings dd')
    .first()
    .evaluate((node) => parseFloat(getComputedStyle(node).fontSize));
  expect(size).toBeGreaterThan(24);
  await page.fill('#firmware', '1.40');
  await page.keyboard.press('Enter');
  await page.waitForSelector('#first:visible');
});

it('shows every frame of the clip, forwards and backwards', async () => {
  await page.setInputFiles('#clip-file', { name: 'one.webm', mimeType: 'video/webm', buffer: clips[0]!.bytes });
  await page.waitForSelector('#picture:visible');
  expect(await text('#clip-says')).toContain(`${FRAMES} frames`);
  const start = await settled();
  expect(await shownFrame(page)).toBe(start);
  for (const [key, by] of [
    ['+', 1],
    ['-', -1],
  ] as const)
    for (let step = 1; step <= 40; step += 1) {
      const from = Number(await value('#slider'));
      await page.keyboard.press(key);
      await page.waitForFunction(
        (next) => document.querySelector('#place')!.textContent?.startsWith(`Frame ${next} `),
        from + by + 1,
      );
      expect(await shownFrame(page)).toBe(from + by);
    }
  expect(await settled()).toBe(start);
});

it('takes a session of three clips by numeric keys alone, and each reading is on disk before the next', async () => {
  const expected: string[] = [];
  const began = performance.now();
  keys = 0;
  for (const [index, { stamps, bytes }] of clips.entries()) {
    if (index > 0) {
      await page.setInputFiles('#clip-file', { name: `clip-${index}.webm`, mimeType: 'video/webm', buffer: bytes });
      await page.waitForFunction(
        (run) => document.querySelector('#which')!.textContent === `Clip ${run}, reading 1`,
        index + 1,
      );
      await page.waitForSelector('#picture:visible');
    }
    for (let reading = 0; reading < READINGS; reading += 1) {
      await page.waitForFunction(
        (words) => document.querySelector('#place')!.textContent?.endsWith(words),
        `moment ${reading + 1} of ${READINGS}`,
      );
      const stamp = stamps[await shownFrame(page)]!;
      await typeReading(stamp);
      expected.push(`${index + 1},${stamp.source},${stamp.shown},,`);
      await page.waitForFunction((rows) => document.querySelectorAll('#readings tr').length === rows, expected.length);
      expect(csv().trim().split('\n').slice(1)).toEqual(expected);
      expect(await text('#alarm')).toBe('');
    }
  }
  const seconds = (performance.now() - began) / 1000;
  const byHand = expected.reduce((sum, line) => sum + line.length + 1, 0);
  console.log(
    `${expected.length} readings: ${keys} keys, by hand in the file ${byHand}; ${seconds.toFixed(1)} s with a machine typing`,
  );
  expect(keys).toBeLessThan(byHand / 2);
  expect(await text('#progress')).toContain('all that was planned');
}, 240_000);

it('says the same total as a build, and it holds what is known of the clips', async () => {
  const figure = compileRegister(await folder.read()).figures.find(({ id }) => id === `total/${ID}`)!;
  expect(await text('#total')).toBe(figure.text);
  // the mean age of what is visible: pipeline and half a frame of the body; the rig's rows and scan-out are corrections
  // on top
  const corrections = (figure.corrections ?? []).reduce((sum, correction) => sum + correction.value, 0);
  const known = 150 + 1000 / 24 / 2 + corrections;
  expect(Math.abs(figure.value - known)).toBeLessThan(figure.interval!.high - figure.value);
  await page.waitForFunction(() => document.querySelector('#advice')!.textContent !== '');
  expect(await text('#advice')).toMatch(/By simulation on this rig/);
  expect(await text('#agreement')).toMatch(/clips (?:agree|may differ)/);
});

it('says what is impossible or unlikely before the next reading, and keeps what is typed', async () => {
  const before = csv();
  await page.keyboard.press('n');
  await page.locator('#first').fill('00:12.217');
  await page.locator('#second').fill('00:12.900');
  expect(await text('#latency')).toContain('not possible');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.querySelector('#alarm')!.textContent?.includes('later than the source'));
  expect(csv()).toBe(before);
  expect(await value('#second')).toBe('00:12.900');
  // from the end: digit by digit over what stands between them
  for (let back = 0; back < 4; back += 1) await page.keyboard.press('Backspace');
  await page.keyboard.type('2055');
  expect(await value('#second')).toBe('00:12.055');
  await page.keyboard.press('Enter');
});

it('keeps a reading that cannot be read, with its reason, by one key; undoes it, and gives back its digits', async () => {
  await page.waitForFunction(() => document.querySelector('#which')!.textContent === 'Clip 4, reading 2');
  const before = csv();
  await page.keyboard.press('/');
  await page.keyboard.press('*');
  await page.waitForFunction(() => document.querySelector('#which')!.textContent === 'Clip 4, reading 3');
  expect(csv()).toBe(`${before}4,,,blurred,\n`);
  for (const left of ['reading 2', 'reading 1']) {
    await page.keyboard.press('u');
    await page.waitForFunction((words) => document.querySelector('#which')!.textContent === `Clip 4, ${words}`, left);
  }
  expect(await value('#first')).toBe('00:12.217');
  expect(csv()).not.toContain('\n4,');
});

it('tells of a change made elsewhere, loses neither, and keeps what is typed over a reload', async () => {
  writeFileSync(join(folder.root, `data/sessions/${ID}.csv`), `${csv()}4,00:01.500,00:01.320,,\n`);
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.querySelector('#alarm')!.textContent?.includes('changed elsewhere'));
  expect(csv()).toMatch(/4,00:01\.500,00:01\.320,,\n$/);
  await page.reload();
  await page.waitForFunction(() => document.querySelector<HTMLInputElement>('#first')!.value === '00:12.217');
  await page.locator('#second').focus();
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => document.querySelectorAll('#readings tr').length === 26);
  expect(csv()).toMatch(/4,00:01\.500,00:01\.320,,\n4,00:12\.217,00:12\.055,,\n$/);
});

it('cannot be written through by another site in the browser', async () => {
  const before = csv();
  const elsewhere = await browser.newPage();
  await elsewhere.goto(server.origin.replace('127.0.0.1', 'localhost'), { waitUntil: 'networkidle' });
  const answers = await elsewhere.evaluate(async (origin) => {
    const ask = (path: string, init: RequestInit) =>
      fetch(`${origin}/take-readings/${path}`, init).then(
        ({ type, status }) => `${type} ${status}`,
        () => 'refused',
      );
    const body = JSON.stringify({ id: 'a', base: '', run: 1, cells: {} });
    return [
      await ask('', {}),
      await ask('api/sessions/', {}),
      await ask('api/add/', { method: 'POST', body, headers: { 'Content-Type': 'application/json' } }),
      await ask('api/add/', { method: 'POST', body, mode: 'no-cors' }),
    ];
  }, server.origin);
  expect(answers).toEqual(['refused', 'refused', 'refused', 'opaque 0']);
  expect(csv()).toBe(before);
  await elsewhere.close();
});

it('says of a clip that it cannot show what helps, and takes readings all the same', async () => {
  await page.setInputFiles('#clip-file', {
    name: 'notes.mp4',
    mimeType: 'video/mp4',
    buffer: Buffer.from('no video at all'),
  });
  await page.waitForFunction(() =>
    document.querySelector('#clip-says')!.textContent?.includes('no video that can be read'),
  );
  expect(await page.locator('#first').isVisible()).toBe(true);
});

it.each(['light', 'dark'] as const)(
  'is as accessible as the site, and no wider than its window (%s)',
  async (colorScheme) => {
    await page.emulateMedia({ colorScheme });
    await page.setInputFiles('#clip-file', { name: 'one.webm', mimeType: 'video/webm', buffer: clips[0]!.bytes });
    await page.waitForSelector('#picture:visible');
    await settled();
    await page.evaluate(axe.source);
    const { violations } = await page.evaluate(() => (globalThis as unknown as { axe: typeof axe }).axe.run());
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`)).toEqual([]);
    for (const width of [360, 768, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      expect(await page.evaluate(overflowPx)).toBe(0);
    }
  },
);

it('met no error on the page', () => expect(errors).toEqual([]));

it('is no part of a published site', () => {
  const dist = join(inject('builtProject'), 'dist');
  expect(existsSync(join(dist, 'index.html'))).toBe(true);
  const files = readdirSync(dist, { recursive: true, encoding: 'utf8' });
  expect(files.length).toBeGreaterThan(100);
  expect(files.filter((path) => /take-readings|mediabunny/.test(path))).toEqual([]);
  const linked = /(?:src|href)="[^"]*take-readings|mediabunny|VideoDecoder/;
  const texts = files.filter((path) => /\.(?:html|js)$/.test(path));
  expect(texts.filter((path) => linked.test(readFileSync(join(dist, path), 'utf8')))).toEqual([]);
});
