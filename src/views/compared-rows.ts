import type { Figure } from '../register/register.ts';
import type { Published } from '../register/published.ts';
import { differenceId, familySizeId, ratioId, verdictId, type SessionPair } from '../register/comparisons/family.ts';
import { labelPairs } from '../register/comparisons/pair-labels.ts';

export interface ComparedRow {
  /** Heading under which the row stands; empty for none. */
  readonly group: string;
  readonly label: string;
  readonly difference: Figure;
  /** Absent where there is none: over a total of zero, or without any scatter. */
  readonly ratio: Figure | undefined;
  readonly verdict: Figure;
  /** Whether the verdict says the difference too: `slower by 24.7 ± 9.3 ms`. */
  readonly isSaid: boolean;
}

export interface ComparedRows {
  readonly rows: readonly ComparedRow[];
  readonly shared: string;
  /** How many comparisons were adjusted together: one figure for each family in the rows. */
  readonly familySizes: readonly Figure[];
}

/** The published figures of pairs of one family, named so that each row says what sets it apart. */
export function comparedRows(
  { bench, figure }: Published,
  family: string,
  pairs: readonly SessionPair[],
): ComparedRows {
  const require = (id: string): Figure => {
    const found = figure(id);
    if (found === undefined)
      throw new Error(
        `no figure '${id}': comparisons in write-ups are collected before pages are drawn, so their properties must be written out as plain values`,
      );
    return found;
  };
  const labels = labelPairs(bench, pairs);
  return {
    rows: pairs.map((pair) => {
      const { group, row } = labels.of(pair);
      const difference = require(differenceId(pair));
      const verdict = require(verdictId(family, pair));
      return {
        group,
        label: row,
        difference,
        ratio: figure(ratioId(pair)),
        verdict,
        isSaid: saysDifference(verdict, difference),
      };
    }),
    shared: labels.shared,
    familySizes: [require(familySizeId(family))],
  };
}

/** `slower by 24.7 ± 9.3 ms` says −24.7 ± 9.3 ms; `too close to call` does not. */
export function saysDifference(verdict: Figure, difference: Figure): boolean {
  return verdict.text.endsWith(` ${difference.text.replace('−', '')}`);
}
