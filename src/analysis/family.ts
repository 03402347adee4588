import type { BudgetedValue } from './components.ts';
import { estimateDifference, type Difference } from './difference.ts';
import type { DifferenceResult, NoDifference } from './difference-result.ts';
import { testEquivalence, type Equivalence } from './equivalence.ts';
import { intervalAt } from './error-tail.ts';
import type { RunPlan } from './further-runs.ts';
import { adjustHolm } from './holm.ts';
import type { Interval } from './interval.ts';
import { decideVerdict, type Verdict } from './verdict.ts';

/** One comparison a − b asked for by a page. */
export interface ComparisonQuestion {
  readonly id: string;
  readonly a: BudgetedValue;
  readonly b: BudgetedValue;
  readonly margin: number;
  readonly plan?: RunPlan;
}

/** The same, where the difference is known already. */
export interface DifferenceQuestion<D extends DifferenceResult> {
  readonly id: string;
  readonly difference: D | NoDifference;
  readonly margin: number;
  readonly plan?: RunPlan;
}

export interface Comparison<D extends DifferenceResult = Difference> {
  readonly id: string;
  /** With its own interval, as if it were the only comparison. */
  readonly difference: D | NoDifference;
  /** All intervals of the family hold together with probability 1 − alpha (Bonferroni). */
  readonly simultaneousInterval: Interval | undefined;
  /** Holm-adjusted p of no difference. */
  readonly pDifference: number | undefined;
  readonly equivalence: Equivalence | undefined;
  /** Holm-adjusted p of equivalence. */
  readonly pEquivalence: number | undefined;
  readonly verdict: Verdict;
}

/** `judgeFamily` of the differences between budgeted values. */
export function compareFamily(questions: readonly ComparisonQuestion[], alpha = 0.05, others = 0): Comparison[] {
  return judgeFamily(
    questions.map(({ a, b, ...rest }) => ({ ...rest, difference: estimateDifference(a, b, 1 - alpha) })),
    alpha,
    others,
  );
}

/**
 * Several comparisons that are read together: verdicts from Holm-adjusted p-values, one adjustment for "is there a
 * difference" and one for "are they the same", each over all comparisons that can be judged.
 *
 * The probability of any false `slower` or `faster` in the family is at most alpha, and so is that of any false `same`.
 * Verdicts may be sharper than the simultaneous intervals, because Holm's procedure is. `others` statements that are read
 * with them take their part of alpha, whatever their own p.
 */
export function judgeFamily<D extends DifferenceResult>(
  questions: readonly DifferenceQuestion<D>[],
  alpha = 0.05,
  others = 0,
): Comparison<D>[] {
  const equivalences = questions.map(({ difference, margin }) =>
    difference.kind === 'difference' ? testEquivalence(difference, margin, alpha) : undefined,
  );
  const pDifferences = adjustPresent(
    questions.map(({ difference }) => (difference.kind === 'difference' ? difference.p : undefined)),
    others,
  );
  const pEquivalences = adjustPresent(
    equivalences.map((equivalence) => equivalence?.p),
    others,
  );
  const members = questions.filter(({ difference }) => difference.kind === 'difference').length + others;
  return questions.map(({ id, difference, margin, plan }, i) => {
    const pDifference = pDifferences[i];
    const pEquivalence = pEquivalences[i];
    return {
      id,
      difference,
      simultaneousInterval: difference.kind === 'difference' ? intervalAt(difference, 1 - alpha / members) : undefined,
      pDifference,
      equivalence: equivalences[i],
      pEquivalence,
      verdict: decideVerdict({
        difference,
        margin,
        alpha,
        // Holm asks alpha over the number of comparisons of the first, and of no other more.
        planAlpha: alpha / Math.max(1, members),
        ...(pDifference === undefined ? {} : { pDifference }),
        ...(pEquivalence === undefined ? {} : { pEquivalence }),
        ...(plan === undefined ? {} : { plan }),
      }),
    };
  });
}

/** Holm over the p-values that are there, leaving the gaps where they are. */
function adjustPresent(values: readonly (number | undefined)[], others: number): (number | undefined)[] {
  const adjusted = adjustHolm(
    values.filter((p) => p !== undefined),
    others,
  );
  let next = 0;
  return values.map((p) => (p === undefined ? undefined : adjusted[next++]));
}
