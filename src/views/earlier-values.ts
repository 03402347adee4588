import { earlierValues, entriesOf } from '../ledger/history.ts';
import type { Bench } from '../model/bench.ts';
import { PATHS } from '../register/paths.ts';
import { describeDay } from './day.ts';

/** What a figure said before. */
export interface EarlierText {
  readonly text: string;
  /** `11 April 2026`: the day from which it no longer held. */
  readonly until: string;
  /** Where the change is told. */
  readonly path: string;
}

/** The day of the last record, `11 April 2026`; undefined where there is none. */
export function recordedOn({ ledger }: Pick<Bench, 'ledger'>): string | undefined {
  const [last] = entriesOf(ledger);
  return last && describeDay(last.date);
}

/** Latest first; empty for a figure that never moved. */
export function earlierTexts({ ledger }: Pick<Bench, 'ledger'>, id: string): readonly EarlierText[] {
  return earlierValues(ledger, id).map(({ text, until, entry }) => ({
    text,
    until: describeDay(until),
    path: `${PATHS.corrections}#${entry}`,
  }));
}
