import { estimateDifference } from '../../analysis/difference.ts';
import type { Session } from '../../model/bench.ts';
import type { Compilation } from '../compilation.ts';
import { groupEntry } from '../entry-groups.ts';
import { KINDS } from '../kinds.ts';
import { sessionTitle } from '../labels.ts';
import type { Figure } from '../register.ts';
import { bodyFamilies } from './body-families.ts';
import { comparedSession, differenceFigure } from './comparison-figures.ts';
import type { Family } from './family.ts';
import { labelPairs } from './pair-labels.ts';

/** Its id does not name the lowest: which one that is may change with the next session. */
export const laterId = (session: string): string => `later/${session}`;

/** How much later each body is than the one with the lowest total, in every condition that several were measured in. */
export function laterFigures(compilation: Compilation): readonly Figure[] {
  return bodyFamilies(compilation.bench).flatMap((family) => laterThanLeast(compilation, family));
}

function laterThanLeast(compilation: Compilation, family: Family): readonly Figure[] {
  const { session, bench, find } = compilation;
  const ids = [...new Set(family.pairs.flatMap(({ a, b }) => [a, b]))];
  const totalOf = (id: string): number => session(id).estimate.value;
  const least = ids.reduce((best, id) => (totalOf(id) < totalOf(best) ? id : best));
  const nameOf = ({ body }: Session): string => find.body(body).name;
  return ids
    .filter((id) => id !== least)
    .map((id): Figure => {
      const pair = { a: id, b: least };
      const sides = [comparedSession(compilation, id), comparedSession(compilation, least)] as const;
      const difference = estimateDifference(sides[0].budget, sides[1].budget);
      const labels = labelPairs(bench, [pair]);
      const figure = differenceFigure({ compilation, family, labels, pair, sides, difference });
      const lowest = session(least).session;
      return {
        ...figure,
        id: laterId(id),
        kind: 'later',
        label: `${KINDS.later.label}: ${nameOf(session(id).session)}`,
        entry: groupEntry(family.group, laterId(id), id),
        inWords: `The total less that of ${sessionTitle(bench, lowest)} (${least}), the lowest in this condition. ${figure.inWords ?? ''}`,
      };
    });
}
