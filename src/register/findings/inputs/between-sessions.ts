/** What only shows when sessions are set side by side: copies, settings that one forgot, versions spelt in two ways. */
import type { Bench, Session, Setting } from '../../../model/bench.ts';
import type { Finding } from '../../register.ts';
import type { FoundOfSession } from '../rule.ts';
import { copiedReadings } from './copied-readings.ts';
import { datesApart } from './dates.ts';
import { firmwareFindings } from './firmware.ts';
import { namedOtherwise } from './named-otherwise.ts';
import { nameFindings } from './names.ts';
import { oddRestarts } from './restarts.ts';
import { statedLatencies } from './stated-latency.ts';

/** Every finding between files, in the order of the rules. */
export function betweenSessions(bench: Bench): readonly Finding[] {
  const ofSessions = [
    ...copiedReadings(bench),
    ...notStated(bench),
    ...firmwareFindings(bench),
    ...datesApart(bench),
    ...namedOtherwise(bench),
  ];
  return [
    ...ofSessions.map(({ session, ...found }) => ({ ...found, where: { session } })),
    ...statedLatencies(bench),
    ...oddRestarts(bench),
    ...nameFindings(bench),
  ];
}

/** A setting that a session leaves out takes it out of every comparison that knows that setting. */
function notStated({ settings, sessions }: Bench): readonly FoundOfSession[] {
  return sessions.flatMap((session) => {
    const missing = settings.filter(({ id }) => session.settings[id] === undefined);
    if (missing.length === 0) return [];
    return [
      {
        rule: 'setting-not-stated',
        severity: 'caution' as const,
        session: session.id,
        message: `${session.file.path} does not state ${missing.map(({ label }) => label).join(', ')}${others(sessions, missing)}, so it counts as a condition of its own and takes no part in what is said of that setting.`,
        hint: 'State it under settings if it is known.',
      },
    ];
  });
}

/** How many others do: that one of many does not is most likely forgotten. */
function others(sessions: readonly Session[], missing: readonly Setting[]): string {
  const stating = sessions.filter(({ settings }) => missing.every(({ id }) => settings[id] !== undefined)).length;
  return stating === 0 ? '' : `, as ${stating} of ${sessions.length} sessions do`;
}
