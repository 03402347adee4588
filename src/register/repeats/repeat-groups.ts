/** Sessions that repeat each other on different days, and those that differ in firmware alone. */
import type { Bench, Session } from '../../model/bench.ts';
import { configurationId, groupBy } from '../configuration.ts';
import type { Lookup } from '../lookup.ts';
import { inBenchOrder } from '../select.ts';

export interface RepeatGroup {
  /** `vennick-q4/1.40/balcony/uhd-25-off-0-off-auto-free` */
  readonly name: string;
  /** By date; alike in body, firmware, settings, rig, chain and method. */
  readonly sessions: readonly Session[];
}

/** Groups with sessions on two days or more: what varies from day to day needs days. */
export function findRepeats(bench: Bench, find: Lookup): readonly RepeatGroup[] {
  return groups(bench, (session) => configurationId(session, bench, find)).filter(
    ({ sessions }) => new Set(sessions.map(({ date }) => date)).size > 1,
  );
}

export interface FirmwareChange {
  /** `dunmere-30/balcony/uhd-25-off-0-off-auto-free/5.1/5.3` */
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly earlier: readonly Session[];
  readonly later: readonly Session[];
}

/** Each firmware of a body against the one measured before it, alike in everything else. */
export function findFirmwareChanges(bench: Bench, find: Lookup): readonly FirmwareChange[] {
  const stated = bench.sessions.filter(({ firmware }) => firmware !== undefined);
  return groups({ ...bench, sessions: stated }, (session) =>
    configurationId(session, bench, find, { firmware: true }),
  ).flatMap(({ name, sessions }) => {
    const versions = [...Map.groupBy(sessions, ({ firmware }) => firmware ?? '')];
    return versions.slice(1).map(([to, later], index): FirmwareChange => {
      const [from, earlier] = versions[index] ?? ['', []];
      return { name: `${name}/${from}/${to}`, from, to, earlier, later };
    });
  });
}

/** The sessions of a body, by date. */
export function historyOf(bench: Bench, body: string): readonly Session[] {
  return byDate(inBenchOrder(bench, bench.sessions).filter((session) => session.body === body));
}

function groups(bench: Bench, nameOf: (session: Session) => string): readonly RepeatGroup[] {
  return [...groupBy(inBenchOrder(bench, bench.sessions), nameOf)].map(([name, sessions]) => ({
    name,
    sessions: byDate(sessions),
  }));
}

function byDate(sessions: readonly Session[]): readonly Session[] {
  return sessions.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
}
