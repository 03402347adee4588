/**
 * A measuring chain as plain values: source timer → body → links → display → observer.
 *
 * Rates are exact (`Rate`), times are milliseconds, clock tolerances are parts per million. A field that
 * nobody measured is left out; the analysis then says what it assumed instead.
 */
import { intervalMs, type Rate } from '../model/rate.ts';

/** How readings were taken; `instrument` is milliseconds straight from a light sensor and a timebase. */
export type Method = 'two-timers' | 'frame-count' | 'instrument';

export interface ChainSource {
  readonly refresh: Rate;
  /** Half-width of what its clock may be off by, in ppm. */
  readonly clockTolerancePpm?: number;
}

export interface ChainBody {
  readonly rate: Rate;
  /** Time for which one frame collects light. */
  readonly exposureMs?: number;
  readonly clockTolerancePpm?: number;
}

export interface ChainDisplay {
  readonly refresh: Rate;
  /** `input`: starts a refresh when a frame arrives; `free`: refreshes on its own clock. */
  readonly sync: 'input' | 'free';
  /** Time it takes to draw from its first row to its last. */
  readonly scanOutMs?: number;
  /** Height on its own screen at which the digits (or the flash) stand: 0 top edge, 1 bottom edge. */
  readonly digitsRow?: number;
  readonly clockTolerancePpm?: number;
}

export interface ChainObserver {
  readonly rate: Rate;
  readonly exposureMs?: number;
  /** Time its sensor takes to read from its first row to its last. */
  readonly readoutMs?: number;
  /** Height in its picture at which the source timer's digits stand: 0 top edge, 1 bottom edge. */
  readonly sourceRow?: number;
  /** The same for the digits on the display. */
  readonly displayRow?: number;
  readonly clockTolerancePpm?: number;
}

export interface Chain {
  /** Absent for methods without a running source timer. */
  readonly source?: ChainSource;
  readonly body: ChainBody;
  readonly display: ChainDisplay;
  /** Absent where readings come from no camera, or from one that nobody described. */
  readonly observer?: ChainObserver;
  /** A camera took the readings and nobody described it: where the timers stood in its picture, and how it reads its rows. */
  readonly observerUnstated?: true;
}

/** Refresh interval of a display that runs on its own clock; 0 where it follows its input. In ms. */
export function freeRunningIntervalMs({ refresh, sync }: ChainDisplay): number {
  return sync === 'free' ? intervalMs(refresh) : 0;
}

/**
 * Total latency that a chain with a known pipeline delay has, in ms: `L + T_d/2 (+ T_m/2)`.
 *
 * `L` runs from the end of a frame's capture to its first light in the middle of the display (on one
 * that runs on its own clock: to the moment from which its next refresh can show it). A frame stays visible for one body
 * interval `T_d`, and waits half a refresh `T_m` on the mean where the display free-runs.
 */
export function totalFromPipelineMs(pipelineMs: number, chain: Chain): number {
  return pipelineMs + intervalMs(chain.body.rate) / 2 + freeRunningIntervalMs(chain.display) / 2;
}
