import type { BudgetedValue } from '../../analysis/components.ts';
import { findRateFloor, type RateFloor } from '../../analysis/rate-floor.ts';
import { estimateRateLaw, type NoRateLaw, type RateLaw, type RatePoint } from '../../analysis/rate-law.ts';
import type { Bench, Session } from '../../model/bench.ts';
import { intervalMs, rateKey } from '../../model/rate.ts';
import { configurationId, groupBy } from '../configuration.ts';
import { weighed } from '../split-budget.ts';
import type { Compilation } from '../compilation.ts';
import { nameConfigurations } from '../name-configurations.ts';
import { inBenchOrder } from '../select.ts';

/** The rate law of one configuration: one body, rig and chain, all settings alike but the rate. */
export interface ConfigurationLaw {
  /** `vennick-q4/1.40/balcony/uhd-off-0-off-auto-free` */
  readonly name: string;
  readonly body: string;
  /** What sets it apart from the body's other configurations with a law: `UHD 3840 × 2160`. */
  readonly subject: string;
  /** In bench order: slowest rate first. */
  readonly sessions: readonly Session[];
  /** The line; where there is a floor, through the rates that are slower than it. */
  readonly law: RateLaw | NoRateLaw;
  /** One line through all rates, which is the same where there is no floor. */
  readonly straight: RateLaw | NoRateLaw;
  readonly floor: RateFloor;
}

/** Every configuration with its law, or with the reason why it has none; in bench order. */
export function findRateLaws({ bench, find, budgetOf }: Compilation): readonly ConfigurationLaw[] {
  const groups = [
    ...groupBy(inBenchOrder(bench, bench.sessions), (session) => configurationId(session, bench, find, { rate: true })),
  ];
  const found = groups.map(([name, sessions]) => ({
    name,
    body: sessions[0]?.body ?? '',
    sessions,
    ...estimate(sessions, budgetOf),
  }));
  return found.map((one) => ({ ...one, subject: subjectOf(one, found, bench) }));
}

/** How many different rates a configuration was measured at. */
export function countRates(sessions: readonly Session[]): number {
  return new Set(sessions.map(({ rate }) => rateKey(rate))).size;
}

function estimate(
  sessions: readonly Session[],
  budgetOf: (session: string) => BudgetedValue,
): Pick<ConfigurationLaw, 'law' | 'straight' | 'floor'> {
  const points = sessions.map(({ id, rate }): RatePoint => {
    const budget = budgetOf(id);
    return { intervalMs: intervalMs(rate), totalMs: budget.value, ...weighed(budget) };
  });
  const straight = estimateRateLaw(points);
  const floor = findRateFloor(points);
  if (floor.kind !== 'floor') return { law: straight, straight, floor };
  // Written so that the slowest rate at the floor does not pass for slower than itself by rounding.
  const slower = points.filter((point) => point.intervalMs > floor.enoughIntervalMs * (1 + 1e-9));
  return { law: estimateRateLaw(slower), straight, floor };
}

type Found = Pick<ConfigurationLaw, 'name' | 'body' | 'sessions'>;

function subjectOf(one: Found, all: readonly Found[], bench: Bench): string {
  const peers = all.filter(
    ({ body, sessions, name }) => body === one.body && (name === one.name || countRates(sessions) > 1),
  );
  const [subject = ''] = nameConfigurations(
    bench,
    [one, ...peers.filter(({ name }) => name !== one.name)].flatMap(({ sessions }) => sessions[0] ?? []),
    { rate: false },
  );
  return subject;
}
