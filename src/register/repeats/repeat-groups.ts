/** Sessions that repeat each other on different days, and those that differ in firmware alone. */
import type { BudgetedValue, NamedComponent } from '../../analysis/components.ts';
import type { Bench, Session } from '../../model/bench.ts';
import { configurationId, groupBy } from '../configuration.ts';
import { splitBudget } from '../split-budget.ts';
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

/**
 * The plain mean of several sessions: each session's own uncertainty counts by its share, what all share stays whole.
 */
export function averageBudget(budgets: readonly BudgetedValue[]): BudgetedValue {
  const share = 1 / budgets.length;
  const shared = new Map<string, NamedComponent>();
  for (const budget of budgets) {
    for (const [key, component] of splitBudget(budget).shared) {
      const before = shared.get(key)?.standardUncertainty ?? 0;
      shared.set(key, { ...component, standardUncertainty: before + share * component.standardUncertainty });
    }
  }
  return {
    value: budgets.reduce((sum, { value }) => sum + share * value, 0),
    components: [
      ...budgets.flatMap((budget) =>
        splitBudget(budget).own.map((component) => ({
          ...component,
          standardUncertainty: share * component.standardUncertainty,
        })),
      ),
      ...shared.values(),
    ],
  };
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
