/** What the parts that name one end of an order have in common. */
import { labelSessions } from '../../register/labels.ts';
import type { Figure } from '../../register/register.ts';
import type { Answering } from './definition.ts';
import { rankedFigures, type Selection } from './selected-figures.ts';

export interface NamedFigure {
  readonly name: string;
  readonly figure: Figure;
}

/** The session at one end of the order, and all that these data cannot tell from it, named by what sets them apart. */
export function extremeOf(
  selection: Selection,
  answering: Answering,
  end: 'lowest' | 'highest',
): readonly NamedFigure[] {
  const { bench, sessions, ranked } = rankedFigures(selection, answering, end);
  const labels = labelSessions(bench, sessions).of;
  return ranked
    .filter(({ tiedWithBest }) => tiedWithBest)
    .map(({ figure }) => ({ figure, name: labels.get(figure.of['session'] ?? '') ?? figure.id }));
}
