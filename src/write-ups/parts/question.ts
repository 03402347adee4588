/** Comparisons as write-ups ask for them. */
import { parseDurationMs } from '../../ingest/quantities.ts';
import { questionId, type Family, type SessionPair } from '../../register/comparisons/family.ts';

/** A pair with the margin that its author wrote; without one where it is none, which the check of write-ups reports. */
export function asked(pair: SessionPair, margin: string | undefined): SessionPair {
  const marginMs = margin === undefined ? undefined : parseDurationMs(margin);
  return marginMs === undefined || marginMs === 0 ? pair : { ...pair, marginMs };
}

/**
 * The same pair as its family asks for it: where an author states a margin once, all that the write-up says of the
 * pair goes by it.
 */
export function stated(family: Family | undefined, pair: SessionPair): SessionPair {
  const marginMs = family?.pairs.find(
    (each) =>
      each.a === pair.a && each.b === pair.b && (pair.marginMs === undefined || questionId(each) === questionId(pair)),
  )?.marginMs;
  return marginMs === undefined ? pair : { ...pair, marginMs };
}

/**
 * Each question once. One that is asked with a margin somewhere is not asked again without. Margins that print alike
 * are one question, and the smallest of them is its margin: `1/240 s` and `4.167 ms`.
 */
export function distinctQuestions(pairs: readonly SessionPair[]): readonly SessionPair[] {
  const withMargin = new Set(
    pairs.filter(({ marginMs }) => marginMs !== undefined).map(({ a, b }) => questionId({ a, b })),
  );
  const byQuestion = new Map<string, SessionPair>();
  for (const pair of pairs) {
    const id = questionId(pair);
    if (pair.marginMs === undefined && withMargin.has(id)) continue;
    const known = byQuestion.get(id);
    if (known?.marginMs === undefined || pair.marginMs === undefined) byQuestion.set(id, known ?? pair);
    else byQuestion.set(id, { ...known, marginMs: Math.min(known.marginMs, pair.marginMs) });
  }
  return [...byQuestion.values()];
}
