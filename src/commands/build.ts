/** `npm run build`: compiles data/ and content/ into dist/. */
import { buildSite } from './build-site.ts';
import { outputFolder } from './output-folder.ts';
import { runCommand } from './run.ts';
import { say } from './say.ts';
import { describeSummary } from './summary.ts';

const USAGE = `Usage: npm run build [-- --strict] [--output DIR]

  --strict      refuse to publish a number that moved since it was last recorded (npm run record)
  --output DIR  build into this folder; without it, into dist/`;

const OPTIONS = { strict: { type: 'boolean' }, output: { type: 'string' } } as const;

await runCommand(USAGE, OPTIONS, async ({ strict = false, output: said }) => {
  const root = process.cwd();
  const output = await outputFolder(root, said);
  const summary = await buildSite({ root, output, strict });
  say(`Compiled ${summary.bench.site.title} into ${output.name}/\n${describeSummary(summary)}`);
});
