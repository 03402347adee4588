/**
 * Pages that earlier builds printed, for Astro to take over where nothing that they print has changed. One build has
 * them at a time:
 *
 *     pages/               what the last whole build left, with a seal: the code it was of, and a digest of each file
 *     at-work-PID-…/       the same, while a build works with it
 *
 * A build claims them by a rename, so that another at the same time finds none and prints every page; it puts them
 * back by a rename when it is whole, so that one that fails or is killed leaves none. What does not bear out its seal
 * is thrown away.
 */
import { randomBytes } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { filesOf, sha256Of } from './files-of.ts';
import { isRunning } from './lock.ts';

const SEAL = 'seal.json';
const AT_WORK = /^at-work-(\d+)-/;

interface Seal {
  readonly version: string;
  readonly sha256: Readonly<Record<string, string>>;
}

interface CacheOptions {
  /** Of the code that prints pages: those of other code are not used. */
  readonly version: string;
  /** Passes over what is there. */
  readonly fresh?: boolean;
}

/** Lets a build work in the folder of pages that it may take over, empty where there are none. */
export async function withPageCache<T>(
  folder: string,
  { version, fresh = false }: CacheOptions,
  build: (pages: string) => Promise<T>,
): Promise<T> {
  await mkdir(folder, { recursive: true });
  await removeLeftOver(folder);
  const kept = join(folder, 'pages');
  const atWork = join(folder, `at-work-${process.pid}-${randomBytes(4).toString('hex')}`);
  const isClaimed = await rename(kept, atWork).then(
    () => true,
    () => false,
  );
  if (isClaimed && (fresh || !(await isWhole(atWork, version)))) await rm(atWork, { recursive: true });
  await mkdir(atWork, { recursive: true });
  try {
    const built = await build(atWork);
    await seal(atWork, version);
    // Where another build was done first, its pages are as good.
    await rename(atWork, kept).catch(() => undefined);
    return built;
  } finally {
    await rm(atWork, { recursive: true, force: true });
  }
}

async function seal(folder: string, version: string): Promise<void> {
  const sha256 = await digestsOf(folder);
  await writeFile(join(folder, SEAL), JSON.stringify({ version, sha256 } satisfies Seal));
}

async function isWhole(folder: string, version: string): Promise<boolean> {
  try {
    const sealed = JSON.parse(await readFile(join(folder, SEAL), 'utf8')) as Seal;
    if (sealed.version !== version) return false;
    await rm(join(folder, SEAL));
    return JSON.stringify(sealed.sha256) === JSON.stringify(await digestsOf(folder));
  } catch {
    return false;
  }
}

/** By path, sorted. */
async function digestsOf(folder: string): Promise<Seal['sha256']> {
  return Object.fromEntries((await filesOf(folder)).map((file) => [file, sha256Of(join(folder, file))]));
}

/** What builds that were killed left behind. */
async function removeLeftOver(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    const [, pid] = AT_WORK.exec(name) ?? [];
    if (pid !== undefined && Number(pid) !== process.pid && !isRunning(Number(pid)))
      await rm(join(folder, name), { recursive: true, force: true });
  }
}
