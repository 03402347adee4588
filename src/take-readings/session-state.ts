/** All that the page shows of one session, as plain data: computed as a build computes it, from the files as they are. */
import { Memory } from 'lagfolio/memory';
import { estimateSession, keepEstimate } from '../analysis/estimate.ts';
import { readingRangeMs } from '../analysis/phase-errors.ts';
import { summarize } from '../analysis/summary.ts';
import { pathOf, type ParsedSessions } from '../ingest/read-session.ts';
import type { Bench, MethodId, PlannedSession, Session } from '../model/bench.ts';
import { wordsOf } from '../model/problem-text.ts';
import type { Problem } from '../model/problem.ts';
import { intervalMs } from '../model/rate.ts';
import { readDesign } from '../planning/plan-text.ts';
import { COLUMNS, readPosition } from '../planning/render-session.ts';
import { findingsOf } from '../register/findings/findings.ts';
import { suspectsOf } from '../register/findings/suspects.ts';
import { lookup } from '../register/lookup.ts';
import { describeCoverage, plural } from '../register/provenance.ts';
import type { Finding } from '../register/register.ts';
import { refusalOf } from '../register/refusal.ts';
import { compileSession, type SessionFigures } from '../register/session-figures.ts';
import { chainOf, countedReadings, countedRuns } from '../register/session-input.ts';
import { decimalsOfStep, describeSignificant, describeValue, roundTo } from '../register/text.ts';
import { describeProgress } from './progress.ts';

export interface ReadingState {
  readonly line: number;
  readonly run: number;
  readonly cells: Readonly<Record<string, string>>;
  readonly latency?: string;
  readonly latencyMs?: number;
  readonly sourceMs?: number;
  readonly excluded?: string;
  readonly note?: string;
  /** What is wrong with it, or most likely is. */
  readonly remarks: readonly string[];
  readonly suits: readonly string[];
}

export interface ClipState {
  readonly run: number;
  readonly counted: number;
  readonly says: string;
}

export interface Fact {
  readonly term: string;
  readonly says: string;
}

export interface Total {
  readonly text: string;
  readonly frames: string;
  readonly coverage: string;
  readonly halfWidthMs: number;
  readonly halfWidth: string;
}

export interface SessionState {
  readonly id: string;
  /** Of both files as they are: what a change must be based on. */
  readonly digest: string;
  readonly method: MethodId;
  /** Absent where two displays are compared. */
  readonly rig?: string;
  readonly columns: readonly string[];
  /** What stands in a column, and what is made of it (`latency`), as the page calls them. */
  readonly names: Readonly<Record<string, string>>;
  /** Whether the shown time may be the later one. */
  readonly signed: boolean;
  /** What may still be filled in beside the date. */
  readonly asks: readonly Detail[];
  /** What was set on the body, to be read back before the first reading. */
  readonly settings: readonly Fact[];
  readonly context: readonly Fact[];
  /** Absent while it is still to be filled in, and then nothing can be typed. */
  readonly date?: string;
  readonly position?: { readonly position: number; readonly of: number };
  readonly plan?: { readonly runs: number; readonly readings: number; readonly spacingMs: number };
  /** A time as this session's timer writes it. */
  readonly example?: string;
  /** What undoing would take back. */
  readonly undo?: string;
  readonly refreshMs?: number;
  readonly wrapsAfterMs?: number;
  readonly observerFrameMs?: number;
  /** By how much two readings of one clip can differ. */
  readonly rangeMs?: number;
  readonly readings: readonly ReadingState[];
  readonly clips: readonly ClipState[];
  /** Mistakes that a build would report of the session's files. */
  readonly problems: readonly string[];
  readonly findings: readonly Pick<Finding, 'rule' | 'severity' | 'message' | 'hint'>[];
  readonly total?: Total;
  readonly refused?: string;
  readonly agreement: string;
  readonly progress: string;
}

export type Detail = 'firmware' | 'room' | 'warm-up';

export interface SessionTexts {
  readonly front: string;
  readonly readings: string;
  readonly digest: string;
}

