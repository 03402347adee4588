/**
 * One entry of the ledger, applied to the state before it: what readers are told of it, and whether it can have been
 * so.
 */
import { compareText } from '../model/compare-text.ts';
import { describeCause } from '../model/cause-text.ts';
import {
  isInputId,
  type Cause,
  type ChainedEntry,
  type Change,
  type LedgerEntry,
  type Move,
  type Published,
  type Withdrawal,
} from '../model/ledger.ts';
import type { Problem } from '../model/problem.ts';
import { describeMove, isSame, isSameRow } from './moves.ts';
import { namesOfRenamed, underNames } from './under-names.ts';

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
  const names = namesOfRenamed(
    entry.changes.flatMap(({ id: of, was }) => (was === undefined ? [] : [{ id: of, was }])),
  );
  for (const change of entry.changes) {
    const { id: of, was, now, line } = change;
    const before = state.get(was ?? of);
    if (!isFounded(change, before)) faults.push({ code: 'entry-unfounded', file: tableOf(path), line, key: of });
    state.delete(was ?? of);
    if (now !== undefined) state.set(of, now);
    if (isInputId(of)) continue;
    if (now === undefined) gone.push({ id: of, from: before?.text ?? '' });
    else if (before === undefined) added.push(kindOf(of));
    else if (!isSame(underNames(before, names), now)) moved.push(moveOf(before, now, change, causes));
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

/**
 * Whether something was added and nothing measured was changed: what is new may want a level or a sentence of its own.
 */
function isAddition(causes: readonly Cause[]): boolean {
  const isWritten = (file: string): boolean => /(?:\.mdx|\/site\.md|\/settings\.yaml|\/variation\.yaml)$/.test(file);
  return (
    causes.some(({ kind }) => kind === 'new') &&
    causes.every((cause) => cause.kind === 'new' || (cause.kind === 'changed' && isWritten(cause.file)))
  );
}

/** Kinds that count everything, or are limits from everything: they move with whatever is added. */
const FOLLOWING = new Set(['bracket', 'count', 'family']);

function kindOf(id: string): string {
  return id.split('/')[0] ?? id;
}

function tableOf(path: string): string {
  return path.replace(/\.yaml$/, '.csv');
}
