import type { Published } from '../register/published.ts';
import type { ConfigurationLaw } from '../register/rate-law/rate-laws.ts';
import { matchesQuery, type Query } from '../register/select.ts';

/** The laws of the configurations whose sessions match; those without a law only where none of them has one. */
export function selectLaws({ laws }: Pick<Published, 'laws'>, query: Omit<Query, 'kind'>): readonly ConfigurationLaw[] {
  const matching = laws.filter(({ sessions }) =>
    sessions.some((session) => matchesQuery(session, { kind: 'total', ...query })),
  );
  const withLaw = matching.filter(({ law }) => law.kind === 'rate-law');
  return withLaw.length > 0 ? withLaw : matching;
}
