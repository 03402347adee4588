/** Digests by which the ledger tells that nothing in it was changed by hand. */
import { hash } from 'node:crypto';
import type { ChainedEntry, LedgerEntry } from '../model/ledger.ts';

const SHORT = 8;

/** Of names, in any order: eight hexadecimal digits. */
export function digestOf(names: readonly string[]): string {
  return hash('sha256', names.toSorted().join('\n')).slice(0, SHORT);
}

/** Of a text: eight hexadecimal digits, enough to tell that it is another one. */
export function digestOfText(text: string): string {
  return hash('sha256', text).slice(0, SHORT);
}

/**
 * SHA-256 of all that an entry says, the digest of the entry before it included: of its values, however they are
 * written.
 */
export function digestOfEntry({
  before,
  date,
  reason,
  analysis,
  causes,
  changes,
}: Omit<ChainedEntry, 'id' | 'path' | 'says'>): string {
  const rows = changes.map(({ id, was, now, cause }) => [
    id,
    was ?? null,
    cause ?? null,
    now === undefined ? null : [now.text, now.value, now.low, now.high, now.also, now.files].map(orNull),
  ]);
  const sets = causes.map((set) => set.map((cause) => Object.entries(cause).sort(([a], [b]) => (a < b ? -1 : 1))));
  return hash('sha256', JSON.stringify([before ?? null, date, reason, analysis, sets, rows]));
}

/** SHA-256 of the entries from before entries were chained: what the first chained one comes after. */
export function digestOfTold(told: readonly LedgerEntry[]): string {
  const entries = told.toSorted((a, b) => (a.id < b.id ? -1 : 1));
  return hash(
    'sha256',
    JSON.stringify(
      entries.map(({ id, date, reason, analysis, causes, moved, gone, added }) => [
        [id, date, reason, analysis, causes],
        moved.map(({ id: of, from, to }) => [of, from, to]),
        gone.map(({ id: of, from }) => [of, from]),
        Object.entries(added).sort(([a], [b]) => (a < b ? -1 : 1)),
      ]),
    ),
  );
}

/** JSON has no infinity, and would write it as it writes nothing. */
function orNull(cell: string | number | undefined): string | number | null {
  return typeof cell === 'number' && !Number.isFinite(cell) ? String(cell) : (cell ?? null);
}
