import type { Chain } from '../../src/analysis/chain.ts';
import type { Setup } from '../../src/analysis/precision.ts';
import { rate, type Rate } from '../../src/model/rate.ts';

/** A rig of two timers at 60 frames/s, read to 1 ms, in front of a body of this rate. */
export function setupOf(body: Rate, more: Partial<Chain> = {}): Setup {
  return {
    method: 'two-timers',
    resolutionMs: 1,
    chain: {
      source: { refresh: rate(60) },
      body: { rate: body },
      display: { refresh: rate(60), sync: 'input', digitsRow: 0.5 },
      ...more,
    },
  };
}
