import { addIndependent, halfWidthAbout, type Distribution } from './distribution.ts';

export interface RepeatGain {
  /** Half-width of what is known of the condition from the session alone, in ms. */
  readonly aloneMs: number;
  /** The same from its mean with a session like it on another day. */
  readonly togetherMs: number;
}

/** What a repeat on another day buys: `error` is the session's own about its condition, in ms. */
export function gainOfRepeat(error: Distribution, level = 0.95): RepeatGain {
  const half = { ...error, low: error.low / 2, step: error.step / 2 };
  return {
    aloneMs: halfWidthAbout(error, 0, level),
    togetherMs: halfWidthAbout(addIndependent(half, half), 0, level),
  };
}
