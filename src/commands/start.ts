/** `npm start`: compiles the site, serves it, and says where. */
import { preview } from 'astro';
import { buildSite } from './build-site.ts';
import { runCommand } from './run.ts';
import { describeSummary } from './summary.ts';

const USAGE = `Usage: npm start [-- --port NUMBER] [--host ADDRESS]

  --port NUMBER   serve on this port; without it, on 4321 or the next free one
  --host ADDRESS  serve on this address; without it, to this machine only (127.0.0.1)`;

await runCommand(
  USAGE,
  { port: { type: 'string', default: '4321' }, host: { type: 'string', default: '127.0.0.1' } },
  async ({ port = '4321', host = '127.0.0.1' }) => {
    const root = process.cwd();
    const summary = await buildSite(root);
    console.log(`Compiled ${summary.bench.site.title}\n${describeSummary(summary)}\n`);
    const server = await preview({ root, server: { port: Number(port), host }, logLevel: 'error' });
    console.log(`Serving at http://${host}:${server.port}/\nStop with Ctrl+C.`);
  },
);
