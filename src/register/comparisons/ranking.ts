import { rankWithTies } from '../../analysis/best.ts';
import { budgetOfFigure } from '../budget-of-figure.ts';
import type { Figure } from '../register.ts';

export interface RankedFigure {
  readonly figure: Figure;
  /** The one that the order begins with, and every one that these data cannot tell from it. */
  readonly tiedWithBest: boolean;
}

/**
 * Figures from lowest to highest, each with whether it can be told from the lowest; all pairs are adjusted together (Holm).
 * From `highest` down, the other way round.
 */
export function rankFigures(
  figures: readonly Figure[],
  from: 'lowest' | 'highest' = 'lowest',
): readonly RankedFigure[] {
  const byId = new Map(figures.map((figure) => [figure.id, figure]));
  const sign = from === 'lowest' ? 1 : -1;
  const budgeted = figures.map((figure) => ({ id: figure.id, ...budgetOfFigure(figure) }));
  return rankWithTies(budgeted.map((each) => ({ ...each, value: sign * each.value }))).flatMap(
    ({ id, tiedWithBest }) => {
      const figure = byId.get(id);
      return figure === undefined ? [] : [{ figure, tiedWithBest }];
    },
  );
}

/** Kinds of figures of one session that have a budget, and so can be told apart. */
export const RANKABLE: ReadonlySet<string> = new Set(['total', 'frames']);
