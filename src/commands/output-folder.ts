/**
 * Where a site is built. The pages are written beside it and take its place only when all of them are done:
 *
 *     dist/                      the site
 *     .dist.building/fresh-…/    the next one, while it is written
 *     .dist.building/last/       the site before, while the two change places
 *
 * Two renames change them, one right after the other. A process that is killed between the two leaves no
 * `dist/` but the whole site in `last/`; the next command puts it back.
 */
import { existsSync, renameSync } from 'node:fs';
import { lstat, mkdir, readdir, readFile, readlink, realpath, rm, stat } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { errorCode, isInside } from '../ingest/read-source.ts';
import { problemsError } from '../model/problem-text.ts';
import { fromCaller } from '../site/publication.ts';
import { withLock } from './lock.ts';
import { foreignFiles, markSite } from './site-mark.ts';

const FOREIGN_SHOWN = 3;

export interface OutputFolder {
  /** Absolute, without a final separator. */
  readonly path: string;
  /** As the author knows it: `dist`. */
  readonly name: string;
}

/** The folder that was said, or `dist` in the folder of the publication. */
export async function outputFolder(root: string, said: string | undefined): Promise<OutputFolder> {
  const path = said === undefined ? resolve(root, 'dist') : fromCaller(said);
  const parent = await realpath(dirname(path)).catch(() => dirname(path));
  return { path: join(parent, basename(path)), name: said ?? 'dist' };
}

/** Throws a ProblemsError where a site cannot be put without touching what is not one of ours. Touches nothing. */
export async function checkOutput({ path, name }: OutputFolder, sources: readonly string[]): Promise<void> {
  const refuse = (code: 'output-link' | 'output-file' | 'output-mount' | 'output-inside', found?: string) =>
    problemsError([{ code, file: name, ...(found === undefined ? {} : { found }) }]);
  const inside = sources.find((source) => isInside(path, source) || isInside(source, path));
  if (inside !== undefined) throw refuse('output-inside', basename(inside));
  const status = await lstat(path).catch((error: unknown) => {
    if (errorCode(error) === 'ENOENT') return undefined;
    throw error;
  });
  if (status === undefined) return;
  if (status.isSymbolicLink()) throw refuse('output-link', await readlink(path));
  if (!status.isDirectory()) throw refuse('output-file');
  if (status.dev !== (await stat(dirname(path))).dev || (await mountPoints()).includes(path))
    throw refuse('output-mount');
  const foreign = await foreignFiles(path);
  if (foreign.length > 0)
    throw problemsError([
      {
        code: 'output-foreign',
        file: name,
        found: [
          ...foreign.slice(0, FOREIGN_SHOWN),
          ...(foreign.length > FOREIGN_SHOWN ? [`${foreign.length - FOREIGN_SHOWN} more`] : []),
        ].join(', '),
      },
    ]);
}

/**
 * Lets a function write a site into an empty folder, and puts that in place of the last one when it is done.
 * Whatever fails before leaves the last one as it is; so does another build under way in the same place, which
 * is refused.
 *
 * @param standing asked first: what can be said of the last one where it is the one that would be written; it then stays
 */
export async function replaceSite<T>(
  output: OutputFolder,
  write: (fresh: string) => Promise<T>,
  standing: () => Promise<T | undefined> = async () => undefined,
): Promise<T> {
  const { path, name } = output;
  const workshop = workshopOf(path);
  await mkdir(workshop, { recursive: true });
  return withLock(join(workshop, 'build'), name, async (lock) => {
    restoreSite(path);
    for (const left of await readdir(workshop))
      if (/^(?:fresh-|last$)/.test(left)) await rm(join(workshop, left), { recursive: true });
    const known = await standing();
    if (known !== undefined) return known;
    const fresh = join(workshop, `fresh-${process.pid}`);
    await mkdir(fresh);
    try {
      const written = await write(fresh);
      await markSite(fresh);
      lock.assertHeld();
      swapIn(fresh, path);
      await rm(lastOf(path), { recursive: true, force: true });
      return written;
    } finally {
      await rm(fresh, { recursive: true, force: true });
    }
  });
}

/** Puts the last site back where a killed build left none. */
export function restoreSite(path: string): void {
  if (!existsSync(path) && existsSync(lastOf(path))) renameSync(lastOf(path), path);
}

/** In one go: no signal is heard between the two calls, since the locks' library listens to signals. */
function swapIn(fresh: string, path: string): void {
  const last = lastOf(path);
  if (existsSync(path)) renameSync(path, last);
  try {
    renameSync(fresh, path);
  } catch (error) {
    restoreSite(path);
    throw error;
  }
}

function workshopOf(path: string): string {
  return join(dirname(path), `.${basename(path)}.building`);
}

function lastOf(path: string): string {
  return join(workshopOf(path), 'last');
}

/** Where the system tells: a folder bound into its own file system cannot be told by its device. */
async function mountPoints(): Promise<readonly string[]> {
  const table = await readFile('/proc/self/mountinfo', 'utf8').catch(() => '');
  return table.split('\n').map((line) => (line.split(' ')[4] ?? '').replaceAll('\\040', ' '));
}
