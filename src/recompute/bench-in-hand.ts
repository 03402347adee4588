/**
 * Downloaded files → a bench of them, as far as figures need one: what a write-up or the site's own words say is left
 * out.
 */
import { benchOfData } from '../ingest/bench-of-data.ts';
import { sourcesInHand } from '../ingest/files-in-hand.ts';
import { parseData } from '../ingest/parse-data.ts';
import { ProblemList } from '../ingest/problem-list.ts';
import { METHODS, PAIR_METHODS, type Bench } from '../model/bench.ts';

/** Throws one ProblemsError with every mistake of the files; `missingFiles` are to be asked for before. */
export function benchInHand(files: ReadonlyMap<string, Uint8Array>): Bench {
  const problems = new ProblemList();
  const sources = sourcesInHand(files, problems);
  const parsed = parseData(sources, { methods: [...METHODS, ...PAIR_METHODS], readProse: () => [] });
  problems.throwIfAny();
  const bench = benchOfData(parsed, sources.settings);
  if (bench === undefined) throw new Error('a file that was not read was not reported');
  return bench;
}
