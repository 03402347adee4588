/** Files that were renamed: gone under one name, and there with the same content under another. */
import type { Inputs } from '../model/ledger.ts';
import { replaceWithin } from './under-names.ts';

export interface Rename {
  /** Without their ending: `data/sessions/a` → `data/sessions/b`. */
  readonly from: string;
  readonly to: string;
}

/** What tells the content of a record: of a session its readings, since what was set may be corrected by the way. */
const CONTENT = /^(?:data\/sessions\/[^/]+\.csv|(?:data|content)\/(?!sessions\/)[^/]+\/[^/]+\.mdx?)$/;

/** Only where nothing else had or has that content, so that it is told for certain. */
export function renamesBetween(recorded: Inputs, now: Inputs): readonly Rename[] {
  const before = byContent(recorded);
  const after = byContent(now);
  return [...before].flatMap(([content, paths]): readonly Rename[] => {
    const [from, to] = [paths[0], after.get(content)?.[0]];
    const isCertain = paths.length === 1 && after.get(content)?.length === 1;
    if (!isCertain || from === undefined || to === undefined || from === to) return [];
    if (folderOf(from) !== folderOf(to) || to in recorded.checksums || from in now.checksums) return [];
    return [{ from: stemOf(from), to: stemOf(to) }];
  });
}

/** A path as it was called before. */
export function formerPath(path: string, renames: readonly Rename[]): string {
  const rename = renames.find(({ to }) => stemOf(path) === to);
  return rename === undefined ? path : rename.from + path.slice(rename.to.length);
}

/**
 * An id as it is called now, of what was renamed; undefined where no such id is there. A name is a part of the id, or
 * stands within one, as a body and a rig do in that of their family: `settings-fenn-3-attic`.
 */
export function renamedId(
  id: string,
  renames: readonly Rename[],
  isThere: (id: string) => boolean,
): string | undefined {
  const names = renames.flatMap(namesOf);
  const byPart = new Map(names);
  const parts = id.split('/').map((part) => byPart.get(part) ?? part);
  const within = parts.map((part) => names.reduce((now, [from, to]) => replaceWithin(now, from, to), part));
  return [parts, within].map((each) => each.join('/')).find((each) => each !== id && isThere(each));
}

/** A write-up also names the family of what it compares: `report-x`. */
function namesOf({ from, to }: Rename): readonly (readonly [string, string])[] {
  const [old, now] = [nameOf(from), nameOf(to)];
  const kind = /^content\/(report|method)s\//.exec(from)?.[1];
  return kind === undefined
    ? [[old, now]]
    : [
        [old, now],
        [`${kind}-${old}`, `${kind}-${now}`],
      ];
}

function byContent({ checksums }: Inputs): ReadonlyMap<string, readonly string[]> {
  const paths = Object.keys(checksums).filter((path) => CONTENT.test(path));
  return Map.groupBy(paths, (path) => `${folderOf(path)} ${checksums[path]}`);
}

function stemOf(path: string): string {
  return path.replace(/\.[^./]*$/, '');
}

function nameOf(stem: string): string {
  return stem.replace(/^.*\//, '');
}

function folderOf(path: string): string {
  return path.replace(/\/[^/]*$/, '');
}
