/** The sessions of a bench as a network: which parts each total went through, and which sessions share a part. */
import { freeRunningIntervalMs } from '../../analysis/chain.ts';
import type { ChainAnchor, ChainObservation } from '../../analysis/chain-network.ts';
import type { NamedComponent } from '../../analysis/components.ts';
import { combineErrors, errorOf, standardUncertaintyOf, type LinearError } from '../../analysis/linear-error.ts';
import type { Weighed } from '../../analysis/linear-contrast.ts';
import type { Session, StatedLatency } from '../../model/bench.ts';
import { intervalMs } from '../../model/rate.ts';
import { sharedKeyOf, type CompiledPair } from '../displays/compile-pairs.ts';
import type { Compilation } from '../compilation.ts';
import { splitBudget, weighed } from '../split-budget.ts';
import { bodyElement, displayElement, elementsOf, linkElement } from './elements.ts';
import { hypot } from '../../analysis/elementary.ts';

/** Sessions that hang together by the parts they share; nothing joins two islands. */
export interface Island {
  readonly sessions: readonly Session[];
  /** Displays read against each other; their ids among the observations are those of `pairId`. */
  readonly pairs: readonly CompiledPair[];
  /** Of bodies, links and displays, in order of first appearance. */
  readonly elements: readonly string[];
  /** Totals with what each session has alone; what sessions on a rig share stands as elements anchored at 0. */
  readonly observations: readonly ChainObservation[];
  readonly sharedErrors: readonly ChainAnchor[];
  /** Latencies stated for displays and links. */
  readonly anchors: readonly ChainAnchor[];
  /** Totals with all their uncertainty, for limits. */
  readonly totals: readonly ChainObservation[];
  /**
   * The least that physics leaves a part, where that is more than nothing: a body half a frame interval and its
   * readout, a display on its own clock half its refresh interval, the mean wait for the next one.
   */
  readonly atLeast: Readonly<Record<string, number>>;
}

/** A latency stated without any uncertainty is taken as good to a microsecond, so that it can be weighed. */
const LEAST_STATED_MS = 0.001;

/** The islands of the bench, and the sessions that cannot take part because they state no uncertainty at all. */
export function findIslands(compilation: Compilation): {
  islands: readonly Island[];
  withoutUncertainty: readonly Session[];
} {
  const { bench, budgetOf, pairs } = compilation;
  const isWeighable = ({ id }: Session): boolean => weighed(budgetOf(id)).standardUncertainty > 0;
  const groups = joinByElement([
    ...bench.sessions.filter(isWeighable).map((session) => ({ session, elements: elementsOf(session, bench) })),
    ...pairs.map((pair) => ({ pair, elements: elementsOfPair(pair) })),
  ]);
  return {
    islands: groups.map((members) =>
      islandOf(
        members.flatMap(({ session }) => session ?? []),
        members.flatMap(({ pair }) => pair ?? []),
        compilation,
      ),
    ),
    withoutUncertainty: bench.sessions.filter((session) => !isWeighable(session)),
  };
}

export function pairId({ pair }: CompiledPair): string {
  return `pair:${pair.id}`;
}

/** What a difference is of: links that both ways have cancel. */
function sidesOf({ pair }: CompiledPair): { readonly plus: readonly string[]; readonly minus: readonly string[] } {
  const [own, other] = [pair.links, pair.againstLinks];
  return {
    plus: [...own.filter((link) => !other.includes(link)).map(linkElement), displayElement(pair.display)],
    minus: [...other.filter((link) => !own.includes(link)).map(linkElement), displayElement(pair.against)],
  };
}

function elementsOfPair(pair: CompiledPair): readonly string[] {
  const { plus, minus } = sidesOf(pair);
  return [...plus, ...minus];
}

/** Parts of a pair's budget: those that it shares with nothing, and those of the display read or of the other one. */
function namedParts({ estimate, pair }: CompiledPair, of: 'own' | 'shown' | 'against'): readonly NamedComponent[] {
  return estimate.components
    .map((part) => ({ ...part, sharedKey: sharedKeyOf(part, pair) }))
    .filter(({ shared }) => (shared === null ? 'own' : shared === 'source' ? 'against' : 'shown') === of);
}

/**
 * What a display shares with its sessions enters as it does there, and that of the other display with the other sign.
 */
function errorOfPair(compiled: CompiledPair): LinearError {
  const { value, error } = compiled.estimate;
  return combineErrors([
    [1, errorOf({ value, own: { key: pairId(compiled), error }, components: namedParts(compiled, 'shown') })],
    [-1, errorOf({ value, components: namedParts(compiled, 'against') })],
  ]);
}

