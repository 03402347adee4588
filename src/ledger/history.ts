/** What readers are told of the past: earlier values of a figure, and what changed in a report after it came out. */
import type { Ledger, LedgerEntry, Move } from '../model/ledger.ts';
import { once } from '../model/once.ts';
import { replay } from './replay.ts';

export interface EarlierValue {
  readonly text: string;
  /** The day from which it no longer held. */
  readonly until: string;
  readonly entry: string;
}

/** Latest first. */
export function earlierValues(ledger: Ledger | undefined, id: string): readonly EarlierValue[] {
  return (ledger && pastOf(ledger).get(id)) ?? [];
}

/** Once per ledger: every entry of a large site asks for its own figure's past. */
const pastOf = once((ledger: Ledger): ReadonlyMap<string, readonly EarlierValue[]> => {
  const past = new Map<string, readonly EarlierValue[]>();
  for (const { id: entry, date, moved, gone, renamed = [] } of replay(ledger).entries.toReversed()) {
    // what was renamed keeps what it said under its old id
    const kept = renamed.map(({ id, was }) => [id, was, past.get(was) ?? []] as const);
    for (const [, was] of kept) past.delete(was);
    for (const [id, , values] of kept) past.set(id, values);
    for (const { id, from } of [...moved, ...gone])
      past.set(id, [{ text: from, until: date, entry }, ...(past.get(id) ?? [])]);
  }
  return past;
});

/** Every entry of a ledger, newest first. */
export function entriesOf(ledger: Ledger | undefined): readonly LedgerEntry[] {
  return ledger === undefined ? [] : replay(ledger).entries;
}

export interface Correction {
  readonly entry: LedgerEntry;
  readonly moved: readonly Move[];
}

/**
 * What reads otherwise among these ids since this day or after it, latest first; not what only stands behind the same
 * words.
 */
export function correctionsOf(
  ledger: Ledger | undefined,
  ids: ReadonlySet<string>,
  since: string,
): readonly Correction[] {
  return entriesOf(ledger)
    .filter(({ date }) => date >= since)
    .map((entry) => ({ entry, moved: entry.moved.filter(({ id, quiet }) => quiet !== 'behind' && ids.has(id)) }))
    .filter(({ moved }) => moved.length > 0);
}

/** Ids of now by those under which the same was published before. */
export function renamedIds(ledger: Ledger | undefined): ReadonlyMap<string, string> {
  const now = new Map<string, string>();
  for (const { renamed = [] } of entriesOf(ledger).toReversed()) {
    const names = new Map(renamed.map(({ id, was }) => [was, id]));
    for (const [was, id] of now) now.set(was, names.get(id) ?? id);
    for (const [was, id] of names) now.set(was, id);
  }
  return now;
}

/** The first day that a report is known to have been out: a day that is moved later hides nothing. */
export function firstDay(
  ledger: Ledger | undefined,
  { id, date }: { readonly id: string; readonly date: string },
): string {
  return [date, ...earlierValues(ledger, `date/reports/${id}`).map(({ text }) => text)].sort()[0] ?? date;
}
