import type { Bench, Rig } from '../model/bench.ts';
import { conditionKey } from '../register/comparisons/conditions.ts';
import { inBenchOrder } from '../register/select.ts';
import type { ConditionToMeasure } from './planned-session.ts';

export interface ComparableCondition extends ConditionToMeasure {
  /** Bodies that have been measured in it. */
  readonly bodies: number;
}

/**
 * The conditions in which a new body is best measured on a rig as it stands, so that it joins what is published: those that
 * most bodies share first, then those with most sessions, then in bench order.
 */
export function comparableConditions(
  bench: Bench,
  rig: Rig,
  body: string,
  most: number,
): readonly ComparableCondition[] {
  const elsewhere = inBenchOrder(
    bench,
    bench.sessions.filter(
      (session) =>
        session.rig === rig.id && session.display === rig.display && session.links.join() === rig.links.join(),
    ),
  );
  const own = new Set(
    [...bench.sessions, ...bench.planned]
      .filter((session) => session.body === body && session.rig === rig.id)
      .map(conditionKey),
  );
  const groups = [
    ...Map.groupBy(
      elsewhere.filter((session) => session.body !== body),
      conditionKey,
    ),
  ];
  return groups
    .map(([, sessions]) => ({ sessions, bodies: new Set(sessions.map((session) => session.body)).size }))
    .filter(({ sessions: [first] }) => first !== undefined && !own.has(conditionKey(first)))
    .sort((a, b) => b.bodies - a.bodies || b.sessions.length - a.sessions.length)
    .slice(0, most)
    .flatMap(({ sessions: [first], bodies }) =>
      first === undefined ? [] : [{ settings: first.settings, rate: first.rate, bodies }],
    );
}
