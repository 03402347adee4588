import { readFile } from 'node:fs/promises';
import { hostname } from 'node:os';
import { lock as takeLock } from 'proper-lockfile';
import writeFileAtomic from 'write-file-atomic';
import { problemsError } from '../model/problem-text.ts';

/** A lock that nobody renewed for so long is left over. */
const STALE_MS = 60_000;
/**
 * One whose process is gone is left over at once; this is the least age that the library goes by. Its clock may
 * count whole seconds, so that waiting for it takes up to four.
 */
const STALE_WITHOUT_PROCESS_MS = 2000;

export interface Lock {
  /** Throws when another process took the lock meanwhile, as it may while this machine sleeps. */
  assertHeld(): void;
}

interface Owner {
  readonly pid: number;
  readonly host: string;
}

/**
 * Does something while no other process does it in the same place. Where one does, throws a ProblemsError
 * that names it; a lock that a killed process left behind is taken over.
 *
 * @param path of the lock, in a folder that is there: `PATH.lock` is made, and beside it `PATH.owner`
 * @param what the lock is on, as the author knows it: `dist`
 */
export async function withLock<T>(path: string, what: string, act: (lock: Lock) => Promise<T>): Promise<T> {
  const owner = await readOwner(path);
  // without an owner: killed in the instant between taking the lock and saying whose it is
  const isLeftOver = owner === undefined || (owner.host === hostname() && !isRunning(owner.pid));
  const refusal = () =>
    problemsError([{ code: 'in-use', file: what, ...(owner && !isLeftOver ? { found: String(owner.pid) } : {}) }]);
  let taken = false;
  const release = await takeLock(path, {
    lockfilePath: `${path}.lock`,
    realpath: false,
    update: STALE_WITHOUT_PROCESS_MS / 2,
    ...(isLeftOver
      ? {
          stale: STALE_WITHOUT_PROCESS_MS,
          retries: { retries: 14, factor: 1, minTimeout: STALE_WITHOUT_PROCESS_MS / 4 },
        }
      : { stale: owner.host === hostname() ? Number.MAX_SAFE_INTEGER : STALE_MS }),
    onCompromised: () => {
      taken = true;
    },
  }).catch((error: unknown) => {
    throw error instanceof Error && 'code' in error && error.code === 'ELOCKED' ? refusal() : error;
  });
  try {
    // The file stays: it says whose lock was left over, should this process be killed.
    await writeFileAtomic(`${path}.owner`, JSON.stringify({ pid: process.pid, host: hostname() } satisfies Owner));
    return await act({
      assertHeld() {
        if (taken) throw refusal();
      },
    });
  } finally {
    if (!taken) await release();
  }
}

/** The process that took the lock last; undefined where none did, or cannot be told. */
async function readOwner(path: string): Promise<Owner | undefined> {
  try {
    const { pid, host } = JSON.parse(await readFile(`${path}.owner`, 'utf8')) as Partial<Owner>;
    return Number.isInteger(pid) && typeof host === 'string' ? { pid: Number(pid), host } : undefined;
  } catch {
    return undefined;
  }
}

/** Whether another process of this machine has the number. This one holds no lock yet: its number was used before. */
export function isRunning(pid: number): boolean {
  if (pid === process.pid) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
