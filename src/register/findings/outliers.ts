import { max } from 'd3-array';
import { readingRangeMs } from '../../analysis/phase-errors.ts';
import { medianOf } from '../../analysis/summary.ts';
import { chainOf, countedReadings, countedRuns } from '../session-input.ts';
import { describeSignificant, roundTo } from '../text.ts';
import type { Rule } from './rule.ts';

/**
 * The reading furthest from the middle of its clip, where it lies further than phases can carry it: with true rates and
 * no misread no session is ever flagged. A test for normal values would flag many, since values are whole refreshes.
 * Nothing is removed.
 */
export const outliers: Rule = ({ session, find }) => {
  const counted = countedReadings(session);
  const middles = new Map(
    countedRuns(session).map((readings) => [readings[0]?.run, medianOf(readings.map(({ latencyMs }) => latencyMs))]),
  );
  const offBy = counted.map(({ run, latencyMs }) => Math.abs(latencyMs - (middles.get(run) ?? latencyMs)));
  const farthest = max(offBy) ?? 0;
  const rangeMs = readingRangeMs(chainOf(session, find), session.method, session.resolutionMs ?? 0);
  const reading = farthest > rangeMs ? counted[offBy.indexOf(farthest)] : undefined;
  if (reading === undefined) return undefined;
  return {
    severity: 'caution',
    message: `Reading ${session.readings.indexOf(reading) + 1} (line ${reading.line} of the file, ${roundTo(reading.latencyMs, 0)} ms) lies ${describeSignificant(farthest, 2, 'ms')} from the middle of its clip, where phases alone move readings of one clip by ${describeSignificant(rangeMs, 2, 'ms')} at most. It still counts.`,
    hint: 'Look at the frame again. If it was misread, say so under exclude; if not, leave it.',
  };
};
