/** The rate laws of the compiled site, for pages: computed once from the register's totals. */
import { findRateLaws, type ConfigurationLaw } from '../register/rate-law/rate-laws.ts';
import { budgetOfFigure } from '../register/budget-of-figure.ts';
import { matchesQuery, type Query } from '../register/select.ts';
import type { Published } from '../register/published.ts';

const computed = new WeakMap<object, readonly ConfigurationLaw[]>();

export function lawsOf({ register, bench, find, figure }: Published): readonly ConfigurationLaw[] {
  const known = computed.get(register);
  if (known) return known;
  const laws = findRateLaws(bench, find, (session) => {
    const total = figure(`total/${session}`);
    if (total === undefined) throw new Error(`no total of session '${session}'`);
    return budgetOfFigure(total);
  });
  computed.set(register, laws);
  return laws;
}

/** The laws of the configurations whose sessions match; those without a law only where none of them has one. */
export function selectLaws(site: Published, query: Omit<Query, 'kind'>): readonly ConfigurationLaw[] {
  const matching = lawsOf(site).filter(({ sessions }) =>
    sessions.some((session) => matchesQuery(session, { kind: 'total', ...query })),
  );
  const withLaw = matching.filter(({ law }) => law.kind === 'rate-law');
  return withLaw.length > 0 ? withLaw : matching;
}
