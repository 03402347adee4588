import type { Facts, Site } from './site-facts.ts';

/** The same site, and what was asked of it so far. */
export function watched(site: Site): { readonly site: Site; asked(): readonly Facts[] } {
  const seen = new Map<string, Facts>();
  const note = (of: Facts['of'], name = ''): void => {
    seen.set(`${of} ${name}`, { of, name });
  };
  return {
    asked: () => [...seen.values()],
    site: {
      ...site,
      isFigure(id) {
        note('source', id);
        return site.isFigure(id);
      },
      textOf(id) {
        note('source', id);
        return site.textOf(id);
      },
      isOf(source, record) {
        note('source', source);
        return site.isOf(source, record);
      },
      says(source, number) {
        note('source', source);
        return site.says(source, number);
      },
      findingSays(rule, number) {
        note('finding', rule);
        return site.findingSays(rule, number);
      },
      ledgerSays(number) {
        note('ledger');
        return site.ledgerSays(number);
      },
      isSetting(number) {
        note('settings');
        return site.isSetting(number);
      },
    },
  };
}
