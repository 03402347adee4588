/** What the analysis refuses of a session, as a problem of that session's file: the row that explains it, where one does. */
import { medianOf } from '../analysis/summary.ts';
import type { Reading, Session } from '../model/bench.ts';
import type { Problem } from '../model/problem.ts';
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

/** One line of what was thrown; a fault of the machine (its stack, a length that no array has) says so little as to be left out. */
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
  return variantsOf(row)
    .toSorted((a, b) => Math.abs((a.reading.latencyMs ?? 0) - middle) - Math.abs((b.reading.latencyMs ?? 0) - middle))
    .slice(0, TRIED / 4)
    .filter(({ reading }) => isEstimable(replaced(session, row, reading), find, estimator))
    .slice(0, SHOWN_FITS)
    .map(({ text }) => text);
}

interface Variant {
  readonly text: string;
  readonly reading: Reading;
}

/** Every way to change one digit of a cell: by so many units of its place, the latency changes by as much. */
function variantsOf(row: Reading): readonly Variant[] {
  const { latencyMs = 0 } = row;
  return ['source', 'shown', 'frames', 'latency'].flatMap((column) => {
    const cell = row.cells[column] ?? '';
    const unitMs = column === 'frames' && row.frames ? latencyMs / row.frames : column === 'latency' ? 1 : 1000;
    return [...cell].flatMap((char, at) => {
      if (!/\d/.test(char)) return [];
      const place = placeOf(cell, at) * unitMs;
      return [...'0123456789']
        .filter((digit) => digit !== char)
        .map((digit): Variant => {
          const change = (Number(digit) - Number(char)) * place;
          const moved = latencyMs + (column === 'shown' ? -change : change);
          return {
            text: `${column} ${cell.slice(0, at)}${digit}${cell.slice(at + 1)}`,
            reading: {
              ...row,
              latencyMs: moved,
              ...(row.sourceMs === undefined || column !== 'source' ? {} : { sourceMs: row.sourceMs + change }),
              ...(row.shownMs === undefined || column !== 'shown' ? {} : { shownMs: row.shownMs + change }),
            },
          };
        })
        .filter(({ reading }) => (reading.latencyMs ?? -1) >= 0);
    });
  });
}

/** What one unit of the digit at this place is worth, in the unit of the last part of the cell: 10 for the tens. */
function placeOf(cell: string, at: number): number {
  const whole = cell.split('.')[0] ?? '';
  if (at > whole.length) return 10 ** (whole.length - at);
  const parts = whole.slice(at + 1).split(':');
  const [own = '', ...later] = parts;
  return 10 ** own.length * 60 ** later.length;
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
