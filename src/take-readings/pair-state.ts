/** The same as `session-state.ts` of two displays that are read against each other. */
import { freeRunningIntervalMs } from '../analysis/chain.ts';
import { typedPairId, type ParsedSessions } from '../ingest/read-session.ts';
import type { Bench, DisplayPair, PlannedPair } from '../model/bench.ts';
import { wordsOf } from '../model/problem-text.ts';
import { ProblemsError } from '../model/problem.ts';
import { intervalMs, rateLabel } from '../model/rate.ts';
import { COLUMNS } from '../planning/render-session.ts';
import { compilePairs, type CompiledPair } from '../register/displays/compile-pairs.ts';
import { isMisread, pairFindings } from '../register/displays/pair-findings.ts';
import { lookup } from '../register/lookup.ts';
import { describeCoverage } from '../register/provenance.ts';
import { countedReadings, countedRuns } from '../register/session-input.ts';
import { describeSignificant } from '../register/text.ts';
import {
  has,
  agreementOf,
  clipsOf,
  isOfRow,
  problemsOf,
  progressOf,
  readingsOf,
  statedIn,
  type Fact,
  type Remarked,
  type SessionState,
  type SessionTexts,
  type Total,
} from './session-state.ts';

/** Undefined where its own files, or what they refer to, are so faulty that nothing can be said of them. */
export function pairState(
  id: string,
  { bench, problems }: ParsedSessions,
  texts: SessionTexts,
): SessionState | undefined {
  const pair = bench?.displayPairs.find((one) => typedPairId(one) === id);
  const planned = pair ?? bench?.plannedPairs.find((one) => typedPairId(one) === id);
  if (bench === undefined || planned === undefined || !isKnownPair(planned, bench)) return undefined;
  const own = problemsOf(id, problems);
  const found = pair === undefined || countedReadings(pair).length === 0 ? undefined : compiled(pair, bench);
  const result = found?.kind === 'figures' ? found.compiled : undefined;
  const find = lookup(bench);
  return {
    id,
    ...statedIn(texts),
    // they are typed as the pairs of two timers are
    method: 'two-timers',
    columns: COLUMNS['two-timers'].split(','),
    names: {
      source: find.display(planned.against).name,
      shown: find.display(planned.display).name,
      latency: 'Later by',
    },
    signed: true,
    asks: ['room'],
    settings: describeSetUp(planned, bench),
    context: pair?.room === undefined ? [] : [{ term: 'Room', says: pair.room }],
    ...timingOf(planned, bench),
    readings: pair === undefined ? [] : readingsOf(pair, own, remarkedIn(pair, result)),
    clips: pair === undefined ? [] : clipsOf(pair),
    problems: own.filter((problem) => !isOfRow(problem)).map(wordsOf),
    findings: result === undefined ? [] : pairFindings([result]),
    ...(result === undefined ? {} : { total: totalOf(result) }),
    ...(found?.kind === 'refused' ? { refused: found.says } : {}),
    agreement: agreementOf(
      result && {
        runs: countedRuns(result.pair).length,
        betweenRunsProbability: result.estimate.betweenRunsProbability,
      },
    ),
    progress: progressOf(pair, texts),
  };
}

/** Whether both displays and all links could be read. */
export function isKnownPair(
  { display, against, links, againstLinks }: PlannedPair | DisplayPair,
  bench: Bench,
): boolean {
  return (
    [display, against].every((one) => has(bench.displays, one)) &&
    [...links, ...againstLinks].every((link) => has(bench.links, link))
  );
}

type Compiled =
  | { readonly kind: 'figures'; readonly compiled: CompiledPair }
  | { readonly kind: 'refused'; readonly says: string };

function compiled(pair: DisplayPair, bench: Bench): Compiled {
  try {
    const [one] = compilePairs({ ...bench, displayPairs: [pair] });
    if (one === undefined) throw new Error(`nothing was made of ${pair.id}`);
    return { kind: 'figures', compiled: one };
  } catch (error) {
    if (!(error instanceof ProblemsError)) throw error;
    return { kind: 'refused', says: error.problems.map(wordsOf).join(' ') };
  }
}

function describeSetUp(
  { display, against, links, againstLinks, sourceTimer, observer }: PlannedPair | DisplayPair,
  bench: Bench,
): readonly Fact[] {
  const find = lookup(bench);
  const way = (own: readonly string[], last: string): string =>
    [...own.map(find.link), find.display(last)].map(({ name }) => name).join(', then ');
  return [
    { term: 'Source', says: way(againstLinks, against) },
    { term: 'Shown', says: way(links, display) },
    { term: 'Picture', says: `${sourceTimer.name}, ${rateLabel(sourceTimer.refresh)} Hz` },
    ...(observer === undefined
      ? []
      : [{ term: 'Observer', says: `${observer.name}, ${rateLabel(observer.rate)} frames/s` }]),
  ];
}

function timingOf(
  { display, against, sourceTimer, observer }: PlannedPair | DisplayPair,
  bench: Bench,
): Partial<Pick<SessionState, 'refreshMs' | 'wrapsAfterMs' | 'observerFrameMs' | 'rangeMs'>> {
  const find = lookup(bench);
  const refreshMs = intervalMs(sourceTimer.refresh);
  const waitsMs = [display, against].reduce((sum, id) => sum + freeRunningIntervalMs(find.display(id)), 0);
  return {
    refreshMs,
    ...(sourceTimer.wrapsAfterMs === undefined ? {} : { wrapsAfterMs: sourceTimer.wrapsAfterMs }),
    ...(observer === undefined ? {} : { observerFrameMs: intervalMs(observer.rate) }),
    // of two neighbouring frames either display may show the one or the other, and wait for a refresh of its own
    rangeMs: refreshMs + waitsMs + 2 * (sourceTimer.resolutionMs ?? 1),
  };
}

function remarkedIn(pair: DisplayPair, result: CompiledPair | undefined): ReadonlyMap<number, Remarked> {
  if (result === undefined) return new Map();
  return new Map(
    countedRuns(pair).flatMap((run, r) =>
      run.flatMap(({ line }, i) =>
        isMisread(result, r, i)
          ? [
              [
                line,
                { why: ['It does not go with the others: one of its two values is most likely misread.'], suits: [] },
              ],
            ]
          : [],
      ),
    ),
  );
}

function totalOf({ figure, estimate }: CompiledPair): Total {
  return {
    text: figure.text,
    frames: figure.label,
    coverage: figure.interval === undefined ? '' : describeCoverage(figure.interval, figure.unit),
    halfWidthMs: estimate.expandedUncertainty,
    halfWidth: describeSignificant(estimate.expandedUncertainty, 2, 'ms'),
  };
}
