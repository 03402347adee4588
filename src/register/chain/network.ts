/** The sessions of a bench as a network: which parts each total went through, and which sessions share a part. */
import type { ChainAnchor, ChainObservation } from '../../analysis/chain-network.ts';
import { errorOf, standardUncertaintyOf } from '../../analysis/linear-error.ts';
import type { Weighed } from '../../analysis/linear-contrast.ts';
import type { Session, StatedLatency } from '../../model/bench.ts';
import { intervalMs } from '../../model/rate.ts';
import type { Compilation } from '../compilation.ts';
import { splitBudget, weighed } from '../split-budget.ts';
import { bodyElement, displayElement, elementsOf, linkElement } from './elements.ts';

/** Sessions that hang together by the parts they share; nothing joins two islands. */
export interface Island {
  readonly sessions: readonly Session[];
  /** Of bodies, links and displays, in order of first appearance. */
  readonly elements: readonly string[];
  /** Totals with what each session has alone; what sessions on a rig share stands as elements anchored at 0. */
  readonly observations: readonly ChainObservation[];
  readonly sharedErrors: readonly ChainAnchor[];
  /** Latencies stated for displays and links. */
  readonly anchors: readonly ChainAnchor[];
  /** Totals with all their uncertainty, for limits. */
  readonly totals: readonly ChainObservation[];
  /** The least that physics leaves a body: half a frame interval and its readout. */
  readonly atLeast: Readonly<Record<string, number>>;
}

/** A latency stated without any uncertainty is taken as good to a microsecond, so that it can be weighed. */
const LEAST_STATED_MS = 0.001;

/** The islands of the bench, and the sessions that cannot take part because they state no uncertainty at all. */
export function findIslands(compilation: Compilation): {
  islands: readonly Island[];
  withoutUncertainty: readonly Session[];
} {
  const { bench, budgetOf } = compilation;
  const isWeighable = ({ id }: Session): boolean => weighed(budgetOf(id)).standardUncertainty > 0;
  const groups = joinByElement(bench.sessions.filter(isWeighable), (session) => elementsOf(session, bench));
  return {
    islands: groups.map((sessions) => islandOf(sessions, compilation)),
    withoutUncertainty: bench.sessions.filter((session) => !isWeighable(session)),
  };
}

function islandOf(sessions: readonly Session[], { bench, find, budgetOf }: Compilation): Island {
  const elements = [...new Set(sessions.flatMap((session) => elementsOf(session, bench)))];
  const errors = new Map<string, number>();
  const observations = sessions.map((session): ChainObservation => {
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
  const stated: readonly (readonly [string, StatedLatency | undefined])[] = [
    ...bench.displays.map(({ id, latency }) => [displayElement(id), latency] as const),
    ...bench.links.map(({ id, latency }) => [linkElement(id), latency] as const),
  ];
  return {
    sessions,
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
    totals: sessions.map((session) => {
      const budget = budgetOf(session.id);
      const error = errorOf(budget);
      return {
        id: session.id,
        elements: elementsOf(session, bench),
        value: budget.value,
        standardUncertainty: standardUncertaintyOf(error),
        error,
      };
    }),
    atLeast: Object.fromEntries(
      sessions.map((session) => [
        bodyElement(session, bench),
        intervalMs(session.rate) / 2 + (find.body(session.body).readoutMs ?? 0),
      ]),
    ),
  };
}

function statedError({ valueMs, standardUncertaintyMs }: StatedLatency): Weighed {
  const standardUncertainty = Math.max(standardUncertaintyMs, LEAST_STATED_MS);
  const stated = { name: 'stated latency', standardUncertainty, degreesOfFreedom: Infinity, sharedKey: null };
  return { standardUncertainty, error: errorOf({ value: valueMs, components: [stated] }) };
}

function errorElement(key: string): string {
  return `error/${key}`;
}

/** Groups in order of first appearance; each session joins every group with which it shares an element. */
function joinByElement(
  sessions: readonly Session[],
  elementsOfSession: (session: Session) => readonly string[],
): readonly (readonly Session[])[] {
  const parent = new Map<string, string>();
  const rootOf = (element: string): string => {
    const up = parent.get(element);
    if (up === undefined || up === element) return element;
    const root = rootOf(up);
    parent.set(element, root);
    return root;
  };
  for (const session of sessions) {
    const [first = '', ...rest] = elementsOfSession(session);
    for (const element of rest) parent.set(rootOf(element), rootOf(first));
  }
  return [...Map.groupBy(sessions, (session) => rootOf(elementsOfSession(session)[0] ?? '')).values()];
}
