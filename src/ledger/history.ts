/** What readers are told of the past: earlier values of a figure, and what changed in a report after it came out. */
import type { Ledger, LedgerEntry, Move } from '../model/ledger.ts';
import { once } from '../model/once.ts';

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
const pastOf = once(({ entries }: Ledger): ReadonlyMap<string, readonly EarlierValue[]> => {
  const past = entries.flatMap(({ id: entry, date, moved, gone }) =>
    [...moved, ...gone].map(({ id, from }) => ({ id, value: { text: from, until: date, entry } })),
  );
  return new Map([...Map.groupBy(past, ({ id }) => id)].map(([id, list]) => [id, list.map(({ value }) => value)]));
});

export interface Correction {
  readonly entry: LedgerEntry;
  readonly moved: readonly Move[];
}

/** What changed among these ids on this day or after it, latest first. */
export function correctionsOf(
  ledger: Ledger | undefined,
  ids: ReadonlySet<string>,
  since: string,
): readonly Correction[] {
  return (ledger?.entries ?? [])
    .filter(({ date }) => date >= since)
    .map((entry) => ({ entry, moved: entry.moved.filter(({ id }) => ids.has(id)) }))
    .filter(({ moved }) => moved.length > 0);
}
