/** What is wrong in a file an author wrote: typed data. The words are in `problem-text.ts`. */

import type { Cause } from './ledger.ts';
import { compareText } from './compare-text.ts';

/** Every kind of mistake. To add one: name it here, give it words in `problem-text.ts`, show it in a test. */
export type ProblemCode =
  // folders and files
  | 'missing-folder'
  | 'missing-file'
  | 'missing-readings'
  | 'missing-front'
  | 'missing-workbook'
  | 'changed-workbook'
  | 'stray-entry'
  | 'bad-id'
  | 'duplicate-id'
  | 'link-leads-out'
  | 'not-a-file'
  | 'unreadable-file'
  | 'file-too-large'
  | 'empty-file'
  // bytes
  | 'utf-16'
  | 'not-utf-8'
  | 'nul-byte'
  | 'control-character'
  | 'merge-unfinished'
  // what the files were written for
  | 'bad-format'
  | 'newer-format'
  | 'older-format'
  // front matter and YAML
  | 'no-front-matter'
  | 'front-matter-language'
  | 'front-matter-unclosed'
  | 'front-matter-close'
  | 'front-matter-too-long'
  | 'bad-yaml'
  | 'yaml-depth'
  | 'mdx-depth'
  | 'yaml-documents'
  | 'yaml-alias'
  | 'yaml-tag'
  | 'yaml-quotes'
  | 'duplicate-key'
  | 'unknown-key'
  | 'missing-key'
  | 'empty-value'
  | 'wrong-shape'
  // values
  | 'bad-choice'
  | 'bad-flag'
  | 'bad-date'
  | 'bad-duration'
  | 'zero-duration'
  | 'bad-rate'
  | 'bad-tolerance'
  | 'bad-speed'
  | 'bad-speed-name'
  | 'bad-row-height'
  | 'bad-licence'
  | 'bad-address'
  | 'bad-language'
  | 'bad-identifier'
  | 'bad-outputs'
  | 'out-of-range'
  | 'invisible-character'
  | 'bad-setting-name'
  | 'bad-level-number'
  | 'bad-level-rate'
  | 'duplicate-setting'
  | 'duplicate-level'
  | 'duplicate-link'
  | 'no-rate-setting'
  | 'second-rate-setting'
  | 'reserved-name'
  | 'bad-sizes'
  | 'bad-chances'
  | 'unquoted-number'
  // references
  | 'unknown-body'
  | 'unknown-rig'
  | 'unknown-display'
  | 'unknown-link'
  | 'unknown-setting'
  | 'unknown-level'
  | 'unknown-method'
  | 'missing-method'
  | 'same-display'
  | 'rig-lacks'
  // readings: the shape of the file
  | 'no-readings'
  | 'wrong-delimiter'
  | 'unknown-column'
  | 'missing-column'
  | 'duplicate-column'
  | 'column-order'
  | 'unclosed-quote'
  | 'stray-quote'
  | 'ragged-row'
  | 'blank-row'
  // readings: the cells
  | 'bad-run'
  | 'run-order'
  | 'empty-cell'
  | 'bad-time'
  | 'mixed-decimals'
  | 'time-past-wrap'
  | 'bad-number'
  | 'negative-value'
  | 'shown-later'
  | 'timer-wrapped'
  | 'blank-reason'
  | 'no-reason'
  | 'reason-with-comma'
  | 'stamps-back'
  | 'stamp-twice'
  | 'too-long'
  | 'too-short'
  | 'long-clip'
  | 'no-counted-reading'
  // what the analysis refuses
  | (typeof ANALYSIS_CODES)[number]
  // text
  | 'table-too-large'
  // write-ups
  | 'bad-mdx'
  | 'code-in-write-up'
  | 'not-plain'
  | 'refused-attribute'
  | 'refused-link'
  // photographs and clips
  | 'picture-by-reference'
  | 'picture-in-sentence'
  | 'picture-without-words'
  | 'picture-elsewhere'
  | 'picture-outside'
  | 'unknown-picture'
  | 'missing-picture'
  | 'unreadable-picture'
  | 'picture-too-large'
  | 'moving-picture'
  | 'clip-without-words'
  | 'unreadable-clip'
  | 'clip-not-played'
  | 'clip-carries-data'
  | 'bad-captions'
  | 'html-in-note'
  | 'unclosed-mark'
  | (typeof WRITE_UP_CODES)[number]
  // the ledger: its files, and the numbers held to it
  | 'bad-record'
  | 'bad-count'
  | 'repeated-record'
  | 'merge-conflict'
  | 'bad-digest'
  | 'bad-cause'
  | 'entry-half'
  | (typeof CHAIN_CODES)[number]
  | (typeof LEDGER_CODES)[number]
  | (typeof TYPED_CODES)[number]
  | (typeof AUDIT_CODES)[number]
  | (typeof WRITING_CODES)[number];

