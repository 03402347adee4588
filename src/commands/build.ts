/** `npm run build`: compiles data/ and content/ into dist/. */
import { buildSite } from './build-site.ts';
import { runCommand } from './run.ts';
import { describeSummary } from './summary.ts';

await runCommand('Usage: npm run build', {}, async () => {
  const summary = await buildSite(process.cwd());
  console.log(`Compiled ${summary.bench.site.title} into dist/\n${describeSummary(summary)}`);
});
