/** Which one comparison of two displays would settle most of what the network leaves open. */
import {
  estimateChainDifference,
  estimateChainElement,
  fitChain,
  type ChainFit,
  type ChainObservation,
} from '../../analysis/chain-network.ts';
import { DEFAULT_LEVEL } from '../../analysis/interval.ts';
import { errorOf } from '../../analysis/linear-error.ts';
import { isBody, partOf } from './elements.ts';
import type { Island } from './network.ts';

export interface NextPair {
  readonly display: string;
  readonly against: string;
  /** Displays and links that would have a latency of their own, and have none now. */
  readonly gains: readonly string[];
  /** Displays that could be compared by it, and cannot now, each with another: how many. */
  readonly joins: number;
  /** Of what it tells best: the half-width of its interval now, where it has one, and then, in ms. */
  readonly narrows: { readonly part: string; readonly fromMs: number | undefined; readonly toMs: number } | undefined;
}

/**
 * Standard uncertainty of four clips of four readings at 60 Hz, in ms, where neither, one or both displays run on their
 * own clock: half-widths of 3.6, 5.2 and 7.2 ms, as simulated (`pair-coverage-table.json`).
 */
export const EXPECTED_U_MS: readonly [number, number, number] = [1.8, 2.7, 3.7];
/** A session is worth naming where it narrows an interval to this share. */
const WORTHWHILE = 0.5;

/**
 * Undefined where no comparison of two displays gives a display or link a latency, or two displays a difference, that
 * it has not, nor makes an interval half as wide.
 *
 * @param runsFree whether a display, by its element, runs on its own clock
 */
export function nextPair(islands: readonly Island[], runsFree: (display: string) => boolean): NextPair | undefined {
  const observations = islands.flatMap((island) => island.observations);
  const anchors = islands.flatMap(({ sharedErrors, anchors: stated }) => [...sharedErrors, ...stated]);
  const parts = [...new Set(islands.flatMap(({ elements }) => elements))].filter((element) => !isBody(element));
  const displays = parts.filter((element) => partOf(element).type === 'display');
  const twos = displays.flatMap((a, index) => displays.slice(index + 1).map((b) => [a, b] as const));
  const fitWith = (more: readonly ChainObservation[]) =>
    fitChain([...observations, ...more], anchors, DEFAULT_LEVEL, isBody);
  const known = (chain: ReturnType<typeof fitWith>): Known =>
    chain.kind === 'chain'
      ? {
          widths: new Map(parts.flatMap((part) => widthOf(chain, part))),
          apart: twos.filter(([a, b]) => estimateChainDifference(chain, a, b).kind !== 'estimate').length,
        }
      : { widths: new Map(), apart: twos.length };
  const before = fitWith([]);
  const now = known(before);
  const widest = Math.max(0, ...parts.map((part) => now.widths.get(part) ?? Infinity));
  if (widest * WORTHWHILE < K * EXPECTED_U_MS[0]) return undefined;
  const candidates = twos.map(([against, display]): NextPair => {
    const foreseen = before.kind === 'chain' ? estimateChainDifference(before, display, against) : undefined;
    // what the network expects, so that it disagrees with nothing
    const value = foreseen?.kind === 'estimate' ? foreseen.value : 0;
    const then = known(fitWith([expected(display, against, value, runsFree)]));
    return {
      display,
      against,
      gains: parts.filter((part) => then.widths.has(part) && !now.widths.has(part)),
      joins: now.apart - then.apart,
      narrows: narrowed(now, then),
    };
  });
  const [best] = candidates.toSorted(
    (a, b) => b.gains.length - a.gains.length || b.joins - a.joins || narrowing(b.narrows) - narrowing(a.narrows),
  );
  if (best === undefined) return undefined;
  const { gains, joins, narrows } = best;
  // where sessions disagree, any that agreed would narrow all: the disagreement is to be settled first
  const agree = before.kind === 'chain' && (before.consistency?.inflation ?? 1) === 1;
  const isNarrowed = agree && narrows?.fromMs !== undefined && narrows.toMs <= WORTHWHILE * narrows.fromMs;
  return gains.length + joins > 0 || isNarrowed ? best : undefined;
}

interface Known {
  /** Half-widths in ms, of parts that have a latency. */
  readonly widths: ReadonlyMap<string, number>;
  /** How many two displays cannot be told apart. */
  readonly apart: number;
}

/** From a standard uncertainty to the half-width at 95 %, where it is normal. */
const K = 1.96;

function widthOf(chain: ChainFit, part: string): readonly (readonly [string, number])[] {
  const found = estimateChainElement(chain, part);
  return found.kind === 'estimate' ? [[part, (found.interval.high - found.interval.low) / 2]] : [];
}

function expected(
  display: string,
  against: string,
  value: number,
  runsFree: (display: string) => boolean,
): ChainObservation {
  const free = Number(runsFree(display)) + Number(runsFree(against));
  const standardUncertainty = EXPECTED_U_MS[free as 0 | 1 | 2];
  const own = { name: 'expected', standardUncertainty, degreesOfFreedom: Infinity, sharedKey: null };
  return {
    id: 'next',
    elements: [display],
    minus: [against],
    value,
    standardUncertainty,
    error: errorOf({ value: 0, components: [own] }),
  };
}

/** What an interval that is not there counts as, in ms: more than any that is. */
const NO_INTERVAL_MS = 1e6;

type Narrowed = NonNullable<NextPair['narrows']>;

/** The part that gains most. */
function narrowed(now: Known, then: Known): NextPair['narrows'] {
  const all = [...then.widths].map(([part, toMs]): Narrowed => ({ part, fromMs: now.widths.get(part), toMs }));
  return all.toSorted((a, b) => narrowing(b) - narrowing(a))[0];
}

function narrowing(of: Narrowed | undefined): number {
  return of === undefined ? 0 : (of.fromMs ?? NO_INTERVAL_MS) - of.toMs;
}
