import { pairsWithP, rankWithTies } from '../../analysis/best.ts';
import type { BudgetedValue } from '../../analysis/components.ts';
import { estimateDifference } from '../../analysis/difference.ts';
import { budgetOfFigure } from '../budget-of-figure.ts';
import type { Figure } from '../register.ts';

export interface RankedFigure {
  readonly figure: Figure;
  /** The one that the order begins with, and every one that these data cannot tell from it. */
  readonly tiedWithBest: boolean;
}

/**
 * Figures from lowest to highest, each with whether it can be told from the lowest; all pairs are adjusted together
 * (Holm). From `highest` down, the other way round.
 */
export function rankFigures(
  figures: readonly Figure[],
  from: 'lowest' | 'highest' = 'lowest',
  adjust?: (p: readonly number[]) => readonly number[],
): readonly RankedFigure[] {
  const byId = new Map(figures.map((figure) => [figure.id, figure]));
  const ranked =
    from === 'lowest'
      ? rankWithTies(figures.map(budgeted), undefined, undefined, adjust)
      : rankWithTies(
          figures.map((figure) => ({ ...budgeted(figure), value: -figure.value })),
          undefined,
          (a, b) => estimateDifference({ ...b, value: -b.value }, { ...a, value: -a.value }),
          adjust,
        );
  return ranked.flatMap(({ id, tiedWithBest }) => {
    const figure = byId.get(id);
    return figure === undefined ? [] : [{ figure, tiedWithBest }];
  });
}

/** p of every pair, each of no difference. */
export function pOfPairs(figures: readonly Figure[]): readonly number[] {
  return pairsWithP(figures.map(budgeted)).map(({ p }) => p);
}

function budgeted(figure: Figure): BudgetedValue & { readonly id: string } {
  return { id: figure.id, ...budgetOfFigure(figure) };
}

/** Kinds of figures of one session that have a budget, and so can be told apart. */
export const RANKABLE: ReadonlySet<string> = new Set(['total', 'frames']);
