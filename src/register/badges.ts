/**
 * What sets a session apart from an ordinary one: said by name wherever it is shown, and a reason to let another stand
 * in its place.
 */
import { compareText } from '../model/compare-text.ts';
import type { Bench, Session } from '../model/bench.ts';
import { once } from '../model/once.ts';
import { driftOf } from './findings/drift.ts';
import { countedRuns } from './session-input.ts';

/** In the order in which they are said. */
export type Badge = 'cut short' | 'drifting' | 'other firmware' | 'one clip only' | 'repeated later';

/** Whether something went wrong in the session, so that it speaks for nothing by itself. */
export function isFaulty(badges: readonly Badge[]): boolean {
  return badges.includes('cut short') || badges.includes('drifting');
}

/** By session id; none for an ordinary session. */
export const badgesOf: (bench: Bench) => (id: string) => readonly Badge[] = once((bench) => {
  const usual = usualFirmware(bench);
  const own = new Map(bench.sessions.map((session) => [session.id, faultsOf(session, usual.get(session.body))]));
  const groups = Map.groupBy(bench.sessions, sameQuestion);
  const all = new Map(
    [...groups.values()].flatMap((sessions) =>
      sessions.map((session): readonly [string, readonly Badge[]] => {
        const faults = own.get(session.id) ?? [];
        const repeated = sessions.some((other) => other.date >= session.date && own.get(other.id)?.length === 0);
        return [session.id, faults.length > 0 && repeated ? [...faults, 'repeated later'] : faults];
      }),
    ),
  );
  return (id) => all.get(id) ?? [];
});

function faultsOf(session: Session, firmware: string | undefined): readonly Badge[] {
  const badges: readonly (readonly [Badge, boolean])[] = [
    ['cut short', session.cutShort !== undefined],
    ['drifting', driftOf(session) !== undefined],
    ['other firmware', session.firmware !== firmware],
    ['one clip only', countedRuns(session).length === 1],
  ];
  return badges.flatMap(([badge, applies]) => (applies ? [badge] : []));
}

/** By body, the firmware that most of its sessions have; of several, the one measured last. */
function usualFirmware({ sessions }: Bench): ReadonlyMap<string, string | undefined> {
  return new Map(
    [...Map.groupBy(sessions, ({ body }) => body)].map(([body, own]) => {
      const [most] = [...Map.groupBy(own, ({ firmware }) => firmware)].sort(
        ([, x], [, y]) => y.length - x.length || compareText(lastDate(y), lastDate(x)),
      );
      return [body, most?.[0]];
    }),
  );
}

function lastDate(sessions: readonly Session[]): string {
  return (
    sessions
      .map(({ date }) => date)
      .sort(compareText)
      .at(-1) ?? ''
  );
}

/** Equal for sessions that ask the same of the same body, whatever went wrong in one of them. */
function sameQuestion({ body, rig, links, display, method, settings }: Session): string {
  return JSON.stringify([body, rig, links, display, method, Object.entries(settings).sort()]);
}
