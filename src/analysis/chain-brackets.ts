import { intervalAt } from './error-tail.ts';
import { propagate } from './propagate.ts';
import type { ChainAnchor, ChainObservation } from './chain-network.ts';

/** Bounds, not an error bar: the true latency lies somewhere in it, and nothing says where. */
export interface Bracket {
  readonly element: string;
  readonly low: number;
  /** undefined: no session bounds it from above. */
  readonly high: number | undefined;
  /**
   * Ids of the sessions, elements of the anchors, and elements whose least latency is given, that the two limits rest
   * on.
   */
  readonly from: readonly string[];
}

export type ChainBrackets =
  | { readonly kind: 'brackets'; readonly brackets: readonly Bracket[] }
  /** The session whose total cannot be reached, or is exceeded, whatever the elements' latencies. */
  | { readonly kind: 'contradiction'; readonly session: string };

export interface BracketOptions {
  /** Least latency of an element by physics, 0 where not given. */
  readonly atLeast?: Readonly<Record<string, number>>;
  readonly anchors?: readonly ChainAnchor[];
  /** Coverage of each total's own interval, which the brackets take as certain. */
  readonly level?: number;
}

interface Bounds {
  low: number;
  high: number;
  lowFrom: ReadonlySet<string>;
  highFrom: ReadonlySet<string>;
}

const NOTHING: ReadonlySet<string> = new Set();
const BRACKET_LEVEL = 0.999;
const MOST_PASSES = 1000;

/**
 * What can be said of every element without an anchor: rigorous bounds.
 *
 * No latency is below its least value, and each session's total is the sum of its elements, so an element is at most the
 * total's upper limit less the least of all others in that session, and at least the total's lower limit less the most of
 * the others. The two rules are applied until nothing narrows any more; every step keeps the truth inside, given that the
 * totals' intervals hold (at 0.999, so that their failures do not count).
 *
 * Units: those of the totals. Domain: elements named once per session. Source: interval arithmetic (bound propagation).
 *
 * A display seen at totals of 60 ± 0 and 80 ± 0 through bodies of at least 20 lies between 0 and 40.
 */
export function bracketChain(observations: readonly ChainObservation[], options: BracketOptions = {}): ChainBrackets {
  const { atLeast = {}, anchors = [], level = BRACKET_LEVEL } = options;
  const bounds = new Map<string, Bounds>();
  for (const { elements, minus = [] } of observations) {
    const all = [...elements, ...minus];
    if (new Set(all).size < all.length) throw new RangeError(`a session names one element twice: ${all.join(', ')}`);
    for (const element of all) {
      const least = atLeast[element];
      const lowFrom = least === undefined ? NOTHING : new Set([element]);
      bounds.set(element, { low: least ?? 0, high: Infinity, lowFrom, highFrom: NOTHING });
    }
  }
  const equations = [
    ...observations.map(({ id, elements, minus = [], ...total }) => ({
      id,
      elements,
      minus,
      ...limitsOf(total, level),
    })),
    ...anchors
      .filter((anchor) => bounds.has(anchor.element))
      .map((anchor) => ({ id: anchor.element, elements: [anchor.element], minus: [], ...limitsOf(anchor, level) })),
  ];
  for (let pass = 0, narrowed = true; narrowed && pass < MOST_PASSES; pass += 1) {
    narrowed = false;
    for (const { id, elements, minus, low, high } of equations) {
      for (const element of [...elements, ...minus]) {
        const own = bounds.get(element);
        if (!own) continue;
        const among = (list: readonly string[]): readonly Bounds[] =>
          list.filter((other) => other !== element).flatMap((other) => bounds.get(other) ?? []);
        const isTaken = minus.includes(element);
        // solved for the element: one side adds up with it, the other against it
        const [withIt, against] = isTaken ? [among(minus), among(elements)] : [among(elements), among(minus)];
        const [from, to] = isTaken ? [-high, -low] : [low, high];
        const most = to - sumLow(withIt) + sumHigh(against);
        const least = from - sumHigh(withIt) + sumLow(against);
        const raising = [...lowFromOf(withIt), ...highFromOf(against)];
        const lowering = [...highFromOf(withIt), ...lowFromOf(against)];
        // steps below a billionth are rounding, and would go on for ever
        const grain = 1e-9 * Math.max(1, Math.abs(high));
        if (most < own.high - grain) {
          [own.high, narrowed] = [most, true];
          own.highFrom = new Set([id, ...raising]);
        }
        if (least > own.low + grain) {
          [own.low, narrowed] = [least, true];
          own.lowFrom = new Set([id, ...lowering]);
        }
        if (own.low > own.high + grain) return { kind: 'contradiction', session: id };
      }
    }
  }
  return {
    kind: 'brackets',
    brackets: [...bounds].map(([element, { low, high, lowFrom, highFrom }]) => ({
      element,
      low,
      high: high === Infinity ? undefined : Math.max(low, high),
      from: [...lowFrom.union(highFrom)],
    })),
  };
}

const sumLow = (all: readonly Bounds[]): number => all.reduce((sum, { low }) => sum + low, 0);
const sumHigh = (all: readonly Bounds[]): number => all.reduce((sum, { high }) => sum + high, 0);
const lowFromOf = (all: readonly Bounds[]): readonly string[] => all.flatMap(({ lowFrom }) => [...lowFrom]);
const highFromOf = (all: readonly Bounds[]): readonly string[] => all.flatMap(({ highFrom }) => [...highFrom]);

function limitsOf(
  { value, error }: Pick<ChainObservation, 'value' | 'error'>,
  level: number,
): { low: number; high: number } {
  return intervalAt(propagate(value, error), level);
}
