/** Readings that stand in the files of two sessions. */
import { greatest } from 'd3-array';
import type { Bench, Session } from '../../../model/bench.ts';
import type { FoundOfSession } from '../rule.ts';

/** Pairs of stamps that two sessions may have in common by chance. */
const COMMON_ROWS = 3;
/** Readings in a row that two clips hardly share by chance, where each takes one of a few values. */
const COMMON_READINGS = 12;

/** Neither the same pairs of stamps nor the same readings in one order come from two films. */
export function copiedReadings({ sessions }: Bench): readonly FoundOfSession[] {
  const byRow = new Map<string, Session>();
  const bySequence = new Map<string, Session>();
  return sessions.flatMap((session) => {
    const rows = rowKeys(session);
    const [earlier, common] = mostCommon(session, rows, byRow);
    const [alike] = mostCommon(session, sequenceKeys(session), bySequence);
    if (earlier !== undefined && common >= Math.min(COMMON_ROWS, rows.length))
      return [copyOf(earlier, session, `${common} rows are the same`)];
    return alike === undefined ? [] : [copyOf(alike, session, 'the latencies are the same, in the same order')];
  });
}

function copyOf({ readingsFile }: Session, { id }: Session, what: string): FoundOfSession {
  return {
    rule: 'copied-readings',
    severity: 'warning',
    session: id,
    message: `Its readings are those of ${readingsFile.path} too: ${what}.`,
    hint: 'Two sessions never give the same readings: put the file that belongs here in its place, or remove the session.',
  };
}

/** The earlier session that shares most of these keys, and how many; keys that are new become this one's. */
function mostCommon(
  session: Session,
  keys: readonly string[],
  first: Map<string, Session>,
): readonly [Session | undefined, number] {
  const common = new Map<Session, number>();
  for (const key of new Set(keys)) {
    const earlier = first.get(key);
    if (earlier === undefined) first.set(key, session);
    else if (earlier !== session) common.set(earlier, (common.get(earlier) ?? 0) + 1);
  }
  return greatest([...common], ([, rows]) => rows) ?? [undefined, 0];
}

/** Stamps, row by row. */
function rowKeys({ readings }: Session): readonly string[] {
  return readings.flatMap(({ sourceMs, shownMs }) =>
    sourceMs === undefined || shownMs === undefined ? [] : [`${sourceMs} ${shownMs}`],
  );
}

/** Latencies in their order, clip by clip where one has enough of them, and of the whole file. */
function sequenceKeys({ method, readings }: Session): readonly string[] {
  const clips = [...Map.groupBy(readings, ({ run }) => run).values()];
  const long = clips.filter(({ length }) => length >= COMMON_READINGS);
  const sequences = readings.length >= COMMON_READINGS || method !== 'two-timers' ? [readings, ...long] : long;
  return sequences.map((rows) => `${method} ${rows.map(({ latencyMs = '' }) => latencyMs).join()}`);
}
