import type { Design } from '../analysis/precision.ts';
import type { Bench, MethodId, Session } from '../model/bench.ts';
import type { Rate } from '../model/rate.ts';

export interface ConditionToMeasure {
  /** Level by setting. */
  readonly settings: Readonly<Record<string, string>>;
  readonly rate: Rate;
}

export interface NewSession {
  readonly id: string;
  readonly body: string;
  readonly rig: string;
  readonly method: MethodId;
  readonly condition: ConditionToMeasure;
  readonly plan: Design;
  /** 1-based, in the order in which they are to be measured. */
  readonly position: number;
  readonly of: number;
  /** Ids of settings that nobody has stated; none where absent. */
  readonly unstated?: readonly string[];
}

/**
 * An id for a session that says what it is of and is not taken: body, frame rate, then the levels that are not
 * this bench's usual ones, then a letter: `fenn-3-25-stabiliser-on-a`.
 */
export function newSessionId(
  body: string,
  { settings }: ConditionToMeasure,
  bench: Bench,
  taken: ReadonlySet<string>,
): string {
  const levels = bench.settings.flatMap(({ id }) => {
    const level = settings[id];
    if (level === undefined || id === 'rate' || level === usualLevel(bench.sessions, id)) return [];
    return [/^(?:[a-z]{1,3}|\d+)$/.test(level) ? `${id}-${level}` : level];
  });
  const stem = [body, settings['rate'] ?? '', ...levels]
    .join('-')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/-$/, '');
  for (let number = 0; ; number += 1) {
    const id = `${stem}-${letters(number)}`;
    if (
      !taken.has(id) &&
      !bench.sessions.some((session) => session.id === id) &&
      !bench.planned.some((session) => session.id === id)
    )
      return id;
  }
}

/** The level that most of these sessions have; undefined where none states the setting. */
export function usualLevel(sessions: readonly Session[], setting: string): string | undefined {
  const stated = sessions.flatMap(({ settings }) => settings[setting] ?? []);
  const groups = [...Map.groupBy(stated, (level) => level)];
  return groups.sort(([, a], [, b]) => b.length - a.length)[0]?.[0];
}

/** a … z, aa … */
function letters(number: number): string {
  const last = String.fromCharCode(97 + (number % 26));
  return number < 26 ? last : letters(Math.floor(number / 26) - 1) + last;
}
