/** The files that some sessions take, each held to the checksum that the page states. */
import { checksum } from '../ingest/files-in-hand.ts';
import { missingFiles } from './missing-files.ts';

export interface CheckedFile {
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly sha256: string;
  /** As the page states it; undefined where it lists no such file. */
  readonly stated: string | undefined;
}

/**
 * Reads the files of these sessions and everything that they refer to, of all sessions where none are named.
 *
 * @param stated checksums by path: every published file
 */
export async function gather(
  sessions: readonly string[] | undefined,
  stated: ReadonlyMap<string, string>,
  read: (path: string) => Promise<Uint8Array>,
): Promise<readonly CheckedFile[]> {
  const files = new Map<string, Uint8Array>();
  const add = async (paths: readonly string[]): Promise<void> => {
    const all = await Promise.all(paths.map(async (path) => [path, await read(path)] as const));
    for (const [path, bytes] of all) files.set(path, bytes);
  };
  const wanted = new Set(sessions?.flatMap((id) => [`data/sessions/${id}.md`, `data/sessions/${id}.csv`]));
  await add(
    [...stated.keys()].filter((path) => sessions === undefined || wanted.has(path) || /^data\/[^/]+$/.test(path)),
  );
  for (let missing = missingFiles(files); missing.length > 0; missing = missingFiles(files)) await add(missing);
  return [...files].map(([path, bytes]) => ({ path, bytes, sha256: checksum(bytes), stated: stated.get(path) }));
}