/** Undefined where the session's own files, or what they refer to, are so faulty that nothing can be said of them. */
export function sessionState(
  id: string,
  { bench, problems }: ParsedSessions,
  texts: SessionTexts,
): SessionState | undefined {
  const session = bench?.sessions.find((one) => one.id === id);
  const planned = session ?? bench?.planned.find((one) => one.id === id);
  if (bench === undefined || planned === undefined || !isKnown(planned, bench)) return undefined;
  const own = problemsOf(id, problems);
  const found = session === undefined || countedReadings(session).length === 0 ? undefined : compiled(session, bench);
  const figures = found?.kind === 'figures' ? found.figures : undefined;
  const findings = figures === undefined ? [] : findingsOf([figures]);
  return {
    id,
    ...statedIn(texts),
    method: planned.method,
    rig: planned.rig,
    columns: COLUMNS[planned.method].split(','),
    names: NAMES,
    signed: false,
    asks: ['firmware', 'room', 'warm-up'],
    ...conditionOf(planned, session, bench),
    ...timingOf(planned, session, bench),
    readings: session === undefined ? [] : readingsOf(session, own, remarkedIn(figures)),
    clips: session === undefined ? [] : clipsOf(session),
    problems: own.filter((problem) => !isOfRow(problem)).map(wordsOf),
    findings: findings.map(({ rule, severity, message, hint }) => ({ rule, severity, message, hint })),
    ...(figures === undefined ? {} : { total: totalOf(figures) }),
    ...(found?.kind === 'refused' ? { refused: found.says } : {}),
    agreement: agreementOf(figures?.estimate.diagnostics),
    progress: progressOf(session, texts),
  };
}

const NAMES = { source: 'Timer', shown: 'Display', frames: 'Frames counted', latency: 'Latency' };

/** Mistakes in the two files. */
export function problemsOf(id: string, problems: readonly Problem[]): readonly Problem[] {
  return problems.filter(({ file }) => file.startsWith(`${pathOf(id)}.`));
}

/** Rather than of the file as a whole. */
export function isOfRow({ line, file }: Problem): boolean {
  return file.endsWith('.csv') && line !== undefined;
}

