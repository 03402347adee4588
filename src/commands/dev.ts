/** `npm run dev`: serves the site while it is written. */
import { dev } from 'astro';
import { showDrafts } from 'lagfolio/site';
import { keepResultsIn, sweepResults } from 'lagfolio/memory';
import { resultsFolder } from './cache-folder.ts';
import { CallError, portOf, runCommand } from './run.ts';
import { publicationFolder, TOOL } from '../site/publication.ts';

const USAGE = `Usage: npm run dev [-- --port NUMBER] [--host ADDRESS]

  --port NUMBER   serve on this port; without it, on 4321 or the next free one
  --host ADDRESS  serve on this address; without it, to this machine only`;

await runCommand(USAGE, { port: { type: 'string' }, host: { type: 'string' } }, async ({ port, host }) => {
  const [mark] = /[#?]/.exec(TOOL) ?? [];
  if (mark !== undefined)
    throw new CallError(
      `npm run dev cannot work from a folder with ${mark} in its path, which the development server takes for the end of it: ${TOOL}. Rename or move the tool’s folder; that of a publication may have any name, and npm start and npm run build work as they are.`,
    );
  keepResultsIn(resultsFolder(publicationFolder()));
  sweepResults();
  showDrafts();
  await dev({
    root: TOOL,
    server: { ...(port === undefined ? {} : { port: portOf(port) }), ...(host === undefined ? {} : { host }) },
  });
});
