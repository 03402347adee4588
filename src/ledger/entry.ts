/** The entry of a record: every row that is another than before, and why. */
import { compareText } from '../model/compare-text.ts';
import type { Cause, ChainedEntry, Change, Inputs } from '../model/ledger.ts';
import type { Changes } from './compare.ts';
import { digestOfEntry } from './digest.ts';
import { isSameRow } from './moves.ts';
import { inputRows, type State } from './state.ts';
import type { Statement } from './statements.ts';

const FIRST_LINE = 2;
const WORDS_OF_REASON = 6;
const NAME_LENGTH = 60;
const DIGEST_LENGTH = 6;

/** What an entry says, before it has a place in the chain. */
export type EntryText = Pick<ChainedEntry, 'date' | 'reason' | 'analysis' | 'causes' | 'changes'>;

/** The state that is published now, inputs among it. */
export function stateNow(statements: readonly Statement[], inputs: Inputs): State {
  const rows = statements.map(({ sources: _, ...row }) => row);
  return new Map([...rows, ...inputRows(inputs)].map((row) => [row.id, row]));
}

/** Every row in which two states differ, with its cause. */
export function changesBetween(
  before: State,
  now: State,
  { moved, gone, renamed: ids }: Pick<Changes, 'moved' | 'gone' | 'renamed'>,
): Pick<ChainedEntry, 'causes' | 'changes'> {
  const sets: (readonly Cause[])[] = [];
  const numbers = new Map<string, number>();
  const numberOf = (causes: readonly Cause[]): number => {
    const key = JSON.stringify(causes);
    const number = numbers.get(key) ?? sets.push(causes);
    numbers.set(key, number);
    return number;
  };
  const explained = new Map(
    [...moved, ...gone].toSorted((a, b) => compareText(a.id, b.id)).map((each) => [each.id, numberOf(each.causes)]),
  );
  const renamed = new Map(ids.map(({ id, was }) => [id, was]));
  const taken = new Set(renamed.values());
  const rows: Omit<Change, 'line'>[] = [];
  for (const [id, row] of now) {
    const was = renamed.get(id);
    const old = before.get(was ?? id);
    const cause = explained.get(id);
    if (old !== undefined && was === undefined && isSameRow(old, row)) continue;
    rows.push({ id, ...(was === undefined ? {} : { was }), now: row, ...(cause === undefined ? {} : { cause }) });
  }
  for (const id of before.keys()) {
    const cause = explained.get(id);
    if (!now.has(id) && !taken.has(id)) rows.push({ id, ...(cause === undefined ? {} : { cause }) });
  }
  return { causes: sets, changes: numbered(rows.sort((a, b) => compareText(a.id, b.id))) };
}

/** With the lines on which they will stand. */
export function numbered(changes: readonly Omit<Change, 'line'>[]): readonly Change[] {
  return changes.map((change, index) => ({ ...change, line: index + FIRST_LINE }));
}

/**
 * The entry in its place: after the one that says `before`.
 *
 * @param folder of the entries: `content/ledger/entries`
 */
export function chained(text: EntryText, before: string | undefined, folder: string): ChainedEntry {
  const placed = { ...text, ...(before === undefined ? {} : { before }) };
  const says = digestOfEntry(placed);
  const id = entryName(text.date, text.reason, says);
  return { id, path: `${folder}/${id}.yaml`, ...placed, says };
}

/**
 * `2026-05-02-one-more-reading-excluded-1a2b3c`: the day, the first words of the reason, and what tells it from another
 * branch's.
 */
export function entryName(date: string, reason: string, says: string): string {
  const words = reason
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .match(/[a-z0-9]+/g) ?? ['record'];
  const name = [date, ...words.slice(0, WORDS_OF_REASON)].join('-').slice(0, NAME_LENGTH).replace(/-+$/, '');
  return `${name}-${says.slice(0, DIGEST_LENGTH)}`;
}
