/**
 * The rigs of the demonstration as the simulation takes them. A test compares them with what `data/` states, so
 * that the readings come from the rigs that the site describes.
 */
import type { Chain, ChainDisplay, ChainObserver, ChainSource } from '../../src/analysis/chain.ts';
import { parseRate, rate, type Rate } from '../../src/model/rate.ts';
import type { PlannedSession, PlannedSettings, RigId } from './plan.ts';

export interface DemonstrationRig {
  readonly source?: ChainSource;
  readonly display: ChainDisplay;
  readonly observer: ChainObserver;
  /** The source timer starts again at zero after this long. */
  readonly wrapsAfterMs?: number;
}

const TOLERANCE = { clockTolerancePpm: 50 } as const;

export const RIGS: Readonly<Record<RigId, DemonstrationRig>> = {
  balcony: {
    source: { refresh: rate(60), ...TOLERANCE },
    display: { refresh: rate(60), sync: 'input', scanOutMs: 4, digitsRow: 0.25 },
    observer: { rate: rate(240), exposureMs: 2, readoutMs: 4, sourceRow: 0.35, displayRow: 0.6, ...TOLERANCE },
  },
  pit: {
    source: { refresh: rate(120), ...TOLERANCE },
    display: { refresh: rate(60), sync: 'free', scanOutMs: 16, digitsRow: 0.75 },
    observer: { rate: rate(50), exposureMs: 1, readoutMs: 10, sourceRow: 0.3, displayRow: 0.7, ...TOLERANCE },
    wrapsAfterMs: 100_000,
  },
  workshop: {
    display: { refresh: rate(60), sync: 'input', scanOutMs: 16, digitsRow: 0.5 },
    observer: { rate: rate(240), exposureMs: 1, readoutMs: 4, sourceRow: 0.3, displayRow: 0.7, ...TOLERANCE },
  },
};

export function rateOf({ rate: text }: PlannedSettings): Rate {
  const value = parseRate(text);
  if (!value) throw new RangeError(`${text} is no frame rate`);
  return value;
}

export function chainOf({ rig, settings }: PlannedSession): Chain {
  const { source, display, observer } = RIGS[rig];
  return { ...(source && { source }), body: { rate: rateOf(settings) }, display, observer };
}

/**
 * What the rig adds to every reading beside the total, in ms: digits that stand below the middle of the display are
 * drawn later than the middle, to which a total refers; the observer reads its sensor row by row, so what stands lower
 * in its picture is seen later. A light sensor sees the panel without the observer.
 */
export function rowShiftMs({ rig, method }: PlannedSession): number {
  const { display, observer } = RIGS[rig];
  const drawnMs = (display.scanOutMs ?? 0) * ((display.digitsRow ?? 0.5) - 0.5);
  const skewMs = (observer.readoutMs ?? 0) * ((observer.displayRow ?? 0) - (observer.sourceRow ?? 0));
  return method === 'instrument' ? drawnMs : drawnMs - skewMs;
}
