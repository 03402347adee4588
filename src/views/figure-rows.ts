import type { Bench, Session } from '../model/bench.ts';
import type { RankedFigure } from '../register/comparisons/ranking.ts';
import { labelSessions } from '../register/labels.ts';
import { sessionPath } from '../register/paths.ts';
import { describeBasis } from '../register/provenance.ts';
import type { Figure } from '../register/register.ts';

export interface FigureRow {
  /** What sets its session apart, or what it is where it is of several. */
  readonly label: string;
  /** The page of its session. */
  readonly path: string | undefined;
  readonly figure: Figure;
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
  const isJoint = figures.some(({ of }) => of['session'] === undefined);
  return {
    rows: figures.map((figure) => {
      const { session = '', than } = figure.of;
      const isOwn = than === undefined && session !== '';
      return {
        label: isOwn ? (labels.of.get(session) ?? session) : figure.label,
        path: isOwn ? sessionPath(session) : undefined,
        figure,
        basis: describeBasis(figure),
      };
    }),
    shared: labels.shared,
    headings: isJoint ? { row: 'Figure', value: 'Value' } : { row: 'Session', value: figures[0]?.label ?? 'Figure' },
  };
}

export interface RankedRow {
  readonly label: string;
  readonly path: string;
  readonly figure: Figure;
  /** `the lowest`, `cannot be told from it`, `higher`. */
  readonly against: string;
}

export interface RankedRows {
  readonly rows: readonly RankedRow[];
  readonly shared: string;
  /** What is ranked: `Total latency`. */
  readonly heading: string;
}

/** Figures of one session each, lowest first. */
export function rankedRows(bench: Bench, ranked: readonly RankedFigure[], sessions: readonly Session[]): RankedRows {
  const labels = labelSessions(bench, sessions);
  return {
    rows: ranked.map(({ figure, tiedWithBest }, index) => {
      const { session = '' } = figure.of;
      return {
        label: labels.of.get(session) ?? session,
        path: sessionPath(session),
        figure,
        against: index === 0 ? 'the lowest' : tiedWithBest ? 'cannot be told from it' : 'higher',
      };
    }),
    shared: labels.shared,
    heading: ranked[0]?.figure.label ?? 'Figure',
  };
}
