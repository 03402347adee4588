/** What makes two sessions comparable: the chain they were taken through, and the condition of the body. */
import type { Session } from '../../model/bench.ts';
import { compareText } from '../../model/compare-text.ts';

/** Equal for sessions through one chain whose readings were taken the same way. */
export function chainKey({ rig, links, display, method }: Session): string {
  return JSON.stringify([rig, links, display, method]);
}

/** Equal for sessions with the same settings. */
export function conditionKey({ settings }: Pick<Session, 'settings'>): string {
  return JSON.stringify(Object.entries(settings).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/**
 * One to one: of candidate pairs, those closest in time first, each session at most once on either side.
 *
 * Repeats of a condition would otherwise be compared crosswise, and one session's error would speak many times.
 */
export function closestInTime<Pair extends { readonly a: Session; readonly b: Session }>(
  candidates: readonly Pair[],
): readonly Pair[] {
  const taken = new Set<string>();
  return candidates
    .map((pair) => ({ pair, days: Math.abs(dayNumber(pair.a.date) - dayNumber(pair.b.date)) }))
    .sort((x, y) => x.days - y.days || compareText(x.pair.a.id, y.pair.a.id) || compareText(x.pair.b.id, y.pair.b.id))
    .flatMap(({ pair }) => {
      if (taken.has(pair.a.id) || taken.has(pair.b.id)) return [];
      taken.add(pair.a.id).add(pair.b.id);
      return [pair];
    });
}

/** Whole days since 1970, of an ISO 8601 calendar date. */
function dayNumber(date: string): number {
  return Date.parse(`${date}T00:00:00Z`) / 86_400_000;
}
