import type { Bench, Session } from '../../model/bench.ts';
import type { Family, SessionPair } from './family.ts';

/** Which comparisons a table or chart shows: by list; by setting; or between bodies, by what was set. */
export interface PairQuery {
  /** `[["a", "b"]]`: a less b. */
  readonly pairs?: readonly (readonly [string, string])[] | undefined;
  /** Pairs that differ in this setting only. */
  readonly setting?: string | undefined;
  readonly body?: string | undefined;
  readonly rig?: string | undefined;
  /** Level by setting; without `setting`, the bodies measured there are compared. */
  readonly where?: Readonly<Record<string, string>> | undefined;
}

/** From the families of settings and of bodies, in their order. A malformed query selects nothing. */
export function selectPairs(
  bench: Bench,
  families: readonly Family[],
  { pairs, setting, body, rig, where }: PairQuery,
): readonly SessionPair[] {
  if (pairs !== undefined) return Array.isArray(pairs) ? pairs.filter(isPairOfTexts).map(([a, b]) => ({ a, b })) : [];
  if (setting === undefined && where === undefined) return [];
  const byId = new Map(bench.sessions.map((session) => [session.id, session]));
  const matches = (id: string, step: SessionPair['step']): boolean => {
    const session: Session | undefined = byId.get(id);
    return (
      session !== undefined &&
      (body === undefined || session.body === body || step === undefined) &&
      (rig === undefined || session.rig === rig) &&
      Object.entries(where ?? {}).every(([of, level]) => session.settings[of] === level)
    );
  };
  return families
    .flatMap((family) => family.pairs)
    .filter(({ step }) => step?.setting === setting)
    .filter(({ a, b, step }) => matches(a, step) && matches(b, step))
    .filter(
      ({ a, b, step }) =>
        step !== undefined || body === undefined || byId.get(a)?.body === body || byId.get(b)?.body === body,
    );
}

function isPairOfTexts(pair: unknown): pair is readonly [string, string] {
  return Array.isArray(pair) && pair.length === 2 && pair.every((id) => typeof id === 'string');
}
