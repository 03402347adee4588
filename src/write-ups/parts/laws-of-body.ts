/** What parts that state rate laws of a body have in common. */
import type { ConfigurationLaw } from '../../register/rate-law/rate-laws.ts';
import { selectFigures, type Query } from '../../register/select.ts';
import { selectLaws } from '../../views/select-laws.ts';
import { COMMON } from './common.ts';
import type { Answering } from './definition.ts';

export const LAW = {
  body: { ...COMMON.body, means: 'which body' },
  rig: COMMON.rig,
  method: COMMON.method,
  where: COMMON.where,
} as const;

export function whyNoLaw(query: Omit<Query, 'kind'>, { site }: Answering): 'empty-selection' | undefined {
  const totals = selectFigures(site.bench, site.register.figures, { ...query, kind: 'total' });
  return totals.length === 0 ? 'empty-selection' : undefined;
}

export function lawsOf(query: Omit<Query, 'kind'>, { site }: Answering): readonly ConfigurationLaw[] {
  const laws = selectLaws(site, query);
  if (laws.length === 0) throw new Error(`no session matches ${JSON.stringify(query)}`);
  return laws;
}
