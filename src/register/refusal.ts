/**
 * What the analysis refuses of a session, as a problem of that session's file: the row that explains it, where one
 * does.
 */
import { medianOf } from '../analysis/summary.ts';
import type { Reading, Session } from '../model/bench.ts';
import type { Problem } from '../model/problem.ts';
import { digitVariants } from './digit-variants.ts';
import type { Lookup } from './lookup.ts';
import type { Estimator } from './session-figures.ts';
import { countedReadings, sessionInput } from './session-input.ts';

/** Rows that are tried, the most unusual first; a session may hold a million. */
const TRIED = 40;
/** Other digits that are tried in the row that explains a refusal. */
const SHOWN_FITS = 2;

/** The problem of a session for which `estimator` threw this. */
export function refusalOf(session: Session, find: Lookup, estimator: Estimator, error: unknown): Problem {
  const file = session.readingsFile.path;
  const found = wordsOf(error);
  const row = rowThatExplains(session, find, estimator);
  if (row === undefined) return { code: 'not-estimable', file, found };
  const fits = digitsThatFit(session, row, find, estimator);
  return {
    code: 'not-estimable',
    file,
    line: row.line,
    found,
    expected: [
      'Without this reading the others can be analysed',
      fits.length === 0 ? '' : `, and it would fit as ${fits.join(' or ')}`,
      ': look at the film again, correct it, or say under exclude why it does not count',
    ].join(''),
  };
}

/**
 * One line of what was thrown; a fault of the machine (its stack, a length that no array has) says so little as to be
 * left out.
 */
export function wordsOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return /call stack|array length|allocation/i.test(text) ? 'the numbers are out of all proportion' : text;
}

/** The first reading, from the most unusual on, without which the session can be estimated. */
function rowThatExplains(session: Session, find: Lookup, estimator: Estimator): Reading | undefined {
  const counted = countedReadings(session);
  if (counted.length < 3) return undefined;
  const middle = medianOf(counted.map(({ latencyMs }) => latencyMs));
  return counted
    .toSorted((a, b) => Math.abs(b.latencyMs - middle) - Math.abs(a.latencyMs - middle))
    .slice(0, TRIED)
    .find((reading) => isEstimable(without(session, reading), find, estimator));
}

/** The cells of a row with one digit changed such that its latency comes nearest to the others'. */
function digitsThatFit(session: Session, row: Reading, find: Lookup, estimator: Estimator): readonly string[] {
  const others = countedReadings(session).filter(({ line }) => line !== row.line);
  const middle = medianOf(others.map(({ latencyMs }) => latencyMs));
  return digitVariants(row)
    .toSorted((a, b) => Math.abs((a.reading.latencyMs ?? 0) - middle) - Math.abs((b.reading.latencyMs ?? 0) - middle))
    .slice(0, TRIED / 4)
    .filter(({ reading }) => isEstimable(replaced(session, row, reading), find, estimator))
    .slice(0, SHOWN_FITS)
    .map(({ text }) => text);
}

function without(session: Session, { line }: Reading): Session {
  return { ...session, readings: session.readings.filter((reading) => reading.line !== line) };
}

function replaced(session: Session, { line }: Reading, other: Reading): Session {
  return { ...session, readings: session.readings.map((reading) => (reading.line === line ? other : reading)) };
}

function isEstimable(session: Session, find: Lookup, estimator: Estimator): boolean {
  try {
    return Number.isFinite(estimator(sessionInput(session, find)).value);
  } catch {
    return false;
  }
}
