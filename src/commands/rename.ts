/** `npm run rename`: another id for a session, body, rig or report, in every file that names it. */
import { filesOfRecord } from '../rename/record-kinds.ts';
import { renameRecord } from '../rename/rename-record.ts';
import { publicationFolder } from '../site/publication.ts';
import { kindOf, makeChanges, recordsOf, tryChanges } from './change-records.ts';
import { finishEarlier } from './finish-earlier.ts';
import { loadBench } from './load-bench.ts';
import { choose } from './plan-options.ts';
import { publicationTexts } from './publication-texts.ts';
import { CallError, runCommand } from './run.ts';
import { say } from './say.ts';

const USAGE = `Usage: npm run rename -- KIND ID NEW-ID [--dry]

  KIND   session, body, rig or report
  --dry  say what would be changed, and change nothing

Renames its files and every reference to it: front matter, parts and links of write-ups and notes. What is published
of it keeps its past, and its old address leads on, once npm run record has recorded it.`;

await runCommand(
  USAGE,
  { dry: { type: 'boolean' } },
  async ({ dry }, [word, from = '', to = '', ...more]) => {
    const kind = kindOf(word, USAGE);
    if (from === '' || to === '' || more.length > 0)
      throw new CallError(`Say which ${kind}, and what it is to be called.\n\n${USAGE}`);
    if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(to))
      throw new CallError(`'${to}' cannot be an id: it is of lower-case letters, digits and hyphens.`);
    const root = publicationFolder();
    if ((await finishEarlier(root)).length > 0) return;
    const bench = await loadBench(root);
    choose('id', from, recordsOf(bench, kind), kind);
    const texts = await publicationTexts(root);
    const taken = filesOfRecord(kind, to).find((path) => texts.has(path));
    if (taken !== undefined) throw new CallError(`${taken} is there already; choose another id. Nothing was changed.`);
    const changes = renameRecord(texts, { kind, from, to });
    await tryChanges(root, changes);
    say(await makeChanges(root, changes, new Set(texts.keys()), dry));
    if (dry === true) return;
    say(
      bench.ledger === undefined
        ? '\nNothing of this publication is recorded yet, so its old address leads nowhere.'
        : '\nRecord it, so that its figures keep their past and its old address leads on:\n  npm run record -- --reason "…" --date YYYY-MM-DD',
    );
  },
  { takesWords: true },
);
