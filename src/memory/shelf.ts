import { hash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const DIGEST_BYTES = 32;

/**
 * Results on disk, a file each: its name is the digest of what the result was computed from, and it begins with the
 * digest of what it holds. A file that is damaged, cut short or in the way counts as none, and whatever the disk refuses
 * is left undone, since all of it can be computed again. What a build that is killed, two at a time or a power cut leave
 * half written, the digest finds.
 */
export class Shelf {
  readonly #folder: string;
  readonly #limitBytes: number;
  #exists = false;

  /** @param limitBytes what `sweep` leaves at most */
  constructor(folder: string, limitBytes: number) {
    this.#folder = folder;
    this.#limitBytes = limitBytes;
  }

  get(name: string): Buffer | undefined {
    const path = join(this.#folder, name);
    return unlessRefused(() => {
      const bytes = readFileSync(path);
      const held = bytes.subarray(DIGEST_BYTES);
      if (bytes.length < DIGEST_BYTES || !hash('sha256', held, 'buffer').equals(bytes.subarray(0, DIGEST_BYTES)))
        return undefined;
      const now = new Date();
      utimesSync(path, now, now); // what is used is kept longest
      return held;
    });
  }

  put(name: string, held: Uint8Array): void {
    unlessRefused(() => {
      if (!this.#exists) mkdirSync(this.#folder, { recursive: true });
      this.#exists = true;
      writeFileSync(join(this.#folder, name), Buffer.concat([hash('sha256', held, 'buffer'), held]));
    });
  }

  /** Removes what was not used for longest, until the rest is within the limit. */
  sweep(): void {
    const files = (unlessRefused(() => readdirSync(this.#folder)) ?? []).flatMap((name) => {
      const path = join(this.#folder, name);
      const status = unlessRefused(() => statSync(path));
      return status?.isFile() ? [{ path, bytes: status.size, usedAt: status.mtimeMs }] : [];
    });
    let total = 0;
    for (const { path, bytes } of files.sort((a, b) => b.usedAt - a.usedAt)) {
      total += bytes;
      if (total > this.#limitBytes) unlessRefused(() => rmSync(path));
    }
  }
}

function unlessRefused<T>(act: () => T): T | undefined {
  try {
    return act();
  } catch {
    return undefined;
  }
}
