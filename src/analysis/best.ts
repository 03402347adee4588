import type { BudgetedValue } from './components.ts';
import { estimateDifference } from './difference.ts';
import type { DifferenceResult, NoDifference } from './difference-result.ts';
import { adjustHolm } from './holm.ts';

export interface RankedEntry {
  readonly id: string;
  readonly value: number;
  /** True for the lowest value and for every entry that these data cannot tell from it. */
  readonly tiedWithBest: boolean;
  /** Holm-adjusted p of no difference from the lowest value; undefined for that one, and where nothing can be judged. */
  readonly p: number | undefined;
}

/**
 * Entries from lowest to highest latency, and which of them cannot be told from the best.
 *
 * Every pair is compared and all p-values are adjusted together (Holm), because which entry comes out lowest is itself
 * decided by the data. So with probability 1 − alpha at least, the truly lowest entry is among those tied with the best.
 * A pair that cannot be judged counts as tied. Equal values keep the order of the input. `differenceOf` may be given
 * where a difference is known better than from the two budgets, and `adjust` where these pairs are read with others.
 */
export function rankWithTies<T extends BudgetedValue & { readonly id: string }>(
  entries: readonly T[],
  alpha = 0.05,
  differenceOf: (slower: T, faster: T) => DifferenceResult | NoDifference = estimateDifference,
  adjust: (p: readonly number[]) => readonly number[] = adjustHolm,
): RankedEntry[] {
  const sorted = [...entries].sort((a, b) => a.value - b.value);
  const pairs = pairsWithP(sorted, differenceOf);
  const adjusted = adjust(pairs.map((pair) => pair.p));
  const againstBest = new Map<number, number>();
  pairs.forEach((pair, k) => {
    if (pair.low === 0) againstBest.set(pair.high, adjusted[k] ?? 1);
  });
  return sorted.map(({ id, value }, i) => {
    const p = againstBest.get(i);
    return { id, value, tiedWithBest: p === undefined || p > alpha, p };
  });
}

/** p of no difference of every pair that can be judged, by its places in the order given. */
export function pairsWithP<T extends BudgetedValue>(
  entries: readonly T[],
  differenceOf: (slower: T, faster: T) => DifferenceResult | NoDifference = estimateDifference,
): readonly { readonly low: number; readonly high: number; readonly p: number }[] {
  return entries.flatMap((low, i) =>
    entries.slice(i + 1).flatMap((high, k) => {
      const difference = differenceOf(high, low);
      return difference.kind === 'difference' ? [{ low: i, high: i + 1 + k, p: difference.p }] : [];
    }),
  );
}
