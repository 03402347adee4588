import { rankWithTies } from '../../analysis/best.ts';
import { budgetOfFigure } from '../budget-of-figure.ts';
import type { Figure } from '../register.ts';

export interface RankedFigure {
  readonly figure: Figure;
  /** The lowest value, and every one that these data cannot tell from it. */
  readonly tiedWithBest: boolean;
}

/** Figures from lowest to highest, each with whether it can be told from the lowest; all pairs are adjusted together (Holm). */
export function rankFigures(figures: readonly Figure[]): readonly RankedFigure[] {
  const byId = new Map(figures.map((figure) => [figure.id, figure]));
  return rankWithTies(figures.map((figure) => ({ id: figure.id, ...budgetOfFigure(figure) }))).flatMap(({ id, tiedWithBest }) => {
    const figure = byId.get(id);
    return figure === undefined ? [] : [{ figure, tiedWithBest }];
  });
}

/** Kinds of figures of one session that have a budget, and so can be told apart. */
export const RANKABLE: ReadonlySet<string> = new Set(['total', 'frames']);
