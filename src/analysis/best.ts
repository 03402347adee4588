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
 * where a difference is known better than from the two budgets.
 */
export function rankWithTies<T extends BudgetedValue & { readonly id: string }>(
  entries: readonly T[],
  alpha = 0.05,
  differenceOf: (slower: T, faster: T) => DifferenceResult | NoDifference = estimateDifference,
): RankedEntry[] {
  const sorted = [...entries].sort((a, b) => a.value - b.value);
  const pairs: { readonly of: number; readonly first: boolean; readonly p: number }[] = [];
  for (let i = 0; i < sorted.length; i += 1) {
    for (let j = i + 1; j < sorted.length; j += 1) {
      const [low, high] = [sorted[i], sorted[j]];
      if (low === undefined || high === undefined) continue;
      const difference = differenceOf(high, low);
      if (difference.kind === 'difference') pairs.push({ of: j, first: i === 0, p: difference.p });
    }
  }
  const adjusted = adjustHolm(pairs.map((pair) => pair.p));
  const againstBest = new Map<number, number>();
  pairs.forEach((pair, k) => {
    if (pair.first) againstBest.set(pair.of, adjusted[k] ?? 1);
  });
  return sorted.map(({ id, value }, i) => {
    const p = againstBest.get(i);
    return { id, value, tiedWithBest: p === undefined || p > alpha, p };
  });
}
