import { estimateDrift, type Drift } from '../../analysis/drift.ts';
import type { Session } from '../../model/bench.ts';
import { once } from '../../model/once.ts';
import { countedReadings } from '../session-input.ts';
import { describeMeasured } from '../text.ts';
import type { Rule } from './rule.ts';

/** Chance at which a slope like this comes about without any drift. */
const RARE = 0.001;

/** The line along the session, where its slope is too steep for chance. */
export const driftOf: (session: Session) => Drift | undefined = once((session) => {
  const latencies = countedReadings(session).map(({ latencyMs }) => latencyMs);
  const line = estimateDrift(
    latencies.map((_, index) => index),
    latencies,
  );
  return line.kind !== 'drift' || line.p === undefined || line.p > RARE ? undefined : line;
});

/** Latency that creeps along the session: a body that warms up, or slows down with heat. */
export const drift: Rule = ({ session }) => {
  const line = driftOf(session);
  if (line === undefined) return undefined;
  const along = countedReadings(session).length - 1;
  const change = describeMeasured(
    line.slope * along,
    ((line.slopeInterval.high - line.slopeInterval.low) / 2) * along,
    'ms',
  );
  return {
    severity: 'caution',
    message: `Latency drifts along the session: ${change} from the first reading to the last (95 %).`,
    hint: 'Let the body warm up before the first reading, keep it cool, and look at the readings in the order taken.',
  };
};
