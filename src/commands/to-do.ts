/** `npm run to-do`: what there is to do for whoever publishes. */
import { join } from 'node:path';
import { loadSite, publicationFolder } from 'lagfolio/site';
import { CLIPS, endsIn, PHOTOGRAPHS } from '../ingest/illustrations/names.ts';
import { compareWithLedger } from '../ledger/compare.ts';
import type { Bench } from '../model/bench.ts';
import { filesShown } from '../model/illustration.ts';
import { describeToDo } from './describe-to-do.ts';
import { filesOf } from './files-of.ts';
import { runCommand } from './run.ts';
import { say } from './say.ts';

const USAGE = `Usage: npm run to-do [-- ID ...]

  ID  only what concerns these sessions, bodies, rigs or reports

Lists what there is to do for whoever publishes: what the analysis noticed, each with its remedy; planned sessions,
drafts, pictures that no text shows, and what is not recorded yet. Pages say of it what concerns a reader. Writes
nothing.`;

await runCommand(
  USAGE,
  {},
  async (_options, ids) => {
    const root = publicationFolder();
    const { bench, register } = await loadSite();
    const changes = compareWithLedger(bench, register);
    say(describeToDo({ bench, findings: register.findings, changes, unshown: await unshownOf(root, bench) }, ids));
  },
  { takesWords: true },
);

/** Pictures and clips that stand in the publication and that no text shows. Drafts are not read, and may show some. */
async function unshownOf(root: string, { illustrations = [], drafts = [] }: Bench): Promise<readonly string[]> {
  if (drafts.length > 0) return [];
  const shown = new Set(illustrations.flatMap(({ shows }) => filesShown(shows)).map(({ path }) => path));
  const names = await Promise.all(
    ['data', 'content'].map(async (top) => (await filesOf(join(root, top))).map((name) => `${top}/${name}`)),
  );
  return names
    .flat()
    .filter((path) => endsIn(path, [...PHOTOGRAPHS, ...CLIPS]) && !shown.has(path))
    .sort();
}
