import type { Bench, Session } from '../../model/bench.ts';
import { anchorOf } from '../entry-groups.ts';
import { lookup, type Lookup } from '../lookup.ts';
import { inBenchOrder } from '../select.ts';
import { chainKey, conditionKey } from './conditions.ts';
import { describeCondition } from './describe-condition.ts';
import type { Family, SessionPair } from './family.ts';
import { standingBodies } from './standing.ts';
import { once } from '../../model/once.ts';

/** Every session of one condition through one chain, whatever its body. */
export interface MeasuredCondition {
  readonly sessions: readonly [Session, ...Session[]];
  readonly chain: string;
}

/** In bench order, which does not look at the body first: frame rate, then the other settings. */
export const conditionsOf: (bench: Bench) => readonly MeasuredCondition[] = once((bench) => {
  const ordered = inBenchOrder(
    bench,
    bench.sessions.map((session) => ({ ...session, body: '' })),
  );
  const byId = new Map(bench.sessions.map((session) => [session.id, session]));
  const groups = Map.groupBy(
    ordered.flatMap(({ id }) => byId.get(id) ?? []),
    (session) => `${chainKey(session)} ${conditionKey(session)}`,
  );
  return [...groups.values()].flatMap(([first, ...more]) =>
    first ? [{ sessions: [first, ...more], chain: chainKey(first) } as const] : [],
  );
});

/** For each condition that was measured with several bodies on one rig and chain: every body against every other. */
export const bodyFamilies: (bench: Bench) => readonly Family[] = once((bench) => {
  const find = lookup(bench);
  const used = new Map<string, number>();
  return conditionsOf(bench).flatMap(({ sessions }): readonly Family[] => {
    const pairs = bodyPairs(bench, sessions);
    const [first] = sessions;
    if (pairs.length === 0) return [];
    const slug = slugOf(first, find);
    const times = (used.get(slug) ?? 0) + 1;
    used.set(slug, times);
    const id = `bodies-${slug}${times > 1 ? `-${times}` : ''}`;
    const condition = `${describeCondition(bench, first)} on ${find.rig(first.rig).name}`;
    return [
      {
        id,
        of: { rig: first.rig, condition: id },
        group: id,
        groupTitle: `Bodies compared: ${condition}`,
        inWords: `every body against every other in ${condition}`,
        pairs,
      },
    ];
  });
});

/** One session speaks for each body: repeats compared crosswise would let one session's error speak many times. */
function bodyPairs(bench: Bench, sessions: readonly Session[]): readonly SessionPair[] {
  const standing = standingBodies(bench, sessions);
  return standing.flatMap((a, index) => standing.slice(index + 1).map((b) => ({ a: a.id, b: b.id })));
}

/** `balcony-uhd-59-94-10-4-2-2-off-off`: fit for an address. */
function slugOf(session: Session, find: Lookup): string {
  return anchorOf([...nameOfChain(session, find), ...Object.values(session.settings)].join('-'));
}

/** A chain by its rig and what is otherwise than the rig has it: `pit`, `radio-pair`. */
export function nameOfChain(session: Session, find: Lookup): readonly string[] {
  const rig = find.rig(session.rig);
  return [
    session.rig,
    ...(session.links.join() === rig.links.join() ? [] : session.links),
    ...(session.display === rig.display ? [] : [session.display]),
    ...(session.method === 'two-timers' ? [] : [session.method]),
  ];
}
