/** In what state of the record a publication stands, and when it last changed. */
import { entriesOf } from '../ledger/history.ts';
import type { Bench } from '../model/bench.ts';

/** The day of the last record; else of the latest report, else of the latest session. `2026-04-11`. */
export function lastDay({ ledger, reports, sessions }: Bench): string | undefined {
  const latest = (days: readonly string[]): string | undefined => [...days].sort().at(-1);
  return (
    entriesOf(ledger)[0]?.date ?? latest(reports.map(({ date }) => date)) ?? latest(sessions.map(({ date }) => date))
  );
}
