/** Conditions that several bodies were measured in, and which two of them never through one chain. */
import type { Bench, Session } from '../../model/bench.ts';
import { compareText } from '../../model/compare-text.ts';
import { once } from '../../model/once.ts';
import { badgesOf, isFaulty } from '../badges.ts';
import { bodyElement, partOf } from '../chain/elements.ts';
import { chainKey, conditionKey } from '../comparisons/conditions.ts';
import { describeCondition } from '../comparisons/describe-condition.ts';
import { lookup } from '../lookup.ts';

/** A body as it was set there, with one firmware. */
export interface CrossedBody {
  readonly element: string;
  /** `Dunmere 30`, or `Dunmere 30 with firmware 5.3` where others of it stand beside. */
  readonly name: string;
  readonly sessions: readonly [Session, ...Session[]];
}

export interface CrossedCondition {
  /** Its levels, fit for an id: `uhd-59.94-off`. */
  readonly id: string;
  readonly words: string;
  /** In bench order, later firmware first. */
  readonly bodies: readonly CrossedBody[];
  /** Every two that no chain has in common. */
  readonly pairs: readonly (readonly [a: CrossedBody, b: CrossedBody])[];
}

/** In the order in which the bench first has them; those only in which two bodies have no chain in common. */
export const crossedConditions: (bench: Bench) => readonly CrossedCondition[] = once((bench) => {
  const badges = badgesOf(bench);
  const sound = bench.sessions.filter(({ id }) => !isFaulty(badges(id)));
  return [...Map.groupBy(sound, conditionKey).values()].flatMap((sessions): readonly CrossedCondition[] => {
    const bodies = bodiesOf(bench, sessions);
    const pairs = bodies.flatMap((a, index) =>
      bodies
        .slice(index + 1)
        .filter((b) => !haveChainInCommon(a, b))
        .map((b) => [a, b] as const),
    );
    const [first] = sessions;
    if (first === undefined || pairs.length === 0) return [];
    const words = describeCondition(bench, { ...first, links: [] });
    return [{ id: partOf(bodyElement(first, bench)).id.split('/').at(-1) ?? '', words, bodies, pairs }];
  });
});

function bodiesOf(bench: Bench, sessions: readonly Session[]): readonly CrossedBody[] {
  const find = lookup(bench);
  return bench.bodies.flatMap(({ id }) => {
    const own = sessions.filter(({ body }) => body === id);
    const byFirmware = [...Map.groupBy(own, ({ firmware = '' }) => firmware)].sort(([x], [y]) => compareText(y, x));
    return byFirmware.flatMap(([firmware, [first, ...more]]): readonly CrossedBody[] => {
      if (first === undefined) return [];
      const { name } = find.body(id);
      const stated = firmware === '' ? 'firmware not stated' : `firmware ${firmware}`;
      return [
        {
          element: bodyElement(first, bench),
          name: byFirmware.length > 1 ? `${name} with ${stated}` : name,
          sessions: [first, ...more],
        },
      ];
    });
  });
}

function haveChainInCommon(a: CrossedBody, b: CrossedBody): boolean {
  const chains = new Set(a.sessions.map(chainKey));
  return b.sessions.some((session) => chains.has(chainKey(session)));
}
