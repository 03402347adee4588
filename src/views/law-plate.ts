import type { Session } from '../model/bench.ts';
import { labelSessions } from '../register/labels.ts';
import type { Published } from '../register/published.ts';
import type { ConfigurationLaw } from '../register/rate-law/rate-laws.ts';
import type { Figure } from '../register/register.ts';
import type { Sentence } from '../register/sentence.ts';
import { describeLaw } from './rate-law-words.ts';

export interface LawPlate {
  readonly law: ConfigurationLaw;
  readonly sentence: Sentence;
  /** The sessions behind the line; none where there is no line. */
  readonly rows: readonly LawRow[];
  /** What all of them share. */
  readonly shared: string;
  /** What no rate changes, and frame intervals on top; absent where there is no line. */
  readonly line: { readonly fixed: Figure; readonly frames: Figure } | undefined;
}

export interface LawRow {
  readonly session: Session;
  readonly label: string;
  readonly total: Figure | undefined;
  readonly frames: Figure | undefined;
}

/** What is said and listed of one rate law. */
export function lawPlate({ bench, find, figure }: Published, law: ConfigurationLaw): LawPlate {
  const labels = labelSessions(bench, law.sessions);
  const [fixed, frames] = [figure(`rate-law-fixed/${law.name}`), figure(`rate-law-frames/${law.name}`)];
  const sessions = law.law.kind === 'rate-law' ? law.sessions : [];
  return {
    law,
    sentence: describeLaw(law, figure, find),
    rows: sessions.map((session) => ({
      session,
      label: labels.of.get(session.id) ?? session.id,
      total: figure(`total/${session.id}`),
      frames: figure(`frames/${session.id}`),
    })),
    shared: labels.shared,
    line: law.law.kind === 'rate-law' && fixed && frames ? { fixed, frames } : undefined,
  };
}

/** Every figure whose text stands on the plate. */
export function figuresOfPlate({ sentence, rows, line }: LawPlate): readonly Figure[] {
  return [
    ...figuresIn(sentence),
    ...rows.flatMap(({ total, frames }) => [total ?? [], frames ?? []].flat()),
    ...(line === undefined ? [] : [line.fixed, line.frames]),
  ];
}

export function figuresIn(sentence: Sentence): readonly Figure[] {
  return sentence.filter((piece) => typeof piece !== 'string');
}
