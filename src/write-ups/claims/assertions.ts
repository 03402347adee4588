/** What a claim can assert: a closed list, each a property of `<Claim>`. */
import type { Bounds } from '../../register/comparisons/p-outside.ts';

interface Assertion {
  /** `at least 100 ms`. */
  readonly words: (quantity: string) => string;
  /**
   * Where the whole interval of a figure has to lie. `none` is the value at which the two sides of a comparison are
   * equal: 0 of a difference, 1 of a ratio.
   */
  readonly bounds: (value: number, none: number) => Bounds;
  /** Only of a figure that compares two things. */
  readonly compares: boolean;
}

/** Assertions that set a figure against a quantity. */
export const QUANTITY_ASSERTIONS = {
  atLeast: {
    words: (quantity) => `at least ${quantity}`,
    bounds: (value) => ({ low: value, high: Infinity }),
    compares: false,
  },
  atMost: {
    words: (quantity) => `at most ${quantity}`,
    bounds: (value) => ({ low: -Infinity, high: value }),
    compares: false,
  },
  exactly: {
    words: (quantity) => `exactly ${quantity}`,
    bounds: (value) => ({ low: value, high: value }),
    compares: false,
  },
  sameWithin: {
    words: (quantity) => `the same within ${quantity}`,
    bounds: (value, none) => ({ low: none - value, high: none + value }),
    compares: true,
  },
  noLowerBy: {
    words: (quantity) => `no lower by ${quantity} or more`,
    bounds: (value, none) => ({ low: none - value, high: Infinity }),
    compares: true,
  },
  noHigherBy: {
    words: (quantity) => `no higher by ${quantity} or more`,
    bounds: (value, none) => ({ low: -Infinity, high: none + value }),
    compares: true,
  },
} as const satisfies Record<string, Assertion>;

export type QuantityAssertion = keyof typeof QUANTITY_ASSERTIONS;
export const QUANTITY_NAMES = Object.keys(QUANTITY_ASSERTIONS) as readonly QuantityAssertion[];

/** Assertions that set a figure against others of its kind. */
export const RANK_ASSERTIONS = ['lowestOf', 'highestOf'] as const;
export type RankAssertion = (typeof RANK_ASSERTIONS)[number];

export const VERDICT_WORDS = ['slower', 'faster', 'same', 'not-settled'] as const;
