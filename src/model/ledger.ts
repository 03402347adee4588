/**
 * The ledger: what the site said when its state was last recorded (`content/ledger/figures.csv`), the inputs it
 * said it from (`inputs.csv`), and a dated entry for every record that moved something (`entries/*.yaml`).
 */

/** One published statement: a figure, or what a body or a session is, without which its figures mean nothing. */
export interface Published {
  /** Of a figure its own: `total/a`. Else `body/orrin-v2`, `session/a`. */
  readonly id: string;
  readonly text: string;
  /** Of a figure, to ten significant digits. */
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
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
  readonly from: string;
  readonly to: string;
}

export interface Withdrawal {
  readonly id: string;
  readonly from: string;
}

/** One record of the state: when, why, and what moved by it. */
export interface LedgerEntry {
  /** Name of its file without ending: `2026-05-02-one-more-reading-excluded`. */
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
  /** How many are new, by kind. */
  readonly added: Readonly<Record<string, number>>;
}

/** What figures are computed from. */
export interface Inputs {
  /** Version of the analysis. */
  readonly analysis: string;
  /** SHA-256 by path of every file that figures come from. */
  readonly checksums: Readonly<Record<string, string>>;
}

/** As recorded. */
export interface Ledger extends Inputs {
  /** Of the list of figures: `content/ledger/figures.csv`. */
  readonly path: string;
  readonly figures: readonly Recorded[];
  /** Newest first. */
  readonly entries: readonly LedgerEntry[];
}

/** Why something moved, as far as the recorded inputs tell. */
export type Cause =
  | { readonly kind: 'analysis'; readonly from: string; readonly to: string }
  /** `own`: it is one of the files that the figure names as its sources. */
  | { readonly kind: 'changed' | 'new' | 'gone'; readonly file: string; readonly own: boolean }
  /** Its files are as they were, but not the same ones. */
  | { readonly kind: 'regrouped' }
  /** Nothing that was read changed. */
  | { readonly kind: 'code'; readonly analysis: string };
