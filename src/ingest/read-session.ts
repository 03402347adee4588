/**
 * One session's files, or those of one comparison of two displays, with all that they refer to, read whether or not
 * they are sound: for whoever is still typing them.
 */
import { join } from 'node:path';
import { METHODS, PAIR_METHODS, type Bench } from '../model/bench.ts';
import { compareProblems, type Problem } from '../model/problem.ts';
import { benchOfData } from './bench-of-data.ts';
import { checkEncoding } from './encoding.ts';
import { checksum } from './files-in-hand.ts';
import { Folder } from './folder.ts';
import { parseData, type DataSources, type SessionPairSource } from './parse-data.ts';
import { VARIATION_FILE } from './parse-variation.ts';
import { ProblemList } from './problem-list.ts';
import { reportOn, type Source } from './source.ts';

export interface ReadSessions {
  readonly sources: DataSources;
  /** Of reading alone: what could not be read at all. */
  readonly unreadable: readonly Problem[];
  /** As `pathOf` takes them; comparisons of displays after sessions. */
  readonly ids: readonly string[];
}

const PAIRS = 'display-pairs';

/**
 * What is typed is named by a session's id, or by `display-pairs/` and a comparison's: its two files, without their
 * endings.
 */
export function pathOf(id: string): string {
  return `data/${isTypedPair(id) ? id : `sessions/${id}`}`;
}

export function isTypedPair(id: string): boolean {
  return id.startsWith(`${PAIRS}/`);
}

/** As `pathOf` takes it. */
export function typedPairId({ id }: { readonly id: string }): string {
  return `${PAIRS}/${id}`;
}

export interface ParsedSessions {
  /** Of `data/` alone, with these sessions only; undefined where the settings are faulty. */
  readonly bench: Bench | undefined;
  readonly problems: readonly Problem[];
}

/** Reads `data/` with the sessions named, or with all. Ids that are not listed are not read. */
export async function readSessions(root: string, named?: readonly string[]): Promise<ReadSessions | undefined> {
  const problems = new ProblemList();
  const data = await Folder.open(root, join(root, 'data'), problems);
  if (data === undefined) return undefined;
  const ids: string[] = [];
  const readTwo = async (folder: string, nameOf: (entry: { readonly id: string }) => string) => {
    const found: SessionPairSource[] = [];
    for (const { id, files } of await data.list(folder, ['.md', '.csv'], false)) {
      ids.push(nameOf({ id }));
      if (named !== undefined && !named.includes(nameOf({ id }))) continue;
      const read = async (name: string | undefined) => name && (await data.readSource(`${folder}/${name}`));
      const [front, readings] = [await read(files.get('.md')), await read(files.get('.csv'))];
      found.push({ id, front: front || undefined, readings: readings || undefined });
    }
    return found;
  };
  const sessions = await readTwo('sessions', ({ id }) => id);
  const displayPairs = await readTwo(PAIRS, typedPairId);
  const sources: DataSources = {
    settings: await data.readSource('settings.yaml'),
    variation: (await data.holdsFile(VARIATION_FILE)) ? await data.readSource(VARIATION_FILE) : undefined,
    // What a latency means in practice is no part of taking readings.
    speeds: undefined,
    bodies: await data.readSources('bodies', '.md'),
    displays: await data.readSources('displays', '.md'),
    links: await data.readSources('links', '.md', false),
    rigs: await data.readSources('rigs', '.md'),
    sessions,
    displayPairs,
  };
  return { sources, unreadable: problems.all, ids };
}

/** What they say, with these texts in place of what is on disk: by path, `data/sessions/a.csv`. */
export function parseSessions(
  { sources, unreadable }: ReadSessions,
  texts: ReadonlyMap<string, string> = new Map(),
): ParsedSessions {
  const problems = new ProblemList();
  const fresh = (source: Source | undefined): Source | undefined => {
    if (source === undefined) return undefined;
    const report = reportOn(source.file.path, problems);
    const text = texts.get(source.file.path);
    if (text === undefined) return { ...source, report };
    const raw = new TextEncoder().encode(text);
    const bytes = checkEncoding(raw, report);
    return bytes && { file: { ...source.file, sha256: checksum(raw), bytes: raw.length }, bytes, report };
  };
  const freshTwo = ({ id, front, readings }: SessionPairSource): SessionPairSource => ({
    id,
    front: fresh(front),
    readings: fresh(readings),
  });
  const named = (list: DataSources['rigs']) => list.map(({ id, source }) => ({ id, source: fresh(source) }));
  const settings = fresh(sources.settings);
  const parsed = parseData(
    {
      settings,
      variation: fresh(sources.variation),
      speeds: undefined,
      bodies: named(sources.bodies),
      displays: named(sources.displays),
      links: named(sources.links),
      rigs: named(sources.rigs),
      sessions: sources.sessions.map(freshTwo),
      displayPairs: sources.displayPairs.map(freshTwo),
    },
    { methods: [...METHODS, ...PAIR_METHODS], readProse: () => [] },
  );
  return {
    bench: benchOfData(parsed, settings),
    problems: [...unreadable, ...problems.all].toSorted(compareProblems),
  };
}
