import type { Design } from '../analysis/precision.ts';
import type { Bench, MethodId } from '../model/bench.ts';
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
    if (level === undefined || id === 'rate' || level === usualLevel(bench, id)) return [];
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

/** The level in which most sessions so far have this setting. */
function usualLevel({ sessions }: Bench, setting: string): string | undefined {
  const groups = [...Map.groupBy(sessions, ({ settings }) => settings[setting])];
  return groups.sort(([, a], [, b]) => b.length - a.length)[0]?.[0];
}

/** a … z, aa … */
function letters(number: number): string {
  const last = String.fromCharCode(97 + (number % 26));
  return number < 26 ? last : letters(Math.floor(number / 26) - 1) + last;
}
