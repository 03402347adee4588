import { estimateDifference } from '../../analysis/difference.ts';
import type { Compilation } from '../compilation.ts';
import { groupEntry } from '../entry-groups.ts';
import { KINDS } from '../kinds.ts';
import { labelSessions, sessionTitle } from '../labels.ts';
import type { Figure } from '../register.ts';
import { comparedSession, differenceFigure, ofPair } from './comparison-figures.ts';
import { choicesOf, type Choice } from './choices.ts';
import { bodyGroup, type Family, type SessionPair } from './family.ts';
import { labelPairs } from './pair-labels.ts';
import { standingConditions } from './standing.ts';

/**
 * What each condition of a body costs over its fastest one: differences from the lowest total, through the same chain.
 */
export function costFigures(compilation: Compilation): readonly Figure[] {
  return choicesOf(compilation.bench).flatMap((choice) => costsOf(compilation, choice));
}

/** Its id does not name the lowest: which one that is may change with the next session. */
export const costId = (session: string): string => `cost/${session}`;

function costsOf(compilation: Compilation, { body, sessions, rig }: Choice): readonly Figure[] {
  const { session, bench, find } = compilation;
  const totalOf = (id: string): number => session(id).estimate.value;
  const lowest = standingConditions(bench, sessions).reduce((best, each) =>
    totalOf(each.id) < totalOf(best.id) ? each : best,
  );
  const labels = labelSessions(bench, sessions);
  const noLabels = labelPairs(bench, []);
  const pairs = sessions.map(({ id }): SessionPair => ({ a: id, b: lowest.id }));
  const groupTitle = `${find.body(body).name}: what each condition costs over the lowest`;
  const family: Family = { id: '', of: { body, rig }, group: bodyGroup(body), groupTitle, inWords: '', pairs };
  const words = `The total less that of ${sessionTitle(bench, lowest)} (${lowest.id}), the lowest of ${find.body(body).name} on ${find.rig(rig).name} through the same chain.`;
  return pairs.map((pair): Figure => {
    const id = costId(pair.a);
    const label = `${KINDS.cost.label}: ${labels.of.get(pair.a) ?? pair.a}, on ${find.rig(rig).name}`;
    const named = { id, kind: 'cost', label, entry: groupEntry(family.group, id, pair.a) };
    if (pair.a === lowest.id) {
      // A session is no further from itself than nothing, and that is certain.
      const {
        readings = 0,
        runs = 0,
        excluded = 0,
      } = session(lowest.id).figures.find(({ kind }) => kind === 'total') ?? {};
      const inWords = `The lowest total of ${find.body(body).name} on ${find.rig(rig).name} through this chain: the others are set against it.`;
      return {
        ...ofPair(compilation, family, pair, 'cost', id, noLabels),
        ...named,
        readings,
        runs,
        excluded,
        value: 0,
        text: 'the lowest',
        inWords,
      };
    }
    const sides = [comparedSession(compilation, pair.a), comparedSession(compilation, pair.b)] as const;
    const difference = estimateDifference(sides[0].budget, sides[1].budget);
    const figure = differenceFigure({ compilation, family, labels: noLabels, pair, sides, difference });
    return { ...figure, ...named, inWords: `${words} ${figure.inWords ?? ''}` };
  });
}
