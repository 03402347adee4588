/** `npm run variation`: learns anew how delays vary on this bench, and writes it into data/variation.yaml. */
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { VARIATION_FILE } from '../ingest/parse-variation.ts';
import { renderVariation } from '../ingest/render-variation.ts';
import { describeLearnt } from '../register/variation/describe-learnt.ts';
import { learnStatement } from '../register/variation/learn-statement.ts';
import { loadBench } from './load-bench.ts';
import { CallError, requireDay, runCommand } from './run.ts';
import { say } from './say.ts';
import { publicationFolder } from '../site/publication.ts';

const USAGE = `Usage: npm run variation -- --date YYYY-MM-DD

  --date YYYY-MM-DD  the day on which it is learnt; nothing here reads a clock, so say it

Learns from all sessions how much delays vary from clip to clip and from day to day, and writes it into
data/${VARIATION_FILE}. Every interval rests on that file: build to see what moved, then npm run record.`;

await runCommand(USAGE, { date: { type: 'string' } }, async ({ date = '' }) => {
  requireDay(date, 'What is learnt', USAGE);
  const root = publicationFolder();
  const bench = await loadBench(root);
  if (bench.sessions.length === 0)
    throw new CallError('There is no session with readings yet, so nothing to learn from.');
  const learnt = learnStatement(bench, date);
  say(describeLearnt(learnt, bench));
  const path = join(root, 'data', VARIATION_FILE);
  // A later day alone is no news: the file stays as it is, and nothing that rests on it moves.
  if (
    bench.variation &&
    (await readFile(path, 'utf8')) === renderVariation({ ...learnt, date: bench.variation.date })
  ) {
    say(`\ndata/${VARIATION_FILE} says so already; it is left as it is.`);
    return;
  }
  await writeFileAtomic(path, renderVariation(learnt));
  say(`\nWritten to data/${VARIATION_FILE}. Build to see what moved, then npm run record.`);
});
