import { performance } from 'node:perf_hooks';
import { chromium, type Page } from 'playwright-core';
import { rate } from '../../src/model/rate.ts';
import { renderNewSession } from '../../src/planning/render-session.ts';
import { writeBenchFolder } from '../support/bench-folder.ts';
import { findChromium, launchOptions } from '../support/chromium.ts';
import { startDevServer } from '../support/dev-server.ts';
import { makeClip, shownFrame, stampsOf, type Stamps } from '../support/made-clip.ts';
import { copyProject } from '../support/project-copy.ts';
import { describeSpread, printTable, runMeasured } from './measure.ts';

const ID = 'vennick-24-a';
const [CLIPS, READINGS, FRAMES] = [3, 8, 240];

/** A session taken on its page by a machine that types at once: keys, answers, and the way from opening it to the built page. */
export async function benchReadings(): Promise<void> {
  const { front, readings } = renderNewSession({
    id: ID,
    body: 'vennick',
    rig: 'balcony',
    method: 'two-timers',
    condition: { settings: { rate: '24' }, rate: rate(24) },
    plan: { runs: CLIPS, readings: READINGS, spacingMs: 200 },
    position: 1,
    of: 1,
  });
  using folder = writeBenchFolder({ [`data/sessions/${ID}.md`]: front, [`data/sessions/${ID}.csv`]: readings });
  using copy = copyProject();
  await using server = await startDevServer(copy.root, folder.root);
  await using browser = await chromium.launch(launchOptions(await findChromium()));
  const page = await browser.newPage();
  await page.goto(`${server.origin}/take-readings/`);
  await page.waitForSelector('#sessions button');
  const rig = { observerHz: 120, timerHz: 60, bodyHz: 24, pipelineMs: 150, timerPhaseMs: 4 };
  const clips = await Promise.all(
    Array.from({ length: CLIPS }, async (_, clip) => {
      const stamps = stampsOf({ ...rig, bodyPhaseMs: 9 + 11 * clip, startMs: 12_217 + 47_011 * clip }, FRAMES);
      return { stamps, bytes: await makeClip(page, stamps, rig.observerHz) };
    }),
  );
  const start = performance.now();
  await page
    .getByRole('button', { name: /24 frames\/s/ })
    .first()
    .click();
  await page.waitForSelector('#date:visible');
  await page.focus('#firmware');
  await page.keyboard.press('Enter');
  await page.waitForSelector('#first:visible');
  let [keys, byHand] = [0, 0];
  const answers: number[] = [];
  for (const [index, { stamps, bytes }] of clips.entries()) {
    await page.setInputFiles('#clip-file', { name: `clip-${index}.webm`, mimeType: 'video/webm', buffer: bytes });
    for (let reading = 0; reading < READINGS; reading += 1) {
      await atMoment(page, index + 1, reading + 1);
      const stamp = stamps[await shownFrame(page)];
      if (stamp === undefined) throw new Error('the page shows a frame that is not in the clip');
      keys += (await typeRest(page, stamp)) + 1;
      byHand += `${index + 1},${stamp.source},${stamp.shown},,\n`.length;
      const asked = performance.now();
      await page.keyboard.press('Enter');
      await page.waitForFunction(
        (rows) => document.querySelectorAll('#readings tr').length === rows,
        index * READINGS + reading + 1,
      );
      answers.push(performance.now() - asked);
    }
  }
  const typedSeconds = (performance.now() - start) / 1000;
  process.env['LAGFOLIO_PUBLICATION'] = folder.root;
  const { seconds } = runMeasured(copy.root, 'src/commands/build.ts');
  delete process.env['LAGFOLIO_PUBLICATION'];
  const all = CLIPS * READINGS;
  printTable(`A session of ${CLIPS} clips of ${READINGS} readings, on the page where readings are taken`, [
    ['keys for a reading', (keys / all).toFixed(1)],
    ['the same row typed into the file', (byHand / all).toFixed(1)],
    ['from Enter to the next reading', describeSpread(answers, 'ms', 0)],
    ['from opening the session to its last reading', `${typedSeconds.toFixed(1)} s`],
    ['from there to the built page', `${seconds.toFixed(1)} s`],
  ]);
}

async function atMoment(page: Page, clip: number, moment: number): Promise<void> {
  await page.waitForFunction(
    ([which, place]) =>
      document.querySelector('#which')?.textContent === which &&
      document.querySelector('#place')?.textContent?.endsWith(place ?? ''),
    [`Clip ${clip}, reading ${moment}`, `moment ${moment} of ${READINGS}`],
  );
}

/** Digits that do not stand there already; how many. */
async function typeRest(page: Page, { source, shown }: Stamps): Promise<number> {
  let typed = 0;
  for (const [field, stamp] of [
    ['#first', source],
    ['#second', shown],
  ] as const) {
    const there = (await page.inputValue(field)).replace(/\D/g, '');
    const rest = stamp.replace(/\D/g, '').slice(there.length);
    for (const digit of rest) await page.keyboard.press(digit);
    typed += rest.length;
  }
  return typed;
}
