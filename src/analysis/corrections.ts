/**
 * Known systematic effects of a rig, corrected with their sign; what nobody measured becomes an uncertainty.
 *
 * Row skew. An observer whose sensor is read row by row sees what stands lower in its picture later, by
 * `readout × (display row − source row)`. Digits on the display that stand lower than the source's are
 * read later, so a newer frame is on the display: the reading is too small by just that, and the
 * correction is positive.
 *
 * Scan-out. A display draws its middle `scan-out × (1/2 − digits row)` after the row of the digits; that
 * is added, so that totals refer to mid-screen on every rig.
 *
 * Unknown rows are rectangular on 0 to 1, an unknown readout on 0 to one observer frame, an unknown
 * scan-out on 0 to one refresh (JCGM 100, 4.3.7: a rectangular distribution of half-width a has u = a/√3). Of an
 * observer that nobody described nothing is corrected; its rows are unknown and its readout lies between 0 and a sixtieth
 * of a second (common practice, no source), which counts as an uncertainty.
 *
 * Clips that were not read. Where a total speaks of its day, it is the mean over all clips of that day: less the mean of
 * the clips that were read, by how many of them seem to have begun a frame deeper (`clip-mean.ts`). How well that is known
 * is part of the session's own error.
 */
import { intervalMs } from '../model/rate.ts';
import type { SharedKey } from './budget.ts';
import type { Chain, Method } from './chain.ts';
import { meanOf, type Distribution } from './distribution.ts';

/** The longest readout of an observer that nobody described. */
const UNSTATED_READOUT_MS = 1000 / 60;

export interface Correction {
  readonly name: 'observer row skew' | 'display scan-out' | 'clips that were not read';
  /** To be added to the uncorrected value. */
  readonly valueMs: number;
  readonly standardUncertaintyMs: number;
  /** What the error of the correction is the same for; null for one that is the session's own. */
  readonly sharedKey: SharedKey;
}

/** A quantity known exactly, or only to lie between two bounds. */
interface Bounded {
  readonly mean: number;
  readonly variance: number;
}

/** Corrections of a chain, in ms. A light sensor stands on the display at a row too, and is seen by no observer. */
export function correctionsFor(chain: Chain, method: Method): Correction[] {
  const { observer, display } = chain;
  const corrections: Correction[] = [];
  if ((observer || chain.observerUnstated) && method !== 'instrument') {
    const rows = difference(boundedBy(observer?.displayRow, 1), boundedBy(observer?.sourceRow, 1));
    const longestMs = observer ? intervalMs(observer.rate) : UNSTATED_READOUT_MS;
    corrections.push(describe('observer row skew', product(boundedBy(observer?.readoutMs, longestMs), rows), 'rig'));
  }
  const toMiddle = difference({ mean: 0.5, variance: 0 }, boundedBy(display.digitsRow, 1));
  corrections.push(
    describe(
      'display scan-out',
      product(boundedBy(display.scanOutMs, intervalMs(display.refresh)), toMiddle),
      // a scan-out that nobody stated belongs to the display; a row of digits that nobody stated, to its place on a rig
      display.digitsRow === undefined ? 'display-on-rig' : 'display',
    ),
  );
  return corrections;
}

/** From the mean of the clips that were read to that of all clips of their day; `dayError` as `Estimate['errors']`. */
export function correctionToDay(dayError: Distribution): Correction {
  return { name: 'clips that were not read', valueMs: meanOf(dayError), standardUncertaintyMs: 0, sharedKey: null };
}

function boundedBy(known: number | undefined, high: number): Bounded {
  return known === undefined ? { mean: high / 2, variance: high ** 2 / 12 } : { mean: known, variance: 0 };
}

function difference(a: Bounded, b: Bounded): Bounded {
  return { mean: a.mean - b.mean, variance: a.variance + b.variance };
}

/** Exact for independent factors: Var(xy) = Var x·Var y + Var x·(E y)² + Var y·(E x)². */
function product(x: Bounded, y: Bounded): Bounded {
  return {
    mean: x.mean * y.mean,
    variance: x.variance * y.variance + x.variance * y.mean ** 2 + y.variance * x.mean ** 2,
  };
}

function describe(name: Correction['name'], { mean, variance }: Bounded, sharedKey: SharedKey): Correction {
  return { name, valueMs: mean, standardUncertaintyMs: Math.sqrt(variance), sharedKey };
}
