/**
 * Readings that are most likely wrong, one by one, and the digits with which they would suit the others: for whoever
 * types them.
 */
import { readingRangeMs } from '../../analysis/phase-errors.ts';
import { medianOf } from '../../analysis/summary.ts';
import { intervalMs } from '../../model/rate.ts';
import type { Reading, Session } from '../../model/bench.ts';
import { digitVariants } from '../digit-variants.ts';
import type { Lookup } from '../lookup.ts';
import { chainOf, countedReadings, type CountedReading } from '../session-input.ts';
import type { SessionFigures } from '../session-figures.ts';
import { describeSignificant, roundTo } from '../text.ts';
import { beyondRangeReadings } from './inputs/beyond-range.ts';
import { offGridReadings } from './inputs/off-grid.ts';
import { likelyMisreads } from './misread.ts';

export interface Suspect {
  readonly line: number;
  /** Sentences. */
  readonly why: readonly string[];
  /** Cells with one digit changed, the likeliest first: `shown 00:12.217`. */
  readonly suits: readonly string[];
}

const SHOWN_SUITS = 2;

/**
 * By the rules that a build has for whole sessions; and by what two readings alone can tell, since more are still to
 * come.
 */
export function suspectsOf(compiled: SessionFigures): readonly Suspect[] {
  const { session, find } = compiled;
  const misread = new Map(likelyMisreads(compiled).map(({ line, probability }) => [line, probability]));
  const offGrid = new Set(offGridReadings(session, find).map(({ line }) => line));
  const beyond = new Set(beyondRangeReadings(session, find).map(({ line }) => line));
  return countedReadings(session).flatMap((reading): readonly Suspect[] => {
    const { line } = reading;
    const probability = misread.get(line);
    const why = [
      ...(probability === undefined
        ? []
        : [`Most likely misread (probability ${roundTo(100 * probability, probability > 0.995 ? 1 : 0)} %).`]),
      ...(offGrid.has(line)
        ? ['A stamp is off the grid of refreshes of the timer on which the others of the clip lie.']
        : []),
      ...farFrom(reading, beyond.has(line), compiled),
    ];
    return why.length === 0 ? [] : [{ line, why, suits: suitsOf(reading, session, find) }];
  });
}

/** How far a reading is from its neighbours, where no phase can put it there. */
function farFrom(
  reading: CountedReading,
  isBeyond: boolean,
  { session, find }: Pick<SessionFigures, 'session' | 'find'>,
): readonly string[] {
  const counted = countedReadings(session);
  const run = counted.filter((other) => other.run === reading.run && other !== reading);
  const before = run.findLast((other) => other.line < reading.line);
  const rangeMs = readingRangeMs(chainOf(session, find), session.method, session.resolutionMs ?? 0);
  const isFirstPair = run.length === 1 && before !== undefined;
  const neighbourMs = isBeyond ? medianOf(run.map(({ latencyMs }) => latencyMs)) : before?.latencyMs;
  if (neighbourMs === undefined || !(isBeyond || isFirstPair)) return [];
  const offMs = Math.abs(reading.latencyMs - neighbourMs);
  if (!isBeyond && offMs <= rangeMs) return [];
  const timer = find.rig(session.rig).sourceTimer;
  const jumped =
    timer === undefined ? '' : ` (${roundTo(offMs / intervalMs(timer.refresh), 1)} refreshes of the timer)`;
  const from = isBeyond ? 'the middle of its clip' : 'the reading before it';
  return [
    `${describeSignificant(reading.latencyMs, 4, 'ms')} is ${describeSignificant(offMs, 3, 'ms')}${jumped} from ${from}; the rates allow ${describeSignificant(rangeMs, 3, 'ms')} between any two.`,
  ];
}

/**
 * One digit changed such that the reading keeps to the range, the grid and the order of its clip; nearest to the others
 * first.
 */
function suitsOf(reading: CountedReading, session: Session, find: Lookup): readonly string[] {
  const others = countedReadings(session).filter(({ line }) => line !== reading.line);
  const run = others.filter((other) => other.run === reading.run);
  const latencies = (run.length > 0 ? run : others).map(({ latencyMs }) => latencyMs);
  if (latencies.length === 0) return [];
  const middle = medianOf(latencies);
  const rangeMs = readingRangeMs(chainOf(session, find), session.method, session.resolutionMs ?? 0);
  const [low, high] = [Math.max(...latencies) - rangeMs, Math.min(...latencies) + rangeMs];
  const distance = ({ latencyMs = Infinity }: Reading): number => Math.abs(latencyMs - middle);
  return digitVariants(reading)
    .filter(({ reading: { latencyMs = -1 } }) => latencyMs >= low && latencyMs <= high)
    .filter(({ reading: other }) => isInOrder(other, run))
    .toSorted((a, b) => distance(a.reading) - distance(b.reading))
    .filter(({ reading: other }) => !offGridReadings(withReading(session, other), find).some(isAt(reading.line)))
    .slice(0, SHOWN_SUITS)
    .map(({ text }) => text);
}

function isInOrder({ line, sourceMs }: Reading, run: readonly CountedReading[]): boolean {
  if (sourceMs === undefined) return true;
  return run.every((other) => other.sourceMs === undefined || other.line < line === other.sourceMs < sourceMs);
}

function withReading(session: Session, reading: Reading): Session {
  return { ...session, readings: session.readings.map((other) => (other.line === reading.line ? reading : other)) };
}

function isAt(line: number): (reading: Reading) => boolean {
  return (reading) => reading.line === line;
}
