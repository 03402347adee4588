import type { Rate } from '../model/rate.ts';
import type { ChainDisplay, ChainObserver } from './chain.ts';
import type { RunInput } from './session-input.ts';
import type { Variation } from './variation.ts';

/** What feeds both displays. */
export interface PairPicture {
  readonly rate: Rate;
  readonly clockTolerancePpm?: number;
}

/** By how much later the picture leaves for `shown` than for `source`. */
export type OutputOffset =
  | { readonly kind: 'stated'; readonly valueMs: number; readonly standardUncertaintyMs: number }
  /** Two outputs that nobody compared: up to one frame of the picture, either way. */
  | { readonly kind: 'unknown' };

export interface PairInput {
  readonly picture: PairPicture;
  readonly source: ChainDisplay;
  readonly shown: ChainDisplay;
  /** Rows as in a chain: `sourceRow` of the one, `displayRow` of the other. */
  readonly observer?: ChainObserver;
  readonly outputs: OutputOffset;
  /** `latenciesMs` are source − shown and may be negative. */
  readonly runs: readonly RunInput[];
  readonly resolutionMs: number;
  readonly level?: number;
  readonly variation?: Variation;
}
