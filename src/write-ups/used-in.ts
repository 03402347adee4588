/** Which write-ups show a session or rest their words on it: where a reader of its page finds it at work. */
import { once } from '../model/once.ts';
import type { Published } from '../register/published.ts';
import { answeringAll } from './answering.ts';
import { figuresShown } from './statements-shown.ts';

export interface Use {
  readonly title: string;
  readonly path: string;
}

/** By session, in the order of the write-ups; nothing for a session that none of them shows. */
export const usesOfSessions: (site: Published) => ReadonlyMap<string, readonly Use[]> = once((site) => {
  const known = new Set(site.bench.sessions.map(({ id }) => id));
  const uses = new Map<string, Use[]>();
  for (const { writeUp, answering } of answeringAll(site)) {
    const named = figuresShown(writeUp, answering).flatMap(({ of }) => Object.values(of));
    for (const session of new Set(named.filter((name) => known.has(name))))
      uses.set(session, [...(uses.get(session) ?? []), { title: writeUp.title, path: answering.path }]);
  }
  return uses;
});
