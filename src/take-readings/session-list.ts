/** Every session there is, planned ones first in their drawn order; and what a new one can be made of. */
import type { Bench, PlannedSession, Session } from '../model/bench.ts';
import { parseSessions, readSessions } from '../ingest/read-session.ts';
import { readPosition } from '../planning/render-session.ts';
import { describeLevel } from '../register/level-words.ts';
import { lookup } from '../register/lookup.ts';
import { plural } from '../register/provenance.ts';

export interface ListedSession {
  readonly id: string;
  readonly planned: boolean;
  readonly title: string;
  readonly says: string;
}

export interface Choice {
  readonly id: string;
  readonly label: string;
}

export interface SessionList {
  readonly sessions: readonly ListedSession[];
  readonly bodies: readonly Choice[];
  readonly rigs: readonly Choice[];
  readonly settings: readonly (Choice & { readonly levels: readonly Choice[] })[];
  /** Sessions whose files could not be read so far as to list them. */
  readonly unreadable: readonly string[];
}

export async function listSessions(root: string): Promise<SessionList> {
  const read = await readSessions(root);
  const bench = read && parseSessions(read).bench;
  if (read === undefined || bench === undefined)
    return { sessions: [], bodies: [], rigs: [], settings: [], unreadable: read?.ids ?? [] };
  const fronts = new Map(
    read.sources.sessions.map(({ id, front }) => [
      id,
      front === undefined ? '' : new TextDecoder().decode(front.bytes),
    ]),
  );
  const position = ({ id }: PlannedSession): number => readPosition(fronts.get(id) ?? '')?.position ?? Infinity;
  const planned = bench.planned.toSorted((a, b) => position(a) - position(b) || (a.id < b.id ? -1 : 1));
  const measured = bench.sessions.toSorted((a, b) => (a.date === b.date ? 0 : a.date < b.date ? 1 : -1));
  const listed = [...planned, ...measured]
    .filter((one) => isKnown(one, bench))
    .map((one) => list(one, bench, position));
  return {
    sessions: listed,
    bodies: bench.bodies.map(({ id, name }) => ({ id, label: name })),
    rigs: bench.rigs.map(({ id, name }) => ({ id, label: name })),
    settings: bench.settings.map(({ id, label, levels }) => ({ id, label, levels })),
    unreadable: read.ids.filter((id) => !listed.some((one) => one.id === id)),
  };
}

function list(
  one: PlannedSession | Session,
  bench: Bench,
  position: (planned: PlannedSession) => number,
): ListedSession {
  const find = lookup(bench);
  const levels = bench.settings.flatMap(({ id }) => {
    const level = one.settings[id];
    return level === undefined ? [] : [describeLevel(find, id, level)];
  });
  const isPlanned = !('readings' in one);
  const place = isPlanned ? position(one) : Infinity;
  return {
    id: one.id,
    planned: isPlanned,
    title: `${find.body(one.body).name}: ${levels.join(', ')}`,
    says: isPlanned
      ? `${Number.isFinite(place) ? `planned as number ${place}` : 'planned'}, ${find.rig(one.rig).name}`
      : `${one.date}, ${plural(one.readings.length, 'reading')}, ${find.rig(one.rig).name}`,
  };
}

function isKnown({ body, rig }: PlannedSession | Session, bench: Bench): boolean {
  return bench.bodies.some(({ id }) => id === body) && bench.rigs.some(({ id }) => id === rig);
}

/** A time as the timer of a rig was written last; `00:00.000` where none was yet. */
export async function stampExample(root: string, rig: string): Promise<string> {
  const read = await readSessions(root);
  const bench = read && parseSessions(read).bench;
  const known = bench?.sessions.filter((session) => session.rig === rig && session.method === 'two-timers') ?? [];
  const stamps = known.flatMap(({ readings }) => readings.flatMap(({ cells }) => cells['source'] || []));
  return stamps.at(-1) ?? '00:00.000';
}
