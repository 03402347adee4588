/** `npm run remove`: takes a session, body, rig or report out of a publication, if nothing else needs it. */
import type { Bench } from '../model/bench.ts';
import { filesOfRecord, type RecordKind } from '../rename/record-kinds.ts';
import { publicationFolder } from '../site/publication.ts';
import { kindOf, makeChanges, recordsOf, tryChanges } from './change-records.ts';
import { finishEarlier } from './finish-earlier.ts';
import { loadBench } from './load-bench.ts';
import { choose } from './plan-options.ts';
import { publicationTexts } from './publication-texts.ts';
import { CallError, runCommand } from './run.ts';
import { say } from './say.ts';

const USAGE = `Usage: npm run remove -- KIND ID [--with-sessions] [--dry]

  KIND             session, body, rig or report
  --with-sessions  of a body or rig: its sessions too
  --dry            say what would be removed, and remove nothing

Where write-ups still ask for it, they are listed, and nothing is removed. What was published of it stays in the ledger,
and npm run record tells readers why it went.`;

await runCommand(
  USAGE,
  { dry: { type: 'boolean' }, 'with-sessions': { type: 'boolean' } },
  async (options, [word, id = '', ...more]) => {
    const kind = kindOf(word, USAGE);
    if (id === '' || more.length > 0) throw new CallError(`Say which ${kind}.\n\n${USAGE}`);
    const root = publicationFolder();
    if ((await finishEarlier(root)).length > 0) return;
    const bench = await loadBench(root);
    choose('id', id, recordsOf(bench, kind), kind);
    const own = sessionsOf(bench, kind, id);
    if (kind !== 'session' && own.length > 0 && options['with-sessions'] !== true)
      throw new CallError(
        `${own.length} ${own.length === 1 ? 'session is' : 'sessions are'} of ${kind} ${id}: ${own.join(', ')}. Remove them first, or all together with --with-sessions. Nothing was removed.`,
      );
    const removed = new Set(own);
    const paths = [
      ...filesOfRecord(kind, id),
      ...own.flatMap((session) => filesOfRecord('session', session)),
      ...workbooksOf(bench, removed),
    ];
    const changes = new Map([...new Set(paths)].map((path) => [path, undefined] as const));
    await tryChanges(root, changes);
    const texts = await publicationTexts(root);
    say(await makeChanges(root, changes, new Set(texts.keys()), options['dry']));
    if (options['dry'] === true || bench.ledger === undefined) return;
    say('\nTell readers why it went:\n  npm run record -- --reason "…" --date YYYY-MM-DD');
  },
  { takesWords: true },
);

/** The sessions that go with it, planned ones too. */
function sessionsOf({ sessions, planned }: Bench, kind: RecordKind, id: string): readonly string[] {
  if (kind === 'report') return [];
  return [...sessions, ...planned]
    .filter((session) => (kind === 'session' ? session.id : session[kind]) === id)
    .map((session) => session.id);
}

/** Workbooks that only these sessions were imported from. */
function workbooksOf({ sessions, workbooks = [] }: Bench, removed: ReadonlySet<string>): readonly string[] {
  const needed = new Set(sessions.filter(({ id }) => !removed.has(id)).map(({ importedFrom }) => importedFrom?.path));
  return workbooks.map(({ path }) => path).filter((path) => !needed.has(path));
}
