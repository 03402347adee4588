import { estimateDifference } from '../../analysis/difference.ts';
import type { Compilation } from '../compilation.ts';
import type { Figure } from '../register.ts';
import { comparedSession, differenceFigure } from './comparison-figures.ts';
import { choicesOf, type Choice } from './choices.ts';
import type { Family, SessionPair } from './family.ts';
import { labelPairs } from './pair-labels.ts';

/** What each condition of a body costs over its fastest one: differences from the lowest total, through the same chain. */
export function costFigures(compilation: Compilation): readonly Figure[] {
  return choicesOf(compilation.bench).flatMap((choice) => costsOf(compilation, choice));
}

function costsOf(compilation: Compilation, { body, sessions, rig }: Choice): readonly Figure[] {
  const { session, bench, find } = compilation;
  const valueOf = (id: string): number => session(id).estimate.value;
  const fastest = sessions.reduce((best, each) => (valueOf(each.id) < valueOf(best.id) ? each : best));
  const pairs = sessions.filter((each) => each !== fastest).map(({ id }): SessionPair => ({ a: id, b: fastest.id }));
  const family: Family = { id: '', of: { body, rig }, group: `costs-${body}`, groupTitle: `${find.body(body).name}: what each condition costs over the lowest`, inWords: '', pairs };
  const labels = labelPairs(bench, pairs);
  return pairs.map((pair) => {
    const sides = [comparedSession(compilation, pair.a), comparedSession(compilation, pair.b)] as const;
    return differenceFigure({ compilation, family, labels, pair, sides, difference: estimateDifference(sides[0].budget, sides[1].budget) });
  });
}
