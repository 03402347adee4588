/** What parts that set one session against another have in common. */
import { differenceId, ratioId, verdictId, type SessionPair } from '../../register/comparisons/family.ts';
import type { Figure } from '../../register/register.ts';
import { COMMON } from './common.ts';
import type { Answering, InProperty } from './definition.ts';
import { asked, stated } from './question.ts';

export const TWO_SESSIONS = {
  of: { ...COMMON.session, means: 'the session that is compared' },
  than: { ...COMMON.session, means: 'the session it is compared with' },
  margin: COMMON.margin,
} as const;

export interface TwoSessions {
  readonly of: string;
  readonly than: string;
  readonly margin?: string | undefined;
}

export const ofTwo = ({ of, than, margin }: TwoSessions): SessionPair => asked({ a: of, b: than }, margin);

/** A session is not compared with itself. */
export function checkTwo({ of, than }: Readonly<Record<string, unknown>>): readonly InProperty[] {
  return of !== undefined && of === than ? [{ code: 'same-session', key: 'than', found: String(than) }] : [];
}

export interface ComparedTwo {
  readonly difference: Figure;
  /** Absent where there is none: over a total of zero, or without any scatter. */
  readonly ratio: Figure | undefined;
  readonly verdict: Figure;
}

/** What the write-up's family says of two sessions. */
export function comparedTwo(props: TwoSessions, { site, family }: Answering): ComparedTwo {
  const pair = stated(family, ofTwo(props));
  const [difference, verdict] = [site.figure(differenceId(pair)), site.figure(verdictId(family?.id ?? '', pair))];
  if (difference === undefined || verdict === undefined)
    throw new Error(
      `nothing compares '${pair.a}' and '${pair.b}': comparisons in write-ups are collected before pages are drawn, so their properties must be written out as plain values`,
    );
  return { difference, ratio: site.figure(ratioId(pair)), verdict };
}
