import { performance } from 'node:perf_hooks';
import { chromium } from 'playwright-core';
import { findChromium, launchOptions } from '../support/chromium.ts';
import { startDevServer } from '../support/dev-server.ts';
import { copyProject } from '../support/project-copy.ts';
import { writeGeneratedBench, writeUpId } from './generated-bench.ts';
import { describeRatio, describeSpread, printTable } from './measure.ts';

const SIZES = [30, 500];
const WRITE_UPS = 10;
const SAVES = 11;
const AIM_MS = 500;

/** From saving a file to seeing the change in the open page, with the development server and a real browser. */
export async function benchLive(): Promise<void> {
  const path = await findChromium();
  const ofSize = new Map<number, Readonly<Record<'readings' | 'writeUp', readonly number[]>>>();
  for (const sessions of SIZES) ofSize.set(sessions, await measureSaves(sessions, path));
  const rows = [...ofSize].flatMap(([sessions, { readings, writeUp }]): [string, string][] => [
    [`${sessions} sessions, a reading`, `${describeSpread(readings, 'ms', 0)} (aim: at most ${AIM_MS} ms)`],
    [`${sessions} sessions, a write-up`, describeSpread(writeUp, 'ms', 0)],
  ]);
  const [few, many] = SIZES.map((size) => ofSize.get(size)?.readings ?? []);
  printTable(`From save to updated page (${SAVES - 1} saves each)`, [
    ...rows,
    [`${SIZES[1]} sessions to ${SIZES[0]}, a reading`, describeRatio(many ?? [], few ?? [])],
  ]);
}

async function measureSaves(
  sessions: number,
  executablePath: string,
): Promise<Record<'readings' | 'writeUp', readonly number[]>> {
  using copy = copyProject();
  const [session] = writeGeneratedBench(copy.root, { sessions, writeUps: WRITE_UPS });
  await using server = await startDevServer(copy.root);
  await using browser = await chromium.launch(launchOptions(executablePath));
  const page = await browser.newPage();
  /** Saves over and over, each time with another text that the page must show; the first save is a warm-up. */
  const save = async (address: string, write: (text: string) => void): Promise<readonly number[]> => {
    await page.goto(server.origin + address);
    const milliseconds: number[] = [];
    for (let count = 0; count < SAVES; count += 1) {
      // until the page hears of changes
      await page.waitForLoadState('networkidle');
      const text = `saved ${count} times`;
      const start = performance.now();
      write(text);
      await page.waitForFunction((wanted) => document.body?.textContent?.includes(wanted), text, {
        polling: 5,
        timeout: 60_000,
      });
      milliseconds.push(performance.now() - start);
    }
    return milliseconds.slice(1);
  };
  const csv = `data/sessions/${session?.id}.csv`;
  const mdx = `content/reports/${writeUpId(0)}.mdx`;
  const [readings, prose] = [copy.read(csv), copy.read(mdx)];
  return {
    readings: await save(`/sessions/${session?.id}/`, (text) =>
      copy.write(csv, readings.replace(',,\n', `,,${text}\n`)),
    ),
    writeUp: await save(`/reports/${writeUpId(0)}/`, (text) => copy.write(mdx, `${prose}\n${text}\n`)),
  };
}
