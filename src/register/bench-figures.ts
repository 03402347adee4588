import type { Bench, Session } from '../model/bench.ts';
import { KINDS } from './kinds.ts';
import { countAnchor, PATHS } from './paths.ts';
import type { Figure, Subject } from './register.ts';
import { countedReadings } from './session-input.ts';
import { describeCount } from './text.ts';

/** Counts over the whole bench, and per body: `count/sessions`, `count/sessions/vennick-q4`. */
export function benchFigures({ bodies, sessions }: Bench): readonly Figure[] {
  return [
    {
      ...count('Bodies', { count: 'bodies' }, bodies.length, sessions),
      sources: bodies.map(({ file: { path, sha256 } }) => ({ file: path, sha256 })),
    },
    ...sessionCounts(sessions, {}),
    ...bodies.flatMap(({ id }) =>
      sessionCounts(
        sessions.filter(({ body }) => body === id),
        { body: id },
      ),
    ),
  ];
}

/** The ids of all counts of a bench with these bodies. */
export function countIds(bodies: readonly string[]): readonly string[] {
  const counts = ['sessions', 'readings', 'excluded'].map((name) => `count/${name}`);
  return ['count/bodies', ...counts, ...bodies.flatMap((body) => counts.map((id) => `${id}/${body}`))];
}

function sessionCounts(sessions: readonly Session[], of: Subject): readonly Figure[] {
  const { readings, counted } = totals(sessions);
  return [
    count('Sessions', { count: 'sessions', ...of }, sessions.length, sessions),
    count('Readings', { count: 'readings', ...of }, readings, sessions),
    count('Readings excluded', { count: 'excluded', ...of }, readings - counted, sessions),
  ];
}

function count(label: string, of: Subject, value: number, sessions: readonly Session[]): Figure {
  const { readings, counted, runs } = totals(sessions);
  const id = ['count', of['count'], of['body']].filter(Boolean).join('/');
  return {
    id,
    kind: 'count',
    of,
    unit: KINDS.count.unit,
    value,
    readings: counted,
    runs,
    excluded: readings - counted,
    sources: sessions.map(({ readingsFile: { path, sha256 } }) => ({ file: path, sha256 })),
    text: describeCount(value),
    label,
    entry: `${PATHS.data}#${countAnchor(id)}`,
  };
}

function totals(sessions: readonly Session[]): { readings: number; counted: number; runs: number } {
  const sum = (of: (session: Session) => number): number => sessions.reduce((total, session) => total + of(session), 0);
  return {
    readings: sum(({ readings }) => readings.length),
    counted: sum((session) => countedReadings(session).length),
    runs: sum((session) => new Set(countedReadings(session).map(({ run }) => run)).size),
  };
}
