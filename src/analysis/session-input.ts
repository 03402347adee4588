import type { Chain, Method } from './chain.ts';
import type { Variation } from './variation.ts';

/** The readings of one run that count, in the order taken. */
export interface RunInput {
  /** source − shown, frames × observer interval, or the instrument's value. */
  readonly latenciesMs: readonly number[];
  /** Source stamps, one for each latency, unwrapped; needed for two timers, absent otherwise. */
  readonly sourceMs?: readonly number[];
}

export interface SessionInput {
  readonly method: Method;
  readonly chain: Chain;
  /** Each with one reading at least. */
  readonly runs: readonly RunInput[];
  /** Step of the timer's last digit; needed for two timers. */
  readonly resolutionMs?: number;
  /** What the maker of a light sensor states, as a standard uncertainty. */
  readonly instrumentUncertaintyMs?: number;
  /** Coverage probability of the interval; 0.95 where absent. */
  readonly level?: number;
  /** How delays vary on this bench; the stated default where absent. */
  readonly variation?: Variation;
}
