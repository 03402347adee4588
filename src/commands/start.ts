/** `npm start`: compiles the site, serves it, and says where. */
import { preview } from 'astro';
import { describeReport } from './build-report.ts';
import { buildSite } from './build-site.ts';
import { outputFolder } from './output-folder.ts';
import { portOf, runCommand } from './run.ts';
import { say } from './say.ts';
import { publicationFolder, TOOL } from '../site/publication.ts';

const USAGE = `Usage: npm start [-- --port NUMBER] [--host ADDRESS] [--output DIR]

  --port NUMBER   serve on this port; without it, on 4321 or the next free one
  --host ADDRESS  serve on this address; without it, to this machine only (127.0.0.1)
  --output DIR    build into this folder; without it, into dist/`;

const OPTIONS = { port: { type: 'string' }, host: { type: 'string' }, output: { type: 'string' } } as const;

await runCommand(USAGE, OPTIONS, async ({ port: wanted = '4321', host = '127.0.0.1', output: said }) => {
  const port = portOf(wanted);
  const root = publicationFolder();
  const output = await outputFolder(root, said);
  const { report, seconds } = await buildSite({ root, output });
  say(`Compiled ${report.title}\n${describeReport(report, seconds)}\n`);
  const server = await preview({ root: TOOL, outDir: output.path, server: { port, host }, logLevel: 'error' });
  say(`Serving at http://${host}:${server.port}/\nStop with Ctrl+C.`);
});
