import { extent } from 'd3-array';
import type { Chain } from '../analysis/chain.ts';
import type { RunInput, SessionInput } from '../analysis/session-input.ts';
import type { Reading, Session } from '../model/bench.ts';
import type { Lookup } from './lookup.ts';
import { once } from '../model/once.ts';

export interface CountedReading extends Reading {
  readonly latencyMs: number;
}

/** The readings that count, in the order taken. */
export const countedReadings: (session: Pick<Session, 'readings'>) => readonly CountedReading[] = once(({ readings }) =>
  readings.filter(
    (reading): reading is CountedReading => reading.excluded === undefined && reading.latencyMs !== undefined,
  ),
);

/** The same, run by run. */
export function countedRuns(session: Pick<Session, 'readings'>): readonly (readonly CountedReading[])[] {
  return [...Map.groupBy(countedReadings(session), ({ run }) => run).values()];
}

/** What the analysis needs to know of a session, as plain values: readings by run, and the chain they came through. */
export function sessionInput(session: Session, find: Lookup): SessionInput {
  const { instrument } = find.rig(session.rig);
  const variation = find.variation(session.body);
  return {
    method: session.method,
    chain: chainOf(session, find),
    runs: runsOf(session, find.rig(session.rig).sourceTimer?.wrapsAfterMs),
    ...(session.resolutionMs === undefined ? {} : { resolutionMs: session.resolutionMs }),
    ...(variation === undefined ? {} : { variation }),
    // Stated with k = 2 (JCGM 100, 4.3.3).
    ...(instrument === undefined || session.method !== 'instrument'
      ? {}
      : { instrumentUncertaintyMs: instrument.expandedUncertaintyMs / 2 }),
  };
}

export function runsOf(session: Pick<Session, 'readings'>, wrapsAfterMs: number | undefined): readonly RunInput[] {
  return countedRuns(session).map((run) => {
    const sourceMs = unwrap(
      run.flatMap((reading) => reading.sourceMs ?? []),
      wrapsAfterMs,
    );
    return {
      latenciesMs: run.map(({ latencyMs }) => latencyMs),
      ...(sourceMs.length === run.length ? { sourceMs } : {}),
    };
  });
}

/**
 * Stamps of one clip as a clock would give them that never starts again. Rows may stand in the order of time or the
 * other way round: the clock is taken to have started again as seldom as either order allows.
 */
function unwrap(stampsMs: readonly number[], wrapsAfterMs: number | undefined): readonly number[] {
  if (wrapsAfterMs === undefined) return stampsMs;
  const forwards = unwrapInOrder(stampsMs, wrapsAfterMs);
  const backwards = unwrapInOrder([...stampsMs].reverse(), wrapsAfterMs).reverse();
  return spanOf(backwards) < spanOf(forwards) ? backwards : forwards;
}

function unwrapInOrder(stampsMs: readonly number[], wrapsAfterMs: number): number[] {
  let wraps = 0;
  return stampsMs.map((stamp, index) => {
    if (stamp < (stampsMs[index - 1] ?? stamp)) wraps += 1;
    return stamp + wraps * wrapsAfterMs;
  });
}

function spanOf(stampsMs: readonly number[]): number {
  const [first = 0, last = 0] = extent(stampsMs);
  return last - first;
}

/** The chain of a session, done or planned. */
export function chainOf({ rig, display, rate }: Pick<Session, 'rig' | 'display' | 'rate'>, find: Lookup): Chain {
  const { sourceTimer, observer, digitsRow } = find.rig(rig);
  const { refresh, sync, scanOutMs } = find.display(display);
  return {
    body: { rate },
    display: {
      refresh,
      sync,
      ...(scanOutMs === undefined ? {} : { scanOutMs }),
      ...(digitsRow === undefined ? {} : { digitsRow }),
    },
    ...(sourceTimer === undefined ? {} : { source: sourceTimer }),
    ...(observer === undefined ? { observerUnstated: true } : { observer }),
  };
}
