import type { Bench, Session } from '../model/bench.ts';
import type { RankedFigure } from '../register/comparisons/ranking.ts';
import { labelSessions } from '../register/labels.ts';
import { describeBasis } from '../register/provenance.ts';
import type { Figure } from '../register/register.ts';
import { placeOfBody } from './body-place.ts';
import { namedSession, type NamedSession } from './named-session.ts';

export interface FigureRow {
  /** What sets its session apart, with its badges, or what it is where it is of several. */
  readonly label: string;
  /** Undefined where it is of several, or of none. */
  readonly session: NamedSession | undefined;
  readonly figure: Figure;
  /** Of the body, where it is of one session. */
  readonly place: number | undefined;
  /** `10 readings in 1 run`. */
  readonly basis: string;
}

/** One figure a row, as tables list and charts draw them. */
export interface FigureRows {
  readonly rows: readonly FigureRow[];
  /** What the sessions have in common. */
  readonly shared: string;
  /** `Session`, `Total latency`; figures of several sessions say themselves what they are. */
  readonly headings: { readonly row: string; readonly value: string };
}

export function figureRows(bench: Bench, figures: readonly Figure[], sessions: readonly Session[]): FigureRows {
  const labels = labelSessions(bench, sessions);
  const places = new Map(sessions.map(({ id, body }) => [id, placeOfBody(bench, body)]));
  const isJoint = figures.some(({ of }) => of['session'] === undefined);
  return {
    rows: figures.map((figure) => {
      const { session = '', than } = figure.of;
      const own =
        than === undefined && session !== '' ? namedSession(bench, session, labels.of.get(session)) : undefined;
      return {
        label: own === undefined ? figure.label : drawnName(own),
        session: own,
        figure,
        place: own === undefined ? undefined : places.get(own.id),
        basis: describeBasis(figure),
      };
    }),
    shared: labels.shared,
    headings: isJoint ? { row: 'Figure', value: 'Value' } : { row: 'Session', value: figures[0]?.label ?? 'Figure' },
  };
}

/** `UHD, cut short`. */
function drawnName({ label, badges }: NamedSession): string {
  return [label, ...badges.filter((badge) => !label.toLowerCase().includes(badge))].join(', ');
}

export interface RankedRow {
  readonly session: NamedSession;
  readonly figure: Figure;
  /** `the lowest`, `too close to call`, `higher`. */
  readonly against: string;
}

export interface RankedRows {
  readonly rows: readonly RankedRow[];
  readonly shared: string;
  /** What is ranked: `Total latency`. */
  readonly heading: string;
  /** Sessions that are not ordinary, and were not asked for by name. */
  readonly leftOut: readonly NamedSession[];
}

interface Ranked {
  readonly bench: Bench;
  readonly ranked: readonly RankedFigure[];
  /** Ranked or left out. */
  readonly sessions: readonly Session[];
  /** By id. */
  readonly leftOut: readonly string[];
}

/** Figures of one session each, lowest first. */
export function rankedRows({ bench, ranked, sessions, leftOut }: Ranked): RankedRows {
  const labels = labelSessions(bench, sessions);
  const named = (id: string): NamedSession => namedSession(bench, id, labels.of.get(id));
  return {
    rows: ranked.map(({ figure, tiedWithBest }, index) => {
      return {
        session: named(figure.of['session'] ?? ''),
        figure,
        against: index === 0 ? 'the lowest' : tiedWithBest ? 'too close to call' : 'higher',
      };
    }),
    shared: labels.shared,
    heading: ranked[0]?.figure.label ?? 'Figure',
    leftOut: leftOut.map(named),
  };
}
