/** `npm run pictures`: the charts of the built site as PNG, for video and print. */
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { keepResultsIn, sweepResults } from 'lagfolio/memory';
import { pictureName } from '../pictures/picture-name.ts';
import { drawPng } from '../pictures/draw-png.ts';
import { CHARTS } from '../register/paths.ts';
import { fromCaller, publicationFolder } from '../site/publication.ts';
import { cacheFolder } from './cache-folder.ts';
import { outputFolder } from './output-folder.ts';
import { CallError, runCommand } from './run.ts';
import { say } from './say.ts';

const USAGE = `Usage: npm run pictures -- FOLDER [--only WORDS]

Draws every chart of the site that was built last as PNG into a folder: 1920 × 1080, square, and upright for phones,
each light and dark. About a tenth of a second each; what was drawn before is taken from disk.

  FOLDER        is made where it is missing; pictures of the same names in it are replaced
  --only WORDS  only charts whose title holds these words`;

await runCommand(
  USAGE,
  { only: { type: 'string' } },
  async ({ only = '' }, [folder, ...others]) => {
    if (folder === undefined || others.length > 0) throw new CallError('say one folder for the pictures.');
    const root = publicationFolder();
    const charts = join((await outputFolder(root, undefined)).path, CHARTS);
    const ids = await readdir(charts).catch(() => undefined);
    if (ids === undefined) throw new CallError('there is no built site with charts: run npm run build first.');
    keepResultsIn(join(cacheFolder(root), 'results'));
    const into = resolve(fromCaller(folder));
    await mkdir(into, { recursive: true });
    let drawn = 0;
    for (const id of ids.sort()) {
      for (const file of (await readdir(join(charts, id))).filter((name) => name.endsWith('.svg')).sort()) {
        const svg = await readFile(join(charts, id, file), 'utf8');
        const name = pictureName(svg, id, file.replace(/\.svg$/, ''));
        if (!name.title.toLowerCase().includes(only.toLowerCase())) continue;
        await writeFile(join(into, name.file), await drawPng(svg));
        drawn += 1;
      }
    }
    sweepResults();
    if (drawn === 0) throw new CallError(`no chart has “${only}” in its title.`);
    say(`${drawn} pictures in ${into}`);
  },
  { takesWords: true },
);
