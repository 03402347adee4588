import { standingFamilies } from '../register/comparisons/compile-comparisons.ts';
import { labelSessions } from '../register/labels.ts';
import type { Published } from '../register/published.ts';
import { publishedFiles } from '../register/published-files.ts';
import { inBenchOrder } from '../register/select.ts';
import type { PageFacts } from '../recompute/page-facts.ts';
import { askedFamilies } from '../write-ups/asked-families.ts';

/** What the page that recomputes has to know of the publication. */
export function recomputeFacts({ bench, register }: Published): PageFacts {
  const standing = standingFamilies(bench);
  const sessions = inBenchOrder(bench, bench.sessions);
  const labels = labelSessions(bench, sessions);
  return {
    analysis: register.analysis,
    files: publishedFiles(bench).map(({ path, sha256 }) => ({ path, sha256 })),
    sessions: sessions.map(({ id }) => ({ id, title: labels.of.get(id) ?? id })),
    standing,
    asked: askedFamilies(bench, standing),
  };
}
