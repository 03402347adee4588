import { readdir, realpath } from 'node:fs/promises';
import { isIllustrationName } from './illustrations/names.ts';
import { nearest } from './nearest.ts';
import type { ProblemList } from './problem-list.ts';
import { errorCode, isInside, isListed, type Area } from './read-source.ts';

const ID = /^[a-z0-9][a-z0-9-]*$/;
/** Left by editors, file managers, spreadsheets and version control, and hidden where they were made; nobody's data. */
const IGNORED = /^\.|~$|^~\$|^(?:thumbs\.db|ehthumbs\.db|desktop\.ini|icon\r)$/i;
/** Extensions that stand for another one. */
const SAME_AS: Readonly<Record<string, string>> = { '.markdown': '.md' };

/** A record of a folder: an id and its files, one per extension that the folder has. */
export interface Entry {
  readonly id: string;
  /** File name by extension: `{ '.md': 'a.md', '.csv': 'a.csv' }`; one may be missing. */
  readonly files: ReadonlyMap<string, string>;
}

export interface FolderOptions {
  readonly path: string;
  /** As the author knows it: `data/sessions`. */
  readonly published: string;
  readonly area: Area;
  /** What files in it end in: `['.md', '.csv']`. */
  readonly extensions: readonly string[];
  readonly needed: boolean;
}

/** Lists the records of a folder, sorted by id. What does not belong, or stands twice, is a problem. */
export async function listFolder(
  { path, published, area, extensions, needed }: FolderOptions,
  problems: ProblemList,
): Promise<Entry[]> {
  const names = await listNames(path, published, area, needed, problems);
  const entries = new Map<string, Map<string, string>>();
  const firstByName = new Map<string, string>();
  for (const name of names) {
    const { stem, extension } = splitName(name);
    const file = `${published}/${name}`;
    const known = SAME_AS[extension.toLowerCase()] ?? extension.toLowerCase();
    const regular = `${stem}${known}`;
    const first = firstByName.get(regular.toLowerCase());
    if (!extensions.includes(known)) {
      problems.add({ code: 'stray-entry', file, expected: extensions.map((end) => `<id>${end}`).join(' or ') });
    } else if (first !== undefined) {
      problems.add({ code: 'duplicate-id', file, expected: `${published}/${first}` });
    } else if (extension !== known) {
      firstByName.set(regular.toLowerCase(), name);
      problems.add({ code: 'stray-entry', file, expected: regular });
    } else if (!ID.test(stem)) {
      firstByName.set(regular.toLowerCase(), name);
      const suggestion = stem
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-')
        .replace(/^-+|-+$/g, '');
      problems.add({ code: 'bad-id', file, found: stem, ...(suggestion ? { expected: `${suggestion}${known}` } : {}) });
    } else {
      firstByName.set(regular.toLowerCase(), name);
      const files = entries.get(stem) ?? new Map<string, string>();
      entries.set(stem, files.set(known, name));
    }
  }
  return [...entries].map(([id, files]) => ({ id, files })).sort((a, b) => (a.id < b.id ? -1 : 1));
}

/**
 * Reports what stands in a folder beside the names that belong there.
 *
 * @param mayShow whether what texts show may stand there too
 */
export async function checkTopFolder(
  path: string,
  published: string,
  belongs: readonly string[],
  problems: ProblemList,
  mayShow: boolean,
): Promise<void> {
  const names = await readdir(path);
  const isStray = (name: string): boolean =>
    !IGNORED.test(name) && !belongs.includes(name) && !(mayShow && isIllustrationName(name));
  for (const name of names.filter(isStray).sort()) {
    problems.add({
      code: 'stray-entry',
      file: `${published}/${name}`,
      choices: belongs,
      nearest: nearest(name, belongs),
    });
  }
}

async function listNames(
  path: string,
  published: string,
  area: Area,
  needed: boolean,
  problems: ProblemList,
): Promise<string[]> {
  try {
    if (!isInside(await realpath(path), area.realFolder)) {
      problems.add({ code: 'link-leads-out', file: published, expected: `${area.name}/` });
      return [];
    }
    const names = (await readdir(path)).filter((name) => !IGNORED.test(name) && !isIllustrationName(name));
    // the regular spelling first, so that it is the other one that is reported
    return names.sort((a, b) => Number(!isRegular(a)) - Number(!isRegular(b)) || (a < b ? -1 : 1));
  } catch (error) {
    const code = errorCode(error);
    const isMissing = code === 'ENOENT' && !(await isListed(path));
    if (isMissing && !needed) return [];
    problems.add(
      isMissing
        ? { code: 'missing-folder', file: published }
        : { code: 'unreadable-file', file: published, found: code },
    );
    return [];
  }
}

function isRegular(name: string): boolean {
  return name === name.toLowerCase() && SAME_AS[splitName(name).extension] === undefined;
}

function splitName(name: string): { stem: string; extension: string } {
  const dot = name.lastIndexOf('.');
  return dot > 0 ? { stem: name.slice(0, dot), extension: name.slice(dot) } : { stem: name, extension: '' };
}
