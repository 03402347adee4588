import type { Bench, Session } from '../../model/bench.ts';
import { compareText } from '../../model/compare-text.ts';
import { badgesOf, isFaulty } from '../badges.ts';
import { conditionKey } from './conditions.ts';

/**
 * Of several sessions of one body in one condition, the one that stands for it wherever only one can: an ordinary one
 * before any other, then the latest. Never by its value, so that the luckiest repeat does not speak for all.
 */
function standingOf(bench: Bench, sessions: readonly [Session, ...Session[]]): Session {
  const badges = badgesOf(bench);
  const [first] = sessions.toSorted(
    (x, y) => badges(x.id).length - badges(y.id).length || compareText(y.date, x.date) || compareText(x.id, y.id),
  );
  return first ?? sessions[0];
}

/**
 * Of sessions in one condition, one for each body, in the order of the bench; ordinary ones only, where two bodies have
 * one.
 */
export function standingBodies(bench: Bench, sessions: readonly Session[]): readonly Session[] {
  const each = bench.bodies.flatMap(({ id }) => {
    const [first, ...more] = sessions.filter(({ body }) => body === id);
    return first === undefined ? [] : [standingOf(bench, [first, ...more])];
  });
  const ordinary = each.filter(({ id }) => badgesOf(bench)(id).length === 0);
  return ordinary.length > 1 ? ordinary : each;
}

/**
 * Of a body's sessions through one chain, one for each condition. Those that are not ordinary stand aside where two
 * conditions have an ordinary one; of the rest, those that went wrong stand aside where two did not.
 */
export function standingConditions(bench: Bench, sessions: readonly Session[]): readonly Session[] {
  const each = [...Map.groupBy(sessions, conditionKey).values()].flatMap(([first, ...more]) =>
    first === undefined ? [] : [standingOf(bench, [first, ...more])],
  );
  const badges = badgesOf(bench);
  const whole = each.filter(({ id }) => !isFaulty(badges(id)));
  const ordinary = whole.filter(({ id }) => badges(id).length === 0);
  return [ordinary, whole].find(({ length }) => length > 1) ?? each;
}