/** Mistakes of a write-up that show only against what the whole bench holds. */
export const WRITE_UP_CODES = [
  'unknown-part',
  'refused-element',
  'unknown-property',
  'missing-property',
  'unknown-figure',
  'unknown-session',
  'empty-selection',
  'empty-comparison',
  'same-session',
  'bad-quantity',
  'bad-selection',
  'no-words',
  'nested-words',
  'wrong-unit',
  'one-sided',
  'not-rankable',
  'claim-fails',
  'claim-words',
  'claim-turned',
  'unknown-page',
] as const;

/** What the analysis refuses: shown by what the readings say together. */
export const ANALYSIS_CODES = ['not-estimable', 'not-compilable'] as const;

/** What shows only when the entries of the ledger are replayed. */
export const CHAIN_CODES = [
  'earlier-ledger',
  'entry-edited',
  'entry-lost',
  'entry-fork',
  'entry-dated',
  'entry-last',
  'entry-unfounded',
  'row-missing',
  'row-edited',
  'row-unrecorded',
  'join-unrecorded',
] as const;

/** What a strict build refuses: shown by the state of the numbers, not by a file alone. */
export const LEDGER_CODES = ['moved-figure', 'gone-figure', 'renamed-record', 'no-ledger'] as const;

/** What a strict build refuses of words: quantities that do not come from data. */
export const TYPED_CODES = ['typed-quantity'] as const;

/** What a strict build refuses of built pages. */
export const AUDIT_CODES = ['unaccounted-number'] as const;

/** What keeps a command from writing: where it would write, not what an author wrote. */
export const WRITING_CODES = [
  'output-link',
  'output-file',
  'output-mount',
  'output-inside',
  'output-foreign',
  'in-use',
  'there-already',
  'not-a-list',
  'disk-full',
  'not-writable',
] as const;

/** What the data say now of a claim that they do not support, in published text. */
export interface ClaimEvidence {
  /** Id of the figure. */
  readonly figure: string;
  readonly text: string;
  /** `95 % interval 81 to 93 ms`; absent where the figure is exact. */
  readonly interval?: string;
  /** How far off it is. */
  readonly miss:
    | { readonly kind: 'too-low' | 'too-high'; readonly off: string; readonly ofInterval: boolean }
    | { readonly kind: 'no-interval' | 'other-verdict' }
    | { readonly kind: 'not-shown'; readonly p: string }
    | { readonly kind: 'beaten'; readonly rival: string; readonly off: string }
    | { readonly kind: 'tied'; readonly rivals: readonly string[] };
}

export interface Problem {
  /** Stable name of the kind of mistake, e.g. `unknown-body`. */
  readonly code: ProblemCode;
  /** Path as the author knows it, with forward slashes: `data/sessions/x.csv`. */
  readonly file: string;
  /** 1-based, where the mistake has a place in the file. */
  readonly line?: number;
  /** 1-based. */
  readonly column?: number;
  /** Dotted path of the key in front matter or YAML, or the name of the CSV column. */
  readonly key?: string;
  /** As written in the file. */
  readonly found?: string;
  /** The one thing that belongs there, where the kind of mistake does not say it: `3`, `60 s`, `a.csv`. */
  readonly expected?: string;
  /** Every valid choice, in the order in which they are best read. */
  readonly choices?: readonly string[];
  /** Valid choices nearest to what was found, best first. */
  readonly nearest?: readonly string[];
  /** How many further rows of the file have the same mistake. */
  readonly alike?: number;
  /** Why a published number moved. */
  readonly causes?: readonly Cause[];
  readonly evidence?: ClaimEvidence;
}

/** Thrown once per command or build, with every problem that was found. */
export class ProblemsError extends Error {
  readonly problems: readonly Problem[];

  constructor(problems: readonly Problem[], text: string) {
    super(text);
    this.name = 'ProblemsError';
    this.problems = problems;
  }
}

/** By file, then line, then column, then code: the order in which a build reports. */
export function compareProblems(a: Problem, b: Problem): number {
  return (
    compareText(a.file, b.file) ||
    (a.line ?? 0) - (b.line ?? 0) ||
    (a.column ?? 0) - (b.column ?? 0) ||
    compareText(a.code, b.code)
  );
}
