/** The chain of entries, applied one after the other: what was published when, and whether the ledger holds together. */
import { compareText } from '../model/compare-text.ts';
import { describeCause } from '../model/cause-text.ts';
import {
  inputId,
  isInputId,
  ANALYSIS_INPUT,
  type Cause,
  type ChainedEntry,
  type Change,
  type Inputs,
  type Ledger,
  type LedgerEntry,
  type Move,
  type Published,
  type Withdrawal,
} from '../model/ledger.ts';
import type { Problem } from '../model/problem.ts';
import { once } from '../model/once.ts';
import { orderChain } from './chain.ts';
import { describeMove, isSame, isSameRow } from './moves.ts';

/** Every row by its id, inputs among them. */
export type State = ReadonlyMap<string, Published>;

export interface Replay {
  /** As readers are told of them, newest first. */
  readonly entries: readonly LedgerEntry[];
  /** In the order in which they follow each other. */
  readonly chain: readonly ChainedEntry[];
  readonly state: State;
  /** Where the ledger was edited, or is in pieces. */
  readonly faults: readonly Problem[];
}

/** Whether a ledger was recorded before entries were chained. */
export function isEarlierForm({ chain, head }: Ledger): boolean {
  return chain.length === 0 && head === undefined;
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

/** What `figures.csv` and `inputs.csv` hold. */
export function recordedState({ figures, ...inputs }: Pick<Ledger, 'figures' | 'analysis' | 'checksums'>): State {
  return new Map([...figures.map(({ line: _, ...row }) => row), ...inputRows(inputs)].map((row) => [row.id, row]));
}

/** Inputs as rows of the state. */
export function inputRows({ analysis, checksums }: Inputs): readonly Published[] {
  return [[ANALYSIS_INPUT, analysis] as const, ...Object.entries(checksums)].map(([name, state]) => ({
    id: inputId(name),
    text: state,
    files: '',
  }));
}

export interface Applied {
  readonly entry: LedgerEntry;
  readonly faults: readonly Problem[];
}

/** Brings a state on by one entry. */
export function applyEntry(state: Map<string, Published>, entry: ChainedEntry): Applied {
  const { id, path, date, reason, analysis, causes } = entry;
  const moved: Move[] = [];
  const gone: Withdrawal[] = [];
  const added: string[] = [];
  const renamed: { readonly id: string; readonly was: string }[] = [];
  const faults: Problem[] = [];
  for (const change of entry.changes) {
    const { id: of, was, now, line } = change;
    const before = state.get(was ?? of);
    if (!isFounded(change, before)) faults.push({ code: 'entry-unfounded', file: tableOf(path), line, key: of });
    state.delete(was ?? of);
    if (now !== undefined) state.set(of, now);
    if (isInputId(of)) continue;
    if (now === undefined) gone.push({ id: of, from: before?.text ?? '' });
    else if (before === undefined) added.push(kindOf(of));
    else if (!isSame(before, now)) moved.push(moveOf(before, now, change, causes));
    if (was !== undefined) renamed.push({ id: of, was });
  }
  const told: LedgerEntry = {
    id,
    date,
    reason,
    analysis,
    causes: [...new Set(causes.flat().map(describeCause))].sort(),
    moved: moved.sort((a, b) => compareText(a.id, b.id)),
    gone: gone.sort((a, b) => compareText(a.id, b.id)),
    ...(renamed.length === 0 ? {} : { renamed: renamed.sort((a, b) => compareText(a.id, b.id)) }),
    added: Object.fromEntries(
      [...Map.groupBy(added, (kind) => kind)]
        .map(([kind, all]) => [kind, all.length] as const)
        .sort(([a], [b]) => compareText(a, b)),
    ),
  };
  return { entry: told, faults };
}

/** Whether a row can have changed so: it was there where it is said to have gone or moved, and was another. */
function isFounded({ was, now }: Change, before: Published | undefined): boolean {
  if (before === undefined) return now !== undefined && was === undefined;
  return now === undefined || !isSameRow(before, now);
}

function moveOf(before: Published, now: Published, { id, was, cause }: Change, causes: ChainedEntry['causes']): Move {
  return {
    id,
    ...(was === undefined ? {} : { was }),
    ...describeMove(before, now),
    ...(FOLLOWING.has(kindOf(id)) && isAddition(cause === undefined ? [] : (causes[cause - 1] ?? []))
      ? { quiet: 'follows' }
      : {}),
  };
}

/** Whether something was added and nothing measured was changed: what is new may want a level or a sentence of its own. */
function isAddition(causes: readonly Cause[]): boolean {
  const isWritten = (file: string): boolean => /(?:\.mdx|\/site\.md|\/settings\.yaml|\/variation\.yaml)$/.test(file);
  return (
    causes.some(({ kind }) => kind === 'new') &&
    causes.every((cause) => cause.kind === 'new' || (cause.kind === 'changed' && isWritten(cause.file)))
  );
}

/** Kinds that count everything, or are limits from everything: they move with whatever is added. */
const FOLLOWING = new Set(['bracket', 'count', 'family']);

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

function kindOf(id: string): string {
  return id.split('/')[0] ?? id;
}

function tableOf(path: string): string {
  return path.replace(/\.yaml$/, '.csv');
}
