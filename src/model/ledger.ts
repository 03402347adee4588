/**
 * The ledger: a chain of dated entries (`content/ledger/entries/`), each with every row that it changed and the digest
 * of the entry before; and what they come to, the state that was recorded last (`figures.csv`, `inputs.csv`).
 */

/** One published statement: a figure, or what something is, without which figures mean nothing. */
export interface Published {
  /** Of a figure its own: `total/a`. Else `body/vennick-q4`, `session/a`. */
  readonly id: string;
  readonly text: string;
  /** Of a figure, to ten significant digits. */
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  /** Of a figure, all else that it states: its budget, degrees of freedom, p; a digest of its words. */
  readonly also?: string;
  /** Short digest of the names of the files it rests on, so that one more or one fewer is noticed. */
  readonly files: string;
}

export interface Recorded extends Published {
  /** 1-based line of `figures.csv`. */
  readonly line: number;
}

/** What moved, in the published words. */
export interface Move {
  readonly id: string;
  /** Its id until then, where that was another. */
  readonly was?: string;
  readonly from: string;
  readonly to: string;
  /** `behind`: what is printed in its place stayed; `follows`: it counts or limits, and something was added. */
  readonly quiet?: 'behind' | 'follows';
}

export interface Withdrawal {
  readonly id: string;
  readonly from: string;
}

/** One record of the state as readers are told of it: when, why, and what moved by it. */
export interface LedgerEntry {
  /** Name of its file without ending: `2026-05-02-one-more-reading-excluded-1a2b3c`. */
  readonly id: string;
  /** ISO 8601 calendar date. */
  readonly date: string;
  readonly reason: string;
  /** Version of the analysis that computed the new state. */
  readonly analysis: string;
  /** In words: `data/sessions/a.csv changed`. */
  readonly causes: readonly string[];
  readonly moved: readonly Move[];
  /** No longer published. */
  readonly gone: readonly Withdrawal[];
  /** What has another id since, whether it moved or not. */
  readonly renamed?: readonly { readonly id: string; readonly was: string }[];
  /** How many are new, by kind. */
  readonly added: Readonly<Record<string, number>>;
}

/** One row of the state that an entry changed. An input is a row like any other: see `inputId`. */
export interface Change {
  /** Line of the entry's table. */
  readonly line: number;
  readonly id: string;
  /** Its id before, where that was another. */
  readonly was?: string;
  /** undefined: no longer there. */
  readonly now?: Published;
  /** Which of the entry's causes, from 1; absent for what is new. */
  readonly cause?: number;
}

/** An entry as it is recorded: `entries/ID.yaml` and, beside it, `entries/ID.csv` with its changes. */
export interface ChainedEntry {
  readonly id: string;
  /** `content/ledger/entries/ID.yaml`; its table has the same name and ends in `.csv`. */
  readonly path: string;
  readonly date: string;
  readonly reason: string;
  readonly analysis: string;
  /** What the entry before says; absent in the first. */
  readonly before?: string;
  /** SHA-256 of everything above and below, and so of the whole chain up to here. */
  readonly says: string;
  /** Each a set of causes that changes have in common. */
  readonly causes: readonly (readonly Cause[])[];
  readonly changes: readonly Change[];
}

/** What figures are computed from. */
export interface Inputs {
  /** Version of the analysis. */
  readonly analysis: string;
  /** SHA-256 by path of every file that what is published comes from. */
  readonly checksums: Readonly<Record<string, string>>;
}

/** As recorded. */
export interface Ledger extends Inputs {
  /** Of the list of figures: `content/ledger/figures.csv`. */
  readonly path: string;
  readonly figures: readonly Recorded[];
  /** What the last entry says, by `inputs.csv`; absent where it was recorded before entries were chained. */
  readonly head?: string;
  /** In the order of their names. */
  readonly chain: readonly ChainedEntry[];
  /** Entries from before entries were chained, which tell of changes and cannot be replayed. */
  readonly told: readonly LedgerEntry[];
}

/** Why something moved, as far as the recorded inputs tell. */
export type Cause =
  | { readonly kind: 'analysis'; readonly from: string; readonly to: string }
  /** `own`: it is one of the files that the figure names as its sources. */
  | { readonly kind: 'changed' | 'new' | 'gone'; readonly file: string; readonly own: boolean }
  /** The same content under another name. */
  | { readonly kind: 'renamed'; readonly from: string; readonly to: string }
  /** Its files are as they were, but not the same ones. */
  | { readonly kind: 'regrouped' }
  /** Nothing that was read changed. */
  | { readonly kind: 'code'; readonly analysis: string };

const INPUT = 'input/';
/** The input that is no file: the version of the analysis. */
export const ANALYSIS_INPUT = 'analysis';

/** The id of an input among the rows of the state: `input/data/sessions/a.csv`. */
export const inputId = (name: string): string => INPUT + name;
export const isInputId = (id: string): boolean => id.startsWith(INPUT);
