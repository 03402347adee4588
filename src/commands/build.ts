/** `npm run build`: compiles data/ and content/ into dist/. */
import { resolve } from 'node:path';
import { describeReport } from './build-report.ts';
import { buildSite } from './build-site.ts';
import { outputFolder } from './output-folder.ts';
import { runCommand } from './run.ts';
import { say } from './say.ts';
import { publicationFolder, TOOL } from '../site/publication.ts';

const USAGE = `Usage: npm run build [-- --strict] [--fresh] [--output DIR]

  --strict      refuse to publish a number that moved since it was last recorded (npm run record), and a
                quantity that was typed by hand
  --fresh       compute, draw and write everything anew, whatever is kept of earlier builds
  --output DIR  build into this folder; without it, into dist/`;

const OPTIONS = { strict: { type: 'boolean' }, fresh: { type: 'boolean' }, output: { type: 'string' } } as const;

await runCommand(USAGE, OPTIONS, async ({ strict = false, fresh = false, output: said }) => {
  const root = publicationFolder();
  const output = await outputFolder(root, said);
  const { report, seconds } = await buildSite({ root, output, strict, fresh });
  say(
    `Compiled ${report.title} into ${root === resolve(TOOL) ? `${output.name}/` : output.path}\n${describeReport(report, seconds)}`,
  );
});
