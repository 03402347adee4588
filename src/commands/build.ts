/** `npm run build`: compiles data/ and content/ into dist/. */
import { buildSite } from './build-site.ts';
import { runCommand } from './run.ts';
import { describeSummary } from './summary.ts';

const USAGE = `Usage: npm run build [-- --strict]

  --strict  refuse to publish a number that moved since it was last recorded (npm run record)`;

await runCommand(USAGE, { strict: { type: 'boolean' } }, async ({ strict }) => {
  const summary = await buildSite(process.cwd(), { strict: strict === true });
  console.log(`Compiled ${summary.bench.site.title} into dist/\n${describeSummary(summary)}`);
});
