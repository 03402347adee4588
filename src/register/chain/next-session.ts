/** Which one comparison of two displays would settle most of what the network leaves open. */
import {
  estimateChainDifference,
  estimateChainElement,
  fitChain,
  type ChainObservation,
} from '../../analysis/chain-network.ts';
import { DEFAULT_LEVEL } from '../../analysis/interval.ts';
import { isBody, partOf } from './elements.ts';
import type { Island } from './network.ts';

export interface NextPair {
  readonly display: string;
  readonly against: string;
  /** Displays and links that would have a latency of their own, and have none now. */
  readonly gains: readonly string[];
  /** Displays that could be compared by it, and cannot now, each with another: how many. */
  readonly joins: number;
}

/** Standard uncertainty of four clips of four readings at 60 Hz: about a quarter of half a frame; as simulated (3.5 ms at 95 %). */
const EXPECTED_U_MS = 1.8;

/** Undefined where no comparison of two displays gives a display or link a latency, or two displays a difference, that it has not. */
export function nextPair(islands: readonly Island[]): NextPair | undefined {
  const observations = islands.flatMap((island) => island.observations);
  const anchors = islands.flatMap(({ sharedErrors, anchors: stated }) => [...sharedErrors, ...stated]);
  const parts = [...new Set(islands.flatMap(({ elements }) => elements))].filter((element) => !isBody(element));
  const displays = parts.filter((element) => partOf(element).type === 'display');
  const twos = displays.flatMap((a, index) => displays.slice(index + 1).map((b) => [a, b] as const));
  const unknownWith = (more: readonly ChainObservation[]): { parts: readonly string[]; apart: number } => {
    const chain = fitChain([...observations, ...more], anchors, DEFAULT_LEVEL, isBody);
    if (chain.kind !== 'chain') return { parts, apart: twos.length };
    return {
      parts: parts.filter((part) => estimateChainElement(chain, part).kind !== 'estimate'),
      apart: twos.filter(([a, b]) => estimateChainDifference(chain, a, b).kind !== 'estimate').length,
    };
  };
  const now = unknownWith([]);
  if (now.parts.length === 0) return undefined;
  const candidates = twos.map(([against, display]): NextPair => {
    const left = unknownWith([
      {
        id: 'next',
        elements: [display],
        minus: [against],
        value: 0,
        standardUncertainty: EXPECTED_U_MS,
        error: new Map(),
      },
    ]);
    return {
      display,
      against,
      gains: now.parts.filter((part) => !left.parts.includes(part)),
      joins: now.apart - left.apart,
    };
  });
  const [best] = candidates.toSorted((a, b) => b.gains.length - a.gains.length || b.joins - a.joins);
  return best !== undefined && best.gains.length + best.joins > 0 ? best : undefined;
}
