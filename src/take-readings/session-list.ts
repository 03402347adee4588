/** Every session there is, planned ones first in their drawn order; and what a new one can be made of. */
import type { Bench, DisplayPair, PlannedPair, PlannedSession, Session } from '../model/bench.ts';
import { typedPairId, parseSessions, readSessions } from '../ingest/read-session.ts';
import { readPosition } from '../planning/render-session.ts';
import { describeLevel } from '../register/level-words.ts';
import { lookup } from '../register/lookup.ts';
import { plural } from '../register/provenance.ts';
import { isKnownPair } from './pair-state.ts';

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
  const pairs = (all: readonly (PlannedPair | DisplayPair)[]): readonly ListedSession[] =>
    all.filter((one) => isKnownPair(one, bench)).map((one) => listPair(one, bench));
  const sessions = (all: readonly (PlannedSession | Session)[]): readonly ListedSession[] =>
    all.filter((one) => isKnown(one, bench)).map((one) => list(one, bench, position));
  const listed = [
    ...sessions(planned),
    ...pairs(bench.plannedPairs),
    ...sessions(measured),
    ...pairs(bench.displayPairs),
  ];
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

function listPair(one: PlannedPair | DisplayPair, bench: Bench): ListedSession {
  const find = lookup(bench);
  const isPlanned = !('readings' in one);
  return {
    id: typedPairId(one),
    planned: isPlanned,
    title: `${find.display(one.display).name} against ${find.display(one.against).name}`,
    says: isPlanned ? 'planned, two displays' : `${one.date}, ${plural(one.readings.length, 'reading')}, two displays`,
  };
}

function isKnown({ body, rig }: PlannedSession | Session, bench: Bench): boolean {
  return bench.bodies.some(({ id }) => id === body) && bench.rigs.some(({ id }) => id === rig);
}

/** Where no timer was written yet. */
const FIRST_STAMP = '00:00.000';

/** A time as the timer of a rig was written last. */
export async function stampExample(root: string, rig: string | undefined): Promise<string> {
  if (rig === undefined) return FIRST_STAMP;
  const read = await readSessions(root);
  const bench = read && parseSessions(read).bench;
  const known = bench?.sessions.filter((session) => session.rig === rig && session.method === 'two-timers') ?? [];
  const stamps = known.flatMap(({ readings }) => readings.flatMap(({ cells }) => cells['source'] || []));
  return stamps.at(-1) ?? FIRST_STAMP;
}
