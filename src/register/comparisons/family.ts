/** Comparisons that are read together, and so are adjusted together. */
import type { Subject } from '../register.ts';

/** A step of one setting, in the order in which its levels are declared. */
export interface Step {
  readonly setting: string;
  readonly from: string;
  readonly to: string;
}

/** Two sessions, `a` less `b`. */
export interface SessionPair {
  readonly a: string;
  readonly b: string;
  /** Where the two differ in one setting only: `b` has `from`, `a` has `to`. */
  readonly step?: Step;
  /**
   * What counts as the same, exactly, where a write-up states it; otherwise half a frame interval of the faster rate.
   */
  readonly marginMs?: number;
}

export interface Family {
  /** Part of the ids of its verdicts: `settings-vennick-q4-balcony`. */
  readonly id: string;
  readonly of: Subject;
  /** Address of the page on which its entries stand, and that page's title. */
  readonly group: string;
  readonly groupTitle: string;
  /** What it holds, to follow "comparisons:". */
  readonly inWords: string;
  readonly pairs: readonly SessionPair[];
  /** How many statements of claims are read, and so adjusted, with the pairs. */
  readonly claimed?: number;
}

export const differenceId = ({ a, b }: SessionPair): string => `difference/${a}/${b}`;
export const ratioId = ({ a, b }: SessionPair): string => `ratio/${a}/${b}`;

/**
 * Which sessions a difference or ratio with this id would be of; undefined for any other id. Ids are formatted from
 * questions, so every question that could be meant is asked for its id.
 */
export function questionOfId(id: string, sessions: readonly string[]): SessionPair | undefined {
  if (!/^(?:difference|ratio)\//.test(id)) return undefined;
  const named = sessions.filter((session) => id.includes(session));
  return named
    .flatMap((a) => named.map((b): SessionPair => ({ a, b })))
    .find((pair) => [differenceId(pair), ratioId(pair)].includes(id));
}

export const familySizeId = (family: string): string => `family/${family}`;

/** What tells one question of a family from another: its sessions, and the margin where one is stated, to 1 µs. */
export const questionId = ({ a, b, marginMs }: SessionPair): string =>
  [a, b, ...(marginMs === undefined ? [] : [`within-${Number(marginMs.toFixed(3))}-ms`])].join('/');

export const verdictId = (family: string, pair: SessionPair): string => `verdict/${family}/${questionId(pair)}`;

/** Group of entries of one body: its pairs, effects and costs. */
export const bodyGroup = (body: string): string => `body-${body}`;
export const bodyGroupTitle = (name: string): string => `${name}: what its settings do`;
