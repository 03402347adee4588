import { findMatchedPairs } from '../../analysis/matched-pairs.ts';
import type { Bench, Session } from '../../model/bench.ts';
import { badgesOf, isFaulty } from '../badges.ts';
import { lookup } from '../lookup.ts';
import { inBenchOrder } from '../select.ts';
import { chainKey, closestInTime } from './conditions.ts';
import { bodyGroup, bodyGroupTitle, type Family, type SessionPair } from './family.ts';
import { once } from '../../model/once.ts';

/**
 * For each body and rig, the pairs of sessions that differ in exactly one setting: same firmware, links, display and
 * method too. Sessions that went wrong are left out. Where a condition was repeated, each session stands in one pair
 * per step, with the one closest in time.
 */
export const settingFamilies: (bench: Bench) => readonly Family[] = once((bench) => {
  const find = lookup(bench);
  const groups = Map.groupBy(bench.sessions, ({ body, rig }) => JSON.stringify([body, rig]));
  return [...groups.values()].flatMap((sessions): readonly Family[] => {
    const [{ body = '', rig = '' } = {}] = sessions;
    const pairs = matchedPairs(bench, sessions);
    if (pairs.length === 0) return [];
    const name = find.body(body).name;
    return [
      {
        id: `settings-${body}-${rig}`,
        of: { body, rig },
        group: bodyGroup(body),
        groupTitle: bodyGroupTitle(name),
        inWords: `all pairs of sessions of ${name} on ${find.rig(rig).name} that differ in one setting only`,
        pairs,
      },
    ];
  });
});

/** Pairs of ordinary sessions where a step has any; none of a session in which something went wrong. */
function ordinaryFirst<Pair extends { readonly a: Session; readonly b: Session }>(
  bench: Bench,
  pairs: readonly Pair[],
): readonly Pair[] {
  const badges = badgesOf(bench);
  const whole = pairs.filter(({ a, b }) => !isFaulty(badges(a.id)) && !isFaulty(badges(b.id)));
  const ordinary = whole.filter(({ a, b }) => badges(a.id).length + badges(b.id).length === 0);
  return ordinary.length > 0 ? ordinary : whole;
}

function matchedPairs(bench: Bench, sessions: readonly Session[]): readonly SessionPair[] {
  const byId = new Map(sessions.map((session) => [session.id, session]));
  const levelOrder = Object.fromEntries(bench.settings.map(({ id, levels }) => [id, levels.map((level) => level.id)]));
  const contexts = Map.groupBy(sessions, (session) => JSON.stringify([session.firmware ?? null, chainKey(session)]));
  const rankOf = new Map(inBenchOrder(bench, sessions).map(({ id }, index) => [id, index]));
  const settingRank = new Map(bench.settings.map(({ id }, index) => [id, index]));
  return [...contexts]
    .flatMap(([context, members]) => {
      const found = findMatchedPairs(
        members.map(({ id, settings }) => ({ id, context, settings })),
        levelOrder,
      );
      const candidates = found.flatMap(({ setting, from, to, fromId, toId }) => {
        const [a, b] = [byId.get(toId), byId.get(fromId)];
        return a && b ? [{ a, b, step: { setting, from, to } }] : [];
      });
      const sameStep = Map.groupBy(candidates, ({ b, step }) =>
        JSON.stringify([step, { ...b.settings, [step.setting]: '' }]),
      );
      return [...sameStep.values()]
        .map((pairs) => ordinaryFirst(bench, pairs))
        .flatMap(closestInTime)
        .map(({ a, b, step }): SessionPair => ({ a: a.id, b: b.id, step }));
    })
    .sort(
      (x, y) =>
        (settingRank.get(x.step?.setting ?? '') ?? 0) - (settingRank.get(y.step?.setting ?? '') ?? 0) ||
        (rankOf.get(x.b) ?? 0) - (rankOf.get(y.b) ?? 0) ||
        (rankOf.get(x.a) ?? 0) - (rankOf.get(y.a) ?? 0),
    );
}
