/** `npm run pictures`: the charts of the built site as PNG, for video and print. */
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { basename, join, resolve } from 'node:path';
import { keepResultsIn, sweepResults } from 'lagfolio/memory';
import { loadSite } from 'lagfolio/site';
import { chartPictures } from '../pictures/chart-files.ts';
import { findCharts } from '../pictures/find-charts.ts';
import { pictureName } from '../pictures/picture-name.ts';
import { drawPng } from '../pictures/draw-png.ts';
import { CHARTS, sessionPath } from '../register/paths.ts';
import { fromCaller, publicationFolder } from '../site/publication.ts';
import { cacheFolder } from './cache-folder.ts';
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
  --svg         also as SVG, as the site has the others`;

const NOT_BUILT = 'there is no built site with charts: run npm run build first.';

interface Picture {
  /** Of the chart. */
  readonly id: string;
  /** `square-dark` */
  readonly form: string;
  readonly svg: string;
}

await runCommand(
  USAGE,
  { only: { type: 'string' }, session: { type: 'string', multiple: true }, svg: { type: 'boolean' } },
  async ({ only = '', session, svg: keepsSvg = false }, [folder, ...others]) => {
    if (folder === undefined || others.length > 0) throw new CallError('say one folder for the pictures.');
    const root = publicationFolder();
    const dist = (await outputFolder(root, undefined)).path;
    keepResultsIn(join(cacheFolder(root), 'results'));
    const into = resolve(fromCaller(folder));
    await mkdir(into, { recursive: true });
    let drawn = 0;
    for await (const { id, form, svg } of session === undefined ? publishedPictures(dist) : readingsOf(dist, session)) {
      const { title, file } = pictureName(svg, id, form);
      if (!title.toLowerCase().includes(only.toLowerCase())) continue;
      await writeFile(join(into, `${file}.png`), await drawPng(svg));
      if (keepsSvg) await writeFile(join(into, `${file}.svg`), svg);
      drawn += 1;
    }
    sweepResults();
    if (drawn === 0) throw new CallError(`no chart has “${only}” in its title.`);
    say(`${drawn} pictures in ${into}`);
  },
  { takesWords: true },
);

/** Those that the built site has. */
async function* publishedPictures(dist: string): AsyncGenerator<Picture> {
  const charts = join(dist, CHARTS);
  const ids = await readdir(charts).catch(() => undefined);
  if (ids === undefined) throw new CallError(NOT_BUILT);
  for (const id of ids.sort())
    for (const file of (await readdir(join(charts, id))).filter((name) => name.endsWith('.svg')).sort())
      yield { id, form: basename(file, '.svg'), svg: await readFile(join(charts, id, file), 'utf8') };
}

/** The readings of sessions, as their pages in the built site draw them. */
async function* readingsOf(dist: string, sessions: readonly string[]): AsyncGenerator<Picture> {
  const source = chartSource(await loadSite());
  for (const session of sessions) {
    if (!source.bench.sessions.some(({ id }) => id === session))
      throw new CallError(`there is no session '${session}': its id is the name of its file in data/sessions.`);
    const page = sessionPath(session);
    const html = await readFile(join(dist, page, 'index.html'), 'utf8').catch(() => undefined);
    if (html === undefined) throw new CallError(NOT_BUILT);
    for (const chart of findCharts(html))
      for (const { path, text } of chartPictures(source, page, chart))
        yield { id: chart.id, form: basename(path, '.svg'), svg: text };
  }
}
