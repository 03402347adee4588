/** What a check looked at, and what it found wrong: a sentence each, with the page first. */
export interface Checked {
  readonly looked: number;
  readonly faults: readonly string[];
}
