/** What a record adds to the ledger. */
import type { ChainedEntry, Inputs, Ledger } from '../model/ledger.ts';
import { baseOf, compareWithState, type Changes } from './compare.ts';
import { chained, changesBetween, numbered, stateNow } from './entry.ts';
import { isEarlierForm, recordedState, type State } from './state.ts';
import { replay } from './replay.ts';
import { rootOf } from './chain.ts';
import type { Statement } from './statements.ts';

/** Of the one-time entry that brings a ledger from before into its present form. */
const OPENING = 'What was recorded so far, in the form that can be replayed.';

export interface NewRecord {
  readonly changes: Changes;
  /** In order; the first may be the one that opens the chain of a ledger from before. */
  readonly entries: readonly ChainedEntry[];
  readonly state: State;
}

export interface RecordText {
  readonly date: string;
  readonly reason: string;
}

/** Pure; undefined where every row is as recorded. */
export function recordOf(
  ledger: Ledger | undefined,
  statements: readonly Statement[],
  inputs: Inputs,
  text: RecordText,
  folder: string,
): NewRecord | undefined {
  const opening = ledger !== undefined && isEarlierForm(ledger) ? openingOf(ledger, text.date, folder) : undefined;
  const base = ledger === undefined ? new Map() : baseOf(ledger);
  const now = stateNow(statements, inputs);
  const changes = compareWithState(base, statements, inputs);
  const rows = changesBetween(base, now, changes);
  if (rows.changes.length === 0 && opening === undefined) return undefined;
  const before = opening?.says ?? (ledger === undefined ? undefined : replay(ledger).chain.at(-1)?.says);
  const own =
    rows.changes.length === 0 ? [] : [chained({ ...text, analysis: inputs.analysis, ...rows }, before, folder)];
  return { changes, entries: [...(opening === undefined ? [] : [opening]), ...own], state: now };
}

/** The latest day of a ledger: no record may be of an earlier one. */
export function lastDay(ledger: Ledger | undefined): string | undefined {
  return (
    ledger &&
    [...ledger.told, ...ledger.chain]
      .map(({ date }) => date)
      .sort()
      .at(-1)
  );
}

function openingOf(ledger: Ledger, day: string, folder: string): ChainedEntry {
  const rows = [...recordedState(ledger).values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  return chained(
    {
      date: lastDay(ledger) ?? day,
      reason: OPENING,
      analysis: ledger.analysis,
      causes: [],
      changes: numbered(rows.map((now) => ({ id: now.id, now }))),
    },
    rootOf(ledger),
    folder,
  );
}
