import { readBench } from '../ingest/read-bench.ts';
import type { Bench } from '../model/bench.ts';
import { foldersOf } from '../site/publication.ts';

/** The bench of a folder. Rejects with a ProblemsError when its files hold mistakes: a plan on faulty data would be none. */
export function loadBench(root: string): Promise<Bench> {
  return readBench(foldersOf(root));
}