/** What the files say whether or not they are sound. */
export function statedIn({ front, digest }: SessionTexts): Pick<SessionState, 'digest' | 'date' | 'position' | 'plan'> {
  const [plan, position] = [readDesign(front), readPosition(front)];
  const date = /^date: *["']?(\d{4}-\d\d-\d\d)/m.exec(front)?.[1];
  return {
    digest,
    ...(date === undefined ? {} : { date }),
    ...(position === undefined ? {} : { position }),
    ...(plan === undefined ? {} : { plan }),
  };
}

export function progressOf(taken: Taken | undefined, { front }: SessionTexts): string {
  return describeProgress(taken === undefined ? [] : countedRuns(taken).map((run) => run.length), readDesign(front));
}

/** Readings that there are, of a session or of two displays. */
export type Taken = Pick<Session, 'readings' | 'resolutionMs'>;

/** What is to be said of a reading beside what a build reports of its row, and digits that would suit. */
export interface Remarked {
  readonly why: readonly string[];
  readonly suits: readonly string[];
}

/** Whether a list of records has one of this id. */
export function has(list: readonly { readonly id: string }[], id: string): boolean {
  return list.some((one) => one.id === id);
}

/** Whether all that it refers to could be read. */
function isKnown({ body, rig, display, links }: PlannedSession | Session, bench: Bench): boolean {
  return (
    has(bench.bodies, body) &&
    has(bench.rigs, rig) &&
    has(bench.displays, display) &&
    links.every((link) => has(bench.links, link))
  );
}

/** Kept where a build keeps its own, so that what one has estimated the other need not. */
const estimates = new Memory({
  name: 'estimates',
  code: ['src/analysis', 'src/model'],
  compute: estimateSession,
  keep: keepEstimate,
  restore: (estimate) => estimate,
});

type Compiled =
  | { readonly kind: 'figures'; readonly figures: SessionFigures }
  | { readonly kind: 'refused'; readonly says: string };

function compiled(session: Session, bench: Bench): Compiled {
  const find = lookup(bench);
  try {
    return { kind: 'figures', figures: compileSession(session, find, estimates.recall) };
  } catch (error) {
    return { kind: 'refused', says: wordsOf(refusalOf(session, find, estimateSession, error)) };
  }
}

function conditionOf(
  { body, rig, display, links, settings }: PlannedSession | Session,
  session: Session | undefined,
  bench: Bench,
): Pick<SessionState, 'settings' | 'context'> {
  const find = lookup(bench);
  return {
    settings: [
      { term: 'Body', says: find.body(body).name },
      ...bench.settings
        .filter(({ id }) => settings[id] !== undefined)
        .map(({ id, label }) => ({ term: label, says: find.level(id, settings[id] ?? '') })),
    ],
    context: [
      { term: 'Rig', says: find.rig(rig).name },
      {
        term: 'Chain',
        says: [find.body(body), ...links.map(find.link), find.display(display)].map(({ name }) => name).join(', then '),
      },
      ...(session?.firmware === undefined ? [] : [{ term: 'Firmware', says: session.firmware }]),
      ...(session?.room === undefined ? [] : [{ term: 'Room', says: session.room }]),
      ...(session?.warmUp === undefined ? [] : [{ term: 'Warm-up', says: session.warmUp }]),
    ],
  };
}

function timingOf(
  planned: PlannedSession | Session,
  session: Session | undefined,
  bench: Bench,
): Partial<Pick<SessionState, 'refreshMs' | 'wrapsAfterMs' | 'observerFrameMs' | 'rangeMs'>> {
  const find = lookup(bench);
  const { sourceTimer, observer } = find.rig(planned.rig);
  const resolutionMs = session?.resolutionMs ?? sourceTimer?.resolutionMs ?? 1;
  return {
    ...(sourceTimer === undefined ? {} : { refreshMs: intervalMs(sourceTimer.refresh) }),
    ...(sourceTimer?.wrapsAfterMs === undefined ? {} : { wrapsAfterMs: sourceTimer.wrapsAfterMs }),
    ...(observer === undefined ? {} : { observerFrameMs: intervalMs(observer.rate) }),
    rangeMs: readingRangeMs(chainOf(planned, find), planned.method, resolutionMs),
  };
}

function remarkedIn(figures: SessionFigures | undefined): ReadonlyMap<number, Remarked> {
  return new Map((figures === undefined ? [] : suspectsOf(figures)).map((suspect) => [suspect.line, suspect]));
}

/** @param remarked by line */
export function readingsOf(
  session: Taken,
  problems: readonly Problem[],
  remarked: ReadonlyMap<number, Remarked>,
): readonly ReadingState[] {
  const decimals = decimalsOfStep(session.resolutionMs);
  return session.readings.map((reading): ReadingState => {
    const { line, run, cells, latencyMs, sourceMs, excluded, note } = reading;
    const suspect = remarked.get(line);
    return {
      line,
      run,
      cells,
      ...(latencyMs === undefined ? {} : { latencyMs, latency: describeValue(latencyMs, decimals, 'ms') }),
      ...(sourceMs === undefined ? {} : { sourceMs }),
      ...(excluded === undefined ? {} : { excluded }),
      ...(note === undefined ? {} : { note }),
      remarks: [
        ...problems.filter((problem) => problem.line === line && isOfRow(problem)).map(wordsOf),
        ...(suspect?.why ?? []),
      ],
      suits: suspect?.suits ?? [],
    };
  });
}

export function clipsOf(session: Taken): readonly ClipState[] {
  const runs = new Set(session.readings.map(({ run }) => run));
  return [...runs].map((run): ClipState => {
    const latencies = countedReadings(session)
      .filter((reading) => reading.run === run)
      .map(({ latencyMs }) => latencyMs);
    const mean =
      latencies.length === 0
        ? ''
        : `, mean ${describeValue(summarize(latencies).mean, decimalsOfStep(session.resolutionMs) + 1, 'ms')}`;
    return { run, counted: latencies.length, says: `${plural(latencies.length, 'reading')}${mean}` };
  });
}

function totalOf({ total, figures, estimate }: SessionFigures): Total {
  return {
    text: total.text,
    frames: figures.find(({ kind }) => kind === 'frames')?.text ?? '',
    coverage: total.interval === undefined ? '' : describeCoverage(total.interval, total.unit),
    halfWidthMs: estimate.expandedUncertainty,
    halfWidth: describeSignificant(estimate.expandedUncertainty, 2, 'ms'),
  };
}

/** From which probability on a build says that clips differ, and below which nothing here points to it. */
const [SURE, UNLIKELY] = [0.95, 0.5];

export function agreementOf(
  found: { readonly runs: number; readonly betweenRunsProbability: number } | undefined,
): string {
  if (found === undefined) return '';
  const { runs, betweenRunsProbability: p } = found;
  if (runs < 2) return 'One clip so far: nothing tells yet how much clips differ.';
  const percent = `${roundTo(100 * Math.min(p, 0.999), p > 0.995 ? 1 : 0)} %`;
  if (p >= SURE)
    return `The clips differ by more than their phases explain (probability ${percent}): film more of them.`;
  return p < UNLIKELY
    ? `The clips agree as far as their phases let them (a delay that changes from clip to clip has probability ${percent}).`
    : `The clips may differ by more than their phases explain (probability ${percent}).`;
}
