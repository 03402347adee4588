/** Benches on which verdicts are counted. */
import type { BenchRow } from './verdict-rates.ts';

const USUAL = ['24', '25', '29.97', '30', '50', '59.94'];
/** Rates on which nothing was ever tuned. */
const OTHER = ['23.976', '47.952', '48', '60', '100', '119.88'];

export const BENCH_ROWS: readonly BenchRow[] = [
  { name: 'as the model says, 3 × 8', rates: USUAL, clips: 3, readings: 8 },
  { name: 'the same, six conditions repeated', rates: USUAL, clips: 3, readings: 8, learnt: true },
  { name: 'frame jitter ± T_d/4, 3 × 8', rates: USUAL, clips: 3, readings: 8, jitter: 0.25 },
  { name: 'delay changes per clip, sd T_d/4, 3 × 8', rates: USUAL, clips: 3, readings: 8, clipSd: 0.25 },
  { name: 'buffer 0 or 1 frame per clip, 2 × 5', rates: USUAL, clips: 2, readings: 5, step: 0.5 },
  { name: 'the same, 3 × 8, six conditions repeated', rates: USUAL, clips: 3, readings: 8, step: 0.5, learnt: true },
  {
    name: 'one clip of twenty a frame deeper, 3 × 8, repeated',
    rates: USUAL,
    clips: 3,
    readings: 8,
    step: 0.05,
    learnt: true,
  },
  { name: 'own offset per day, sd T_d/8, 3 × 8', rates: USUAL, clips: 3, readings: 8, daySd: 0.125 },
  { name: 'the same, six conditions repeated', rates: USUAL, clips: 3, readings: 8, daySd: 0.125, learnt: true },
  { name: 'own offset per day, sd T_d/4, repeated', rates: USUAL, clips: 3, readings: 8, daySd: 0.25, learnt: true },
  { name: 'other rates, as the model says, 4 × 6', rates: OTHER, clips: 4, readings: 6 },
  { name: 'other rates, clips sd T_d/3, 4 × 6', rates: OTHER, clips: 4, readings: 6, clipSd: 1 / 3 },
  {
    name: 'other rates, day sd T_d/6, 4 × 6, repeated',
    rates: OTHER,
    clips: 4,
    readings: 6,
    daySd: 1 / 6,
    learnt: true,
  },
];
