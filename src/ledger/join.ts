/** Two branches that both recorded, put one after the other: each entry stays true, and the merge is none. */
import { compareText } from '../model/compare-text.ts';
import { isInputId, type ChainedEntry, type Inputs, type Ledger, type Published } from '../model/ledger.ts';
import type { Problem } from '../model/problem.ts';
import { orderChain, rootOf } from './chain.ts';
import { compareWithState } from './compare.ts';
import { digestOfEntry } from './digest.ts';
import { changesBetween, numbered, stateNow } from './entry.ts';
import { isSameRow } from './moves.ts';
import { applyEntry } from './apply-entry.ts';
import { inputRows, type State } from './state.ts';
import type { Statement } from './statements.ts';

export interface Joined {
  /** Entries that had to take another place are new objects. */
  readonly chain: readonly ChainedEntry[];
  readonly state: State;
  /** Why the branches cannot be joined. */
  readonly problems: readonly Problem[];
}

/**
 * Entries of all branches by day. Of what only one branch changed, an entry keeps its rows as they are; of what several
 * did, the last entry says what they come to together, against the state before it. Pure.
 */
export function joinBranches(ledger: Ledger, statements: readonly Statement[], inputs: Inputs): Joined {
  const faults = orderChain(ledger).faults.filter(({ code }) => code !== 'entry-fork' && code !== 'entry-last');
  const tree = treeOf(ledger);
  const base = new Map<string, Published>();
  for (const entry of tree.trunk) applyEntry(base, entry);
  if (faults.length > 0 || tree.branches.length === 0) return { chain: tree.trunk, state: base, problems: faults };
  const problems = unrecorded(base, tree.branches, inputs);
  if (problems.length > 0) return { chain: tree.trunk, state: base, problems };

  const touched = tree.branches.map((branch) => new Set(branch.flatMap(({ changes }) => changes.flatMap(idsOf))));
  const owner = new Map<string, number>();
  const state = new Map(base);
  const chain = [...tree.trunk];
  const now = stateNow(statements, inputs);
  const ordered = byDay(tree.branches);
  for (const [index, { entry, branch }] of ordered.entries()) {
    const isLast = index === ordered.length - 1;
    const kept = entry.changes.filter((change) =>
      idsOf(change).every((id) => {
        const isShared = touched.some((ids, other) => other !== branch && ids.has(id));
        const first = owner.get(id) ?? branch;
        if (isShared) owner.set(id, first);
        return first === branch;
      }),
    );
    const rows = isLast
      ? changesBetween(state, now, compareWithState(state, statements, inputs))
      : { causes: entry.causes, changes: numbered(kept.filter((change) => changesSomething(state, change))) };
    const placed = place({ ...entry, ...rows }, chain.at(-1)?.says);
    const isAsItWas = placed.says === entry.says;
    chain.push(isAsItWas ? entry : placed);
    applyEntry(state, placed);
  }
  return { chain, state, problems: [] };
}

interface Tree {
  /** What all branches have in common. */
  readonly trunk: readonly ChainedEntry[];
  /** Empty where the chain does not fork. */
  readonly branches: readonly (readonly ChainedEntry[])[];
}

function treeOf(ledger: Ledger): Tree {
  const after = Map.groupBy(ledger.chain, ({ before }) => before);
  const trunk: ChainedEntry[] = [];
  const seen = new Set<string | undefined>();
  let at = rootOf(ledger);
  for (;;) {
    const [next, ...more] = after.get(at) ?? [];
    if (next === undefined || seen.has(at)) return { trunk, branches: [] };
    if (more.length > 0) return { trunk, branches: [next, ...more].map((first) => descend(first, after)) };
    seen.add(at);
    trunk.push(next);
    at = next.says;
  }
}

/** An entry and all that follow it, each after the one before it. */
function descend(
  first: ChainedEntry,
  after: ReadonlyMap<string | undefined, readonly ChainedEntry[]>,
): readonly ChainedEntry[] {
  return [first, ...(after.get(first.says) ?? []).flatMap((next) => descend(next, after))];
}

/**
 * All entries, by day, and each after those before it on its branch; of one day by name, whichever branch was merged.
 */
function byDay(
  branches: readonly (readonly ChainedEntry[])[],
): readonly { readonly entry: ChainedEntry; readonly branch: number }[] {
  const waiting = branches.map((branch) => [...branch]);
  const ordered: { entry: ChainedEntry; branch: number }[] = [];
  for (;;) {
    const heads = waiting.flatMap(([entry], branch) => (entry === undefined ? [] : [{ entry, branch }]));
    heads.sort((a, b) => compareText(a.entry.date, b.entry.date) || compareText(a.entry.id, b.entry.id));
    const [next] = heads;
    if (next === undefined) return ordered;
    waiting[next.branch]?.shift();
    ordered.push(next);
  }
}

/** Files that are neither as a branch recorded them nor, where several changed them, merged from theirs. */
function unrecorded(base: State, branches: readonly (readonly ChainedEntry[])[], inputs: Inputs): readonly Problem[] {
  const ends = branches.map((branch) => {
    const state = new Map(base);
    for (const entry of branch) applyEntry(state, entry);
    return state;
  });
  const now = new Map(inputRows(inputs).map((row) => [row.id, row]));
  const ids = new Set([base, now, ...ends].flatMap((state) => [...state.keys()].filter(isInputId)));
  return [...ids].sort().flatMap((id): readonly Problem[] => {
    const before = base.get(id)?.text;
    const recorded = new Set(ends.map((state) => state.get(id)?.text).filter((text) => text !== before));
    const found = now.get(id)?.text;
    const isExpected = recorded.size > 1 || found === (recorded.size === 0 ? before : [...recorded][0]);
    return isExpected ? [] : [{ code: 'join-unrecorded', file: id.slice(id.indexOf('/') + 1), found: found ?? 'gone' }];
  });
}

function place(entry: ChainedEntry, before: string | undefined): ChainedEntry {
  const { before: _, says: _says, ...rest } = entry;
  const placed = { ...rest, ...(before === undefined ? {} : { before }) };
  return { ...placed, says: digestOfEntry(placed) };
}

function idsOf({ id, was }: ChainedEntry['changes'][number]): readonly string[] {
  return was === undefined ? [id] : [id, was];
}

function changesSomething(state: State, { id, was, now }: ChainedEntry['changes'][number]): boolean {
  const before = state.get(was ?? id);
  return now === undefined ? before !== undefined : before === undefined || !isSameRow(before, now);
}