function islandOf(
  sessions: readonly Session[],
  pairs: readonly CompiledPair[],
  { bench, find, budgetOf }: Compilation,
): Island {
  const elements = [
    ...new Set([...sessions.flatMap((session) => elementsOf(session, bench)), ...pairs.flatMap(elementsOfPair)]),
  ];
  const errors = new Map<string, number>();
  const ofSessions = sessions.map((session): ChainObservation => {
    const budget = budgetOf(session.id);
    const { shared } = splitBudget(budget);
    const present = [...shared].filter(([, { standardUncertainty }]) => standardUncertainty > 0);
    // One size per error: where it differs between sessions, the largest claims no more than any session does.
    for (const [key, { standardUncertainty }] of present)
      errors.set(errorElement(key), Math.max(errors.get(errorElement(key)) ?? 0, standardUncertainty));
    return {
      id: session.id,
      elements: [...elementsOf(session, bench), ...present.map(([key]) => errorElement(key))],
      value: budget.value,
      ...weighed(budget),
    };
  });
  const ofPairs = pairs.map((compiled): ChainObservation => {
    const { estimate, pair } = compiled;
    const { plus, minus } = sidesOf(compiled);
    const shared = estimate.components.flatMap((component) => {
      const key = sharedKeyOf(component, pair);
      return key === null ? [] : [{ ...component, element: errorElement(`${component.name}@${key}`) }];
    });
    for (const { element, standardUncertainty } of shared)
      errors.set(element, Math.max(errors.get(element) ?? 0, standardUncertainty));
    const errorsOf = (isTaken: boolean): readonly string[] =>
      shared.filter((part) => (part.shared === 'source') === isTaken).map(({ element }) => element);
    return {
      id: pairId(compiled),
      elements: [...plus, ...errorsOf(false)],
      minus: [...minus, ...errorsOf(true)],
      value: estimate.value,
      // as the budget prints it, so that the weight can be had from what is published
      standardUncertainty: hypot(...namedParts(compiled, 'own').map((part) => part.standardUncertainty)),
      error: errorOfPair(compiled),
    };
  });
  const observations = [...ofSessions, ...ofPairs];
  const stated: readonly (readonly [string, StatedLatency | undefined])[] = [
    ...bench.displays.map(({ id, latency }) => [displayElement(id), latency] as const),
    ...bench.links.map(({ id, latency }) => [linkElement(id), latency] as const),
  ];
  return {
    sessions,
    pairs,
    elements,
    observations,
    sharedErrors: [...errors].map(([element, standardUncertainty]) => ({
      element,
      value: 0,
      standardUncertainty,
      error: new Map(),
    })),
    anchors: stated.flatMap(([element, latency]) =>
      latency !== undefined && elements.includes(element)
        ? [{ element, value: latency.valueMs, ...statedError(latency) }]
        : [],
    ),
    totals: observations.map((observation) => ({
      ...observation,
      elements: observation.elements.filter(isPart),
      ...(observation.minus === undefined ? {} : { minus: observation.minus.filter(isPart) }),
      standardUncertainty: standardUncertaintyOf(observation.error),
    })),
    atLeast: Object.fromEntries([
      ...sessions.map((session) => [
        bodyElement(session, bench),
        intervalMs(session.rate) / 2 + (find.body(session.body).readoutMs ?? 0),
      ]),
      ...bench.displays
        .filter(({ id, sync }) => sync === 'free' && elements.includes(displayElement(id)))
        .map((display) => [displayElement(display.id), freeRunningIntervalMs(display) / 2]),
    ]),
  };
}

function statedError({ valueMs, standardUncertaintyMs }: StatedLatency): Weighed {
  const standardUncertainty = Math.max(standardUncertaintyMs, LEAST_STATED_MS);
  const stated = { name: 'stated latency', standardUncertainty, degreesOfFreedom: Infinity, sharedKey: null };
  return { standardUncertainty, error: errorOf({ value: valueMs, components: [stated] }) };
}

const SHARED_ERROR = 'error/';

/** What sessions share as an element of its own, anchored at 0. */
function errorElement(key: string): string {
  return `${SHARED_ERROR}${key}`;
}

/** A body, a link or a display. */
function isPart(element: string): boolean {
  return !element.startsWith(SHARED_ERROR);
}

interface Member {
  readonly session?: Session;
  readonly pair?: CompiledPair;
  readonly elements: readonly string[];
}

/** Groups in order of first appearance; each session joins every group with which it shares an element. */
function joinByElement(members: readonly Member[]): readonly (readonly Member[])[] {
  const parent = new Map<string, string>();
  const rootOf = (element: string): string => {
    const up = parent.get(element);
    if (up === undefined || up === element) return element;
    const root = rootOf(up);
    parent.set(element, root);
    return root;
  };
  for (const { elements } of members) {
    const [first = '', ...rest] = elements;
    for (const element of rest) parent.set(rootOf(element), rootOf(first));
  }
  return [...Map.groupBy(members, ({ elements }) => rootOf(elements[0] ?? '')).values()];
}
