/** `npm run pictures`: the charts of the built site as PNG, for video and print. */
import { existsSync } from 'node:fs';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { keepResultsIn, sweepResults } from 'lagfolio/memory';
import { loadSite } from 'lagfolio/site';
import type { Bench } from '../model/bench.ts';
import { chartPictures } from '../pictures/chart-files.ts';
import { findCharts, type ShownChart } from '../pictures/find-charts.ts';
import { pictureName } from '../pictures/picture-name.ts';
import { drawPng } from '../pictures/draw-png.ts';
import { sessionPath } from '../register/paths.ts';
import { fromCaller, publicationFolder } from '../site/publication.ts';
import { builtPages } from './built-pages.ts';
import { resultsFolder } from './cache-folder.ts';
import { outputFolder } from './output-folder.ts';
import { chartSource } from './put-out-charts.ts';
import { CallError, runCommand } from './run.ts';
import { say } from './say.ts';

const USAGE = `Usage: npm run pictures -- FOLDER [--only WORDS] [--session ID …] [--svg]

Draws every chart of the site that was built last as PNG into a folder: 1920 × 1080, square, and upright for phones,
each light and dark. About a tenth of a second each; what was drawn before is taken from disk.

  FOLDER        is made where it is missing; pictures of the same names in it are replaced
  --only WORDS  only charts whose title holds these words
  --session ID  the charts of this session's readings, of which the site itself has no pictures; may be said again
  --svg         also as SVG`;

const NOT_BUILT = 'there is no built site with charts: run npm run build first.';

interface Found {
  readonly page: string;
  readonly chart: ShownChart;
}

await runCommand(
  USAGE,
  { only: { type: 'string' }, session: { type: 'string', multiple: true }, svg: { type: 'boolean' } },
  async ({ only = '', session, svg: keepsSvg = false }, [folder, ...others]) => {
    if (folder === undefined || others.length > 0) throw new CallError('say one folder for the pictures.');
    const root = publicationFolder();
    const dist = (await outputFolder(root, undefined)).path;
    keepResultsIn(resultsFolder(root));
    const source = chartSource(await loadSite());
    const into = resolve(fromCaller(folder));
    await mkdir(into, { recursive: true });
    let drawn = 0;
    for await (const { page, chart } of session === undefined
      ? picturedCharts(dist)
      : chartsOf(dist, source.bench, session)) {
      if (!chart.caption.toLowerCase().includes(only.toLowerCase())) continue;
      for (const { form, svg } of chartPictures(source, page, chart)) {
        const file = pictureName(chart, form);
        await writeFile(join(into, `${file}.png`), await drawPng(svg));
        if (keepsSvg) await writeFile(join(into, `${file}.svg`), svg);
        drawn += 1;
      }
    }
    sweepResults();
    if (drawn === 0) throw new CallError(`no chart has “${only}” in its title.`);
    say(`${drawn} pictures in ${into}`);
  },
  { takesWords: true },
);

/** Those of which the built site has a picture, each once. */
async function* picturedCharts(dist: string): AsyncGenerator<Found> {
  if (!existsSync(dist)) throw new CallError(NOT_BUILT);
  const done = new Set<string>();
  for await (const { path: page, html } of builtPages(dist))
    for (const chart of findCharts(html)) {
      if (!chart.pictured || done.has(chart.id)) continue;
      done.add(chart.id);
      yield { page, chart };
    }
}

/** The readings of sessions, as their pages in the built site draw them. */
async function* chartsOf(dist: string, bench: Bench, sessions: readonly string[]): AsyncGenerator<Found> {
  for (const session of sessions) {
    if (!bench.sessions.some(({ id }) => id === session))
      throw new CallError(`there is no session '${session}': its id is the name of its file in data/sessions.`);
    const page = sessionPath(session);
    const html = await readFile(join(dist, page, 'index.html'), 'utf8').catch(() => undefined);
    if (html === undefined) throw new CallError(NOT_BUILT);
    for (const chart of findCharts(html)) yield { page, chart };
  }
}
