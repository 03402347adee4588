import type { DifferenceResult, NoDifference } from './difference-result.ts';
import { testEquivalence } from './equivalence.ts';
import { planFurtherRuns, type FurtherRuns, type RunPlan } from './further-runs.ts';

export type Verdict =
  /** The interval excludes 0. `withinMargin`: and yet it is shown to be smaller than the margin. */
  | { readonly kind: 'slower' | 'faster'; readonly withinMargin: boolean }
  | { readonly kind: 'same'; readonly margin: number }
  | { readonly kind: 'not-settled'; readonly furtherRuns: FurtherRuns }
  | { readonly kind: 'not-estimable'; readonly reason: NoDifference['reason'] };

export interface VerdictQuestion {
  readonly difference: DifferenceResult | NoDifference;
  /** Half-width of what counts as the same, in the unit of the difference. */
  readonly margin: number;
  readonly alpha?: number;
  /** p of a difference of 0, adjusted for the family; the difference's own p where it stands alone. */
  readonly pDifference?: number;
  /** p of equivalence, adjusted for the family; the pair of one-sided tests' own p where it stands alone. */
  readonly pEquivalence?: number;
  readonly plan?: RunPlan;
  /** Level at which further runs are planned; alpha where it stands alone, stricter in a family. */
  readonly planAlpha?: number;
}

/**
 * The one rule behind every verdict word, for a difference a − b of latencies:
 *
 * 1. nothing to judge by: `not-estimable`, with the reason;
 * 2. p of "no difference" at most alpha, that is the interval at 1 − alpha excludes 0: `slower` (above 0) or `faster`;
 * 3. otherwise equivalence shown within ± margin by two one-sided tests at alpha: `same`;
 * 4. otherwise `not-settled`, with the further runs that would settle it.
 *
 * Rules 2 and 3 each err with probability alpha at most; in a family pass the adjusted p-values.
 */
export function decideVerdict({
  difference,
  margin,
  alpha = 0.05,
  pDifference,
  pEquivalence,
  plan,
  planAlpha = alpha,
}: VerdictQuestion): Verdict {
  if (difference.kind === 'not-estimable') return { kind: 'not-estimable', reason: difference.reason };
  const equivalent = (pEquivalence ?? testEquivalence(difference, margin, alpha).p) <= alpha;
  if ((pDifference ?? difference.p) <= alpha) {
    return { kind: difference.value > 0 ? 'slower' : 'faster', withinMargin: equivalent };
  }
  if (equivalent) return { kind: 'same', margin };
  return { kind: 'not-settled', furtherRuns: planFurtherRuns(difference.value, plan, margin, planAlpha) };
}
