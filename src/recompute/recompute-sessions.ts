/** The figures of sessions, from nothing but their files: by the code that a build runs, in the same order. */
import { estimateSession } from '../analysis/estimate.ts';
import { compilationOf, compileSessions, type Compilation } from '../register/compilation.ts';
import { comparisonFigures } from '../register/comparisons/comparison-figures.ts';
import type { Figure } from '../register/register.ts';
import type { Estimator } from '../register/session-figures.ts';
import { benchInHand } from './bench-in-hand.ts';
import { familyAlone } from './family-alone.ts';

/** How a session is estimated at another level of coverage than the 95 % of a build. */
export function estimatorAt(level: number, estimator: Estimator = estimateSession): Estimator {
  return (input) => estimator({ ...input, level });
}

/** Throws a ProblemsError with every mistake of the files, or with every session that the analysis refuses. */
export function recomputeSessions(files: ReadonlyMap<string, Uint8Array>, estimator?: Estimator): Compilation {
  return compileSessions(benchInHand(files), estimator && { estimator });
}

/** Difference, ratio and verdict of two sessions, as the only comparison of its family. */
export function recomputePair(compilation: Compilation, a: string, b: string): readonly Figure[] {
  const pair = compilationOf(
    compilation.bench,
    [a, b].map((id) => compilation.session(id)),
  );
  return comparisonFigures(pair, familyAlone(a, b)).filter(({ kind }) => kind !== 'family');
}
