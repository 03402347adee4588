/** Which sessions are alike in everything but one thing: the rate, the day, the firmware, the chain. */
import type { Bench, Session } from '../model/bench.ts';
import type { Lookup } from './lookup.ts';

/** What sessions may differ in and still be of one group. */
export interface Apart {
  readonly rate?: boolean;
  readonly firmware?: boolean;
}

/**
 * The name of a session's configuration, for ids: body, firmware where one is stated, chain, levels in the order of the
 * settings: `vennick-q4/1.40/balcony/uhd-59.94-off-0-off-auto-free`. It depends on that session's files alone, so that
 * an id stays what it is when other sessions join.
 */
export function configurationId(session: Session, bench: Bench, find: Lookup, apart: Apart = {}): string {
  return [
    session.body,
    ...(apart.firmware ? [] : [session.firmware && escaped(session.firmware)]),
    chainName(session, find),
    levelsOf(session, bench, apart),
  ]
    .filter(Boolean)
    .join('/');
}

/**
 * The same without the chain: the body as it was set, wherever its picture went:
 * `vennick-q4/1.40/uhd-59.94-off-0-off-auto-free`.
 */
export function conditionId(session: Session, bench: Bench, apart: Apart = {}): string {
  return [
    session.body,
    ...(apart.firmware ? [] : [session.firmware && escaped(session.firmware)]),
    levelsOf(session, bench, apart),
  ]
    .filter(Boolean)
    .join('/');
}

/** Sessions by group, each group and the list in the order given. */
export function groupBy(
  sessions: readonly Session[],
  nameOf: (session: Session) => string,
): ReadonlyMap<string, readonly Session[]> {
  return Map.groupBy(sessions, nameOf);
}

/** `balcony`; what departs from the rig's own chain, and a method other than two timers, is added: `pit+radio-pair`. */
function chainName({ rig, links, display, method }: Session, find: Lookup): string {
  const own = find.rig(rig);
  return [
    rig,
    ...(links.join() === own.links.join() ? [] : links.length === 0 ? ['no-link'] : links),
    ...(display === own.display ? [] : [display]),
    ...(method === 'two-timers' ? [] : [method]),
  ].join('+');
}

function levelsOf({ settings }: Session, bench: Bench, apart: Apart): string {
  return bench.settings
    .filter(({ id }) => !(apart.rate && id === 'rate'))
    .map(({ id }) => (settings[id] === undefined ? '_' : escapedLevel(settings[id])))
    .join('-');
}

/** Injective: characters that mean something in an id, or would not survive in an address, as `~2b~` (hexadecimal). */
function escaped(text: string): string {
  return text.replaceAll(/[^\w.:-]/gu, (char) => `~${(char.codePointAt(0) ?? 0).toString(16)}~`);
}

/** Levels are joined by hyphens, and `_` stands for one that was not stated, so that neither may come from a level. */
function escapedLevel(level: string): string {
  return escaped(level).replaceAll('-', '~2d~').replace(/^_$/, '~5f~');
}
