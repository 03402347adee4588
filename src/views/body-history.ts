import type { Bench, Session } from '../model/bench.ts';
import { labelSessions } from '../register/labels.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { findFirmwareChanges, findRepeats, historyOf } from '../register/repeats/repeat-groups.ts';
import type { Sentence } from '../register/sentence.ts';
import { figuresIn } from './law-plate.ts';
import { describeFirmwareChange, describeRepeats } from './repeat-words.ts';

/** A body's sessions by date; what repeats on other days say, and what a change of firmware did. */
export interface BodyHistory {
  readonly bench: Bench;
  readonly name: string;
  readonly repeats: readonly {
    readonly sentence: Sentence;
    readonly totals: readonly Figure[];
    readonly sessions: readonly Session[];
  }[];
  readonly changes: readonly Sentence[];
  readonly rows: readonly {
    readonly session: Session;
    readonly label: string;
    readonly total: Figure | undefined;
  }[];
  /** What all sessions share. */
  readonly shared: string;
}

export function bodyHistory({ bench, find, figure }: Published, body: string): BodyHistory {
  const sessions = historyOf(bench, body);
  const labels = labelSessions(bench, sessions);
  return {
    bench,
    name: find.body(body).name,
    repeats: findRepeats(bench, find)
      .filter((group) => group.sessions[0]?.body === body)
      .map((group) => ({
        sentence: describeRepeats(group, figure),
        totals: group.sessions.flatMap(({ id }) => figure(`total/${id}`) ?? []),
        sessions: group.sessions,
      })),
    changes: findFirmwareChanges(bench, find)
      .filter(({ later }) => later[0]?.body === body)
      .map((change) => describeFirmwareChange(change, figure)),
    rows: sessions.map((session) => ({
      session,
      label: labels.of.get(session.id) ?? session.id,
      total: figure(`total/${session.id}`),
    })),
    shared: labels.shared,
  };
}

/** Every figure whose text stands in the history. */
export function figuresOfHistory({ repeats, changes, rows }: BodyHistory): readonly Figure[] {
  return [
    ...repeats.flatMap(({ sentence, totals }) => [...figuresIn(sentence), ...totals]),
    ...changes.flatMap(figuresIn),
    ...rows.flatMap(({ total }) => total ?? []),
  ];
}
