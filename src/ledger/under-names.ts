/**
 * Rows that name a record which is called otherwise now: read as if it had been called so before, they may say the
 * same.
 */
import type { Published } from '../model/ledger.ts';

/** What records are called now, by what they were called. */
export type Names = ReadonlyMap<string, string>;

const RECORD = /^(?:body|display|display-pair|link|method|report|rig|session)\/([^/]+)$/;
/** Rows whose text tells records by their ids; others tell them by names and words, which no rename changes. */
const TELLS_IDS = /^(?:session|display-pair|facts\/rigs|finding)\//;
const ID = /(?<![\w-])[a-z0-9][a-z0-9-]*(?![\w-])/g;
/** What is shared, and the family that a verdict is adjusted in, among what a figure states besides its text. */
const SHARED = /(?<=; |, |^)shared [a-z]+:[a-z0-9@:-]+/g;
const FAMILY = /(?<=; |^)family [a-z0-9-]+/g;

/** By the rows of the records themselves: `body/fenn` that was `body/dell`. */
export function namesOfRenamed(renamed: readonly { readonly id: string; readonly was: string }[]): Names {
  return new Map(
    renamed.flatMap(({ id, was }) => {
      const [now, before] = [RECORD.exec(id)?.[1], RECORD.exec(was)?.[1]];
      return now === undefined || before === undefined || now === before ? [] : [[before, now] as const];
    }),
  );
}

/** The row as it would have read with the names of now. */
export function underNames<Row extends Published>(row: Row, names: Names): Row {
  if (names.size === 0) return row;
  const rename = (id: string): string => names.get(id) ?? id;
  const text = TELLS_IDS.test(row.id) ? row.text.replace(ID, rename) : row.text;
  const also = row.also
    ?.replace(SHARED, (shared) => shared.replace(ID, rename))
    .replace(FAMILY, (family) => [...names].reduce((now, [from, to]) => replaceWithin(now, from, to), family));
  return { ...row, text, ...(also === undefined ? {} : { also }) };
}

/** Between blanks and hyphens: `fenn` in `family settings-fenn-attic`. */
export function replaceWithin(text: string, from: string, to: string): string {
  return ` ${text} `.replace(new RegExp(`(?<=[ -])${from}(?=[ -])`, 'g'), to).slice(1, -1);
}
