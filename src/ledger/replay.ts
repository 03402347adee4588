/**
 * The chain of entries, applied one after the other: what was published when, and whether the ledger holds together.
 */
import { compareText } from '../model/compare-text.ts';
import {
  inputId,
  isInputId,
  type ChainedEntry,
  type Ledger,
  type LedgerEntry,
  type Published,
} from '../model/ledger.ts';
import type { Problem } from '../model/problem.ts';
import { once } from '../model/once.ts';
import { applyEntry } from './apply-entry.ts';
import { orderChain } from './chain.ts';
import { describeMove, isSame, isSameRow } from './moves.ts';
import { isEarlierForm, recordedState, type State } from './state.ts';

export interface Replay {
  /** As readers are told of them, newest first. */
  readonly entries: readonly LedgerEntry[];
  /** In the order in which they follow each other. */
  readonly chain: readonly ChainedEntry[];
  readonly state: State;
  /** Where the ledger was edited, or is in pieces. */
  readonly faults: readonly Problem[];
}

/** Pure. Where the ledger does not hold together, what is left of it. */
export const replay: (ledger: Ledger) => Replay = once((ledger) => {
  const { told, path } = ledger;
  if (isEarlierForm(ledger))
    return {
      entries: newestFirst([...told]),
      chain: [],
      state: recordedState(ledger),
      faults: [{ code: 'earlier-ledger', file: path }],
    };
  const { chain, faults } = orderChain(ledger);
  const state = new Map<string, Published>();
  const applied = chain.map((entry) => applyEntry(state, entry));
  const all = [...faults, ...applied.flatMap((each) => each.faults)];
  return {
    entries: newestFirst([...told, ...applied.map(({ entry }, index) => (index === 0 ? opening(entry, told) : entry))]),
    chain,
    state,
    // what follows from a broken chain would only be said twice
    faults: all.length > 0 ? all : compareStates(ledger, state),
  };
});

/** Where the recorded state is not what the entries come to. */
function compareStates(ledger: Ledger, state: State): readonly Problem[] {
  const recorded = recordedState(ledger);
  const lines = new Map(ledger.figures.map(({ id, line }) => [id, line]));
  const inputsFile = ledger.path.replace(/[^/]*$/, 'inputs.csv');
  const place = (id: string) => {
    const line = lines.get(id);
    return {
      file: isInputId(id) ? inputsFile : ledger.path,
      key: isInputId(id) ? id.slice(inputId('').length) : id,
      ...(line === undefined ? {} : { line }),
    };
  };
  const missing = [...state].flatMap(([id, { text }]): readonly Problem[] =>
    recorded.has(id) ? [] : [{ code: 'row-missing', ...place(id), expected: text }],
  );
  const others = [...recorded].flatMap(([id, row]): readonly Problem[] => {
    const by = state.get(id);
    if (by === undefined) return [{ code: 'row-unrecorded', ...place(id), found: row.text }];
    if (isSameRow(by, row)) return [];
    return [{ code: 'row-edited', ...place(id), found: tellRow(row, by), expected: tellRow(by, row) }];
  });
  return [...missing, ...others];
}

function tellRow(row: Published, other: Published): string {
  if (isSame(row, other) && row.also === other.also) return row.files;
  return row.text === other.text ? describeMove(row, other).from : row.text;
}

/** What opens a chain after entries of the form of before adds nothing: it was published already. */
function opening(entry: LedgerEntry, told: readonly LedgerEntry[]): LedgerEntry {
  return told.length === 0 ? entry : { ...entry, added: {} };
}

function newestFirst(entries: readonly LedgerEntry[]): readonly LedgerEntry[] {
  // later in the chain comes first among those of one day
  return entries.toReversed().sort((a, b) => compareText(b.date, a.date));
}
