/** `npm run begin`: a publication of one's own in a folder that is empty or new. */
import { lstat, readdir, realpath } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { errorCode, isInside } from '../ingest/read-source.ts';
import { fromCaller, TOOL } from '../site/publication.ts';
import { filesToBegin } from './begun-files.ts';
import { finishEarlier } from './finish-earlier.ts';
import { CallError, runCommand } from './run.ts';
import { say } from './say.ts';
import { whileWriting } from './write-all.ts';

const USAGE = `Usage: npm run begin -- DIR

  DIR  a folder that is empty or not there yet, outside the tool's own

Writes what a publication begins with: its name, the settings of its bench, a body, a display, a rig, one planned
session and the notes on method. Each file says in comments what belongs into it and why.`;

/** What a folder may hold and be empty all the same: version control, and what a command left that was cut short. */
const NOTHING = new Set(['.git', '.writing', '.DS_Store']);

await runCommand(
  USAGE,
  {},
  async (_options, [said, ...more]) => {
    if (said === undefined || more.length > 0)
      throw new CallError(`Say one folder, in quotes where its name has spaces.\n\n${USAGE}`);
    const root = fromCaller(said);
    if (isInside(await realOf(root), await realpath(TOOL)))
      throw new CallError(
        `${root} is in the tool's own folder. A publication stands apart from it: choose another place, such as ${join(dirname(TOOL), 'my-publication')}.`,
      );
    const there = (await namesIn(root)).filter((name) => !NOTHING.has(name));
    const finished = (await lstatOf(root)) === undefined ? [] : await finishEarlier(root);
    if (finished.length > 0) return say(describeBegun(root, finished));
    if (there.length > 0)
      throw new CallError(
        `${root} is not empty: it holds ${there.slice(0, 3).join(', ')}${there.length > 3 ? ` and ${there.length - 3} more` : ''}. Nothing was written; name an empty folder or a new one.`,
      );
    const files = await filesToBegin();
    await whileWriting(root, (write) => write(files));
    say(
      describeBegun(
        root,
        files.map(({ path }) => path),
      ),
    );
  },
  { takesWords: true, onPublication: false },
);

function describeBegun(root: string, paths: readonly string[]): string {
  const folder = `"${root.replace(/["\\$`]/g, '\\$&')}"`;
  return [
    `A publication begins in ${root}:`,
    ...paths.map((path) => `  ${path}`),
    '',
    'Build and look at it:',
    `  npm start -- --publication ${folder}`,
    'What to do first stands in its README.md.',
  ].join('\n');
}

async function namesIn(root: string): Promise<readonly string[]> {
  const status = await lstatOf(root);
  if (status === undefined) return [];
  if (!status.isDirectory() && !status.isSymbolicLink())
    throw new CallError(`${root} is a file. Name an empty folder or a new one.`);
  return (await readdir(root)).sort();
}

/** The real path of a folder, or what it will be. */
async function realOf(path: string): Promise<string> {
  return realpath(path).catch(async () =>
    dirname(path) === path ? path : join(await realOf(dirname(path)), path.slice(dirname(path).length)),
  );
}

async function lstatOf(path: string) {
  return lstat(path).catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return undefined;
    throw error;
  });
}
