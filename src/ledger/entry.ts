import { describeCause } from '../model/cause-text.ts';
import type { LedgerEntry } from '../model/ledger.ts';
import type { Changes } from './compare.ts';

/** The entry of a record that moved, withdrew or added something. */
export function entryOf(
  { moved, gone, added }: Changes,
  reason: string,
  date: string,
  analysis: string,
): Omit<LedgerEntry, 'id'> {
  const kinds = Map.groupBy(added, (id) => id.split('/')[0] ?? id);
  return {
    date,
    reason,
    analysis,
    causes: [...new Set([...moved, ...gone].flatMap(({ causes }) => causes.map(describeCause)))].sort(),
    moved: moved.map(({ id, from, to }) => ({ id, from, to })).sort(byId),
    gone: gone.map(({ id, from }) => ({ id, from })).sort(byId),
    added: Object.fromEntries(
      [...kinds].map(([kind, ids]): [string, number] => [kind, ids.length]).sort(([a], [b]) => (a < b ? -1 : 1)),
    ),
  };
}

/** `2026-05-02-one-more-reading-excluded`: the date and the first words of the reason. */
export function entryName(date: string, reason: string): string {
  const words = reason
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .match(/[a-z0-9]+/g) ?? ['record'];
  return [date, ...words.slice(0, 6)].join('-').slice(0, 60).replace(/-+$/, '');
}

function byId(a: { readonly id: string }, b: { readonly id: string }): number {
  return a.id < b.id ? -1 : 1;
}
