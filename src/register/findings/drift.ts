import { estimateDrift } from '../../analysis/drift.ts';
import { countedReadings } from '../session-input.ts';
import { describeMeasured } from '../text.ts';
import type { Rule } from './rule.ts';

/** Chance at which a slope like this comes about without any drift. */
const RARE = 0.001;

/** Latency that creeps along the session: a body that warms up, or slows down with heat. */
export const drift: Rule = ({ session }) => {
  const latencies = countedReadings(session).map(({ latencyMs }) => latencyMs);
  const line = estimateDrift(
    latencies.map((_, index) => index),
    latencies,
  );
  if (line.kind !== 'drift' || line.p === undefined || line.p > RARE) return undefined;
  const along = latencies.length - 1;
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
