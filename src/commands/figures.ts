/** `npm run figures`: prints the register without building a site. */
import { join } from 'node:path';
import { compileSite } from '../figures/compile.ts';
import { renderRegister } from '../figures/render-register.ts';
import { runCommand } from './run.ts';

const USAGE = `Usage: npm run figures [-- --data DIR] [--content DIR]

  --data DIR     read sessions and rigs from here instead of data/
  --content DIR  read write-ups from here instead of content/`;

await runCommand(USAGE, { data: { type: 'string' }, content: { type: 'string' } }, async ({ data, content }) => {
  const root = process.cwd();
  const { register } = await compileSite({ root, dataDir: data ?? join(root, 'data'), contentDir: content ?? join(root, 'content') });
  process.stdout.write(renderRegister(register));
});
