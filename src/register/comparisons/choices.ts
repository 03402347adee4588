import type { Bench, Session } from '../../model/bench.ts';
import { compareText } from '../../model/compare-text.ts';
import { chainKey } from './conditions.ts';
import { once } from '../../model/once.ts';

/** What can be set on one body, on one rig and through one chain: two sessions or more. */
export interface Choice {
  readonly body: string;
  readonly rig: string;
  readonly sessions: readonly [Session, Session, ...Session[]];
}

/** Every choice of settings that the bench knows of, largest first within a body and rig. */
export const choicesOf: (bench: Bench) => readonly Choice[] = once((bench) => {
  const groups = Map.groupBy(bench.sessions, (session) => `${session.body} ${chainKey(session)}`);
  return [...groups.values()]
    .flatMap(([first, second, ...more]): readonly Choice[] =>
      first && second ? [{ body: first.body, rig: first.rig, sessions: [first, second, ...more] }] : [],
    )
    .sort((x, y) => compareText(x.body, y.body) || compareText(x.rig, y.rig) || y.sessions.length - x.sessions.length);
});
