/**
 * The two files of a session, or of a comparison of two displays, read, and changed whole or not at all: by the way in
 * which every command writes, with what the change was based on as its condition, so that two pages, or an editor
 * beside one, cannot undo each other.
 */
import { whileWriting } from '../commands/write-all.ts';
import { isTypedPair, parseSessions, pathOf, readSessions, type ReadSessions } from '../ingest/read-session.ts';
import { describeProblem, wordsOf } from '../model/problem-text.ts';
import { ProblemsError, type Problem } from '../model/problem.ts';
import { pairState } from './pair-state.ts';
import { sessionState, type SessionState, type SessionTexts } from './session-state.ts';

/** What a change makes of the files; a text that is left out stays. */
export interface Change {
  readonly front?: string;
  readonly readings?: string;
  /** Rows that may be as wrong as they are: what was there before is put back. */
  readonly isUndo?: boolean;
}

export type Outcome =
  | { readonly kind: 'done'; readonly state: SessionState }
  /** The files are no longer what the change was based on; nothing was written. */
  | { readonly kind: 'conflict'; readonly state: SessionState }
  /** Nothing was written, for these reasons. */
  | { readonly kind: 'refused'; readonly says: readonly string[] };

interface Loaded {
  readonly read: ReadSessions;
  readonly texts: SessionTexts;
}

/** Thrown by a change that cannot be made. */
export class Refused extends Error {}

const NO_SESSION =
  'There is no session of this name in data/sessions, and no comparison of two displays in data/display-pairs.';
/** How long a change waits for a command that is writing. */
const WAITS_MS = [50, 150, 400, 1000];

export async function readState(root: string, id: string): Promise<Outcome> {
  const loaded = await load(root, id);
  return typeof loaded === 'string' ? { kind: 'refused', says: [loaded] } : stateOf(id, loaded);
}

/** One after the other in this process; the lock keeps other processes apart. */
let last: Promise<unknown> = Promise.resolve();

/** Changes a session's files, where they still are what `base` says. */
export function changeSession(
  root: string,
  id: string,
  base: string,
  change: (texts: SessionTexts, state: SessionState) => Change,
): Promise<Outcome> {
  const next = last.then(() => whenFree(() => changeAlone(root, id, base, change)));
  last = next.catch(() => undefined);
  return next;
}

async function changeAlone(
  root: string,
  id: string,
  base: string,
  change: (texts: SessionTexts, state: SessionState) => Change,
): Promise<Outcome> {
  let after: Loaded | undefined;
  const outcome = await whileWriting(root, async (write): Promise<Outcome> => {
    const before = await load(root, id);
    if (typeof before === 'string') return { kind: 'refused', says: [before] };
    const found = stateOf(id, before);
    if (found.kind !== 'done') return found;
    if (before.texts.digest !== base) return { kind: 'conflict', state: found.state };
    let made: Change;
    try {
      made = change(before.texts, found.state);
    } catch (error) {
      if (error instanceof Refused) return { kind: 'refused', says: [error.message] };
      throw error;
    }
    const texts = new Map(
      Object.entries({ md: made.front, csv: made.readings }).flatMap(([end, text]) =>
        text === undefined ? [] : [[`${pathOf(id)}.${end}`, text] as const],
      ),
    );
    const mistakes = made.isUndo === true ? [] : newMistakes(before.read, texts);
    if (mistakes.length > 0) return { kind: 'refused', says: mistakes };
    await write([...texts].map(([path, text]) => ({ path, text, replaces: true })));
    const read = await load(root, id);
    if (typeof read !== 'string') after = read;
    return found;
  });
  return after === undefined ? outcome : stateOf(id, after);
}

/** What a build would report of the changed files and did not before. */
function newMistakes(read: ReadSessions, texts: ReadonlyMap<string, string>): readonly string[] {
  const key = ({ code, key: column, found, expected }: Problem): string => [code, column, found, expected].join('\n');
  const before = new Set(parseSessions(read).problems.map(key));
  // a session of which nothing counts yet is still under way
  return parseSessions(read, texts)
    .problems.filter((problem) => !before.has(key(problem)) && problem.code !== 'no-counted-reading')
    .map(wordsOf);
}

async function load(root: string, id: string): Promise<Loaded | string> {
  const read = await readSessions(root, [id]);
  const [session] = read === undefined ? [] : [...read.sources.sessions, ...read.sources.displayPairs];
  if (read === undefined || session === undefined) return NO_SESSION;
  const { front, readings } = session;
  if (front === undefined || readings === undefined)
    return read.unreadable.map(describeProblem).join(' ') || `It needs two files, ${pathOf(id)}.md and .csv.`;
  return {
    read,
    texts: {
      front: new TextDecoder().decode(front.bytes),
      readings: new TextDecoder().decode(readings.bytes),
      digest: `${front.file.sha256}-${readings.file.sha256}`,
    },
  };
}

function stateOf(id: string, { read, texts }: Loaded): Outcome {
  const parsed = parseSessions(read);
  const state = (isTypedPair(id) ? pairState : sessionState)(id, parsed, texts);
  if (state !== undefined) return { kind: 'done', state };
  return { kind: 'refused', says: parsed.problems.map(describeProblem) };
}

/** Another command may be writing for a moment. */
async function whenFree<T>(act: () => Promise<T>): Promise<T> {
  for (const waitMs of WAITS_MS) {
    try {
      return await act();
    } catch (error) {
      if (!(error instanceof ProblemsError) || error.problems[0]?.code !== 'in-use') throw error;
      await new Promise((resolve) => setTimeout(resolve, waitMs));
    }
  }
  return await act();
}
