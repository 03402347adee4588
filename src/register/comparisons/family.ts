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
  /** What counts as the same, where a write-up states it; otherwise half a frame interval of the faster rate. */
  readonly marginMs?: number;
}

export interface Family {
  /** Part of the ids of its verdicts: `settings-orrin-v2-balcony`. */
  readonly id: string;
  readonly of: Subject;
  /** Address of the page on which its entries stand, and that page's title. */
  readonly group: string;
  readonly groupTitle: string;
  /** What it holds, to follow "comparisons:". */
  readonly inWords: string;
  readonly pairs: readonly SessionPair[];
}

export const differenceId = ({ a, b }: SessionPair): string => `difference/${a}/${b}`;
export const ratioId = ({ a, b }: SessionPair): string => `ratio/${a}/${b}`;

/** The pair that a difference or ratio with this id is of; undefined for any other id. */
export function pairOfId(id: string): SessionPair | undefined {
  const [, a, b] = /^(?:difference|ratio)\/([^/]+)\/([^/]+)$/.exec(id) ?? [];
  return a === undefined || b === undefined ? undefined : { a, b };
}

export const familySizeId = (family: string): string => `family/${family}`;

/** A stated margin is part of the question, and so of the id. */
export function verdictId(family: string, { a, b, marginMs }: SessionPair): string {
  return [
    'verdict',
    family,
    a,
    b,
    ...(marginMs === undefined ? [] : [`within-${Number(marginMs.toFixed(3))}-ms`]),
  ].join('/');
}

/** Group of entries of one body: its pairs, effects and costs. */
export const bodyGroup = (body: string): string => `body-${body}`;
export const bodyGroupTitle = (name: string): string => `${name}: what its settings do`;
