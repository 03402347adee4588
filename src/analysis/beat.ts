/**
 * How long two rates stay in step: `1 / |p·f₁ − q·f₂|` for the small p, q that make it longest.
 *
 * 59.94 frames/s against 60 Hz come round every 1/(60 − 60000/1001) s = 16.68 s. Readings taken within much less
 * than a beat share their phase error, and averaging them does not remove it. Common practice gives the same
 * figure for the slow roll of a 60 Hz screen filmed at 59.94 frames/s.
 */
import type { Rate } from '../model/rate.ts';

export interface Beat {
  /** p periods of the second rate last about as long as q of the first: p·f₁ ≈ q·f₂. */
  readonly p: number;
  readonly q: number;
  /** Infinity where the rates are locked exactly. */
  readonly periodMs: number;
}

/** The longest beat of two rates with p and q up to `largest`; of equally long ones that with the smallest p + q. */
export function longestBeat(first: Rate, second: Rate, largest = 5): Beat {
  let best: Beat = { p: 1, q: 1, periodMs: 0 };
  for (let sum = 2; sum <= 2 * largest; sum += 1) {
    for (let p = Math.max(1, sum - largest); p <= Math.min(largest, sum - 1); p += 1) {
      const q = sum - p;
      // exact in integers: p·f₁ − q·f₂ over the product of the denominators
      const apart = Math.abs(p * first.frames * second.seconds - q * second.frames * first.seconds);
      const periodMs = apart === 0 ? Infinity : (1000 * first.seconds * second.seconds) / apart;
      if (periodMs > best.periodMs * (1 + 1e-12)) best = { p, q, periodMs };
    }
  }
  return best;
}
