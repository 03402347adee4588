import { labelSessions } from '../register/labels.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { findFirmwareChanges, findRepeats, historyOf } from '../register/repeats/repeat-groups.ts';
import type { Sentence } from '../register/sentence.ts';
import { figureRows, type FigureRows } from './figure-rows.ts';
import { figuresIn } from './law-plate.ts';
import { namedSession, type NamedSession } from './named-session.ts';
import { describeFirmwareChange, describeRepeats } from './repeat-words.ts';

/** A body's sessions by date; what repeats on other days say, and what a change of firmware did. */
export interface BodyHistory {
  readonly name: string;
  readonly repeats: readonly {
    readonly sentence: Sentence;
    readonly totals: FigureRows;
  }[];
  readonly changes: readonly Sentence[];
  readonly rows: readonly {
    readonly session: NamedSession;
    readonly date: string;
    readonly firmware: string | undefined;
    readonly total: Figure | undefined;
  }[];
  /** What all sessions share. */
  readonly shared: string;
}

export function bodyHistory({ bench, find, figure }: Published, body: string): BodyHistory {
  const sessions = historyOf(bench, body);
  const labels = labelSessions(bench, sessions);
  return {
    name: find.body(body).name,
    repeats: findRepeats(bench, find)
      .filter((group) => group.sessions[0]?.body === body)
      .map((group) => ({
        sentence: describeRepeats(group, figure),
        totals: figureRows(
          bench,
          group.sessions.flatMap(({ id }) => figure(`total/${id}`) ?? []),
          group.sessions,
        ),
      })),
    changes: findFirmwareChanges(bench, find)
      .filter(({ later }) => later[0]?.body === body)
      .map((change) => describeFirmwareChange(change, figure)),
    rows: sessions.map(({ id, date, firmware }) => ({
      session: namedSession(bench, id, labels.of.get(id)),
      date,
      firmware,
      total: figure(`total/${id}`),
    })),
    shared: labels.shared,
  };
}

/** Every figure whose text stands in the history. */
export function figuresOfHistory({ repeats, changes, rows }: BodyHistory): readonly Figure[] {
  return [
    ...repeats.flatMap(({ sentence, totals }) => [...figuresIn(sentence), ...totals.rows.map((row) => row.figure)]),
    ...changes.flatMap(figuresIn),
    ...rows.flatMap(({ total }) => total ?? []),
  ];
}
