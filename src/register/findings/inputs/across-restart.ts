import { readingRangeMs } from '../../../analysis/phase-errors.ts';
import { chainOf, countedReadings } from '../../session-input.ts';
import { describeSignificant } from '../../text.ts';
import type { Rule } from '../rule.ts';

/**
 * Readings across a restart of the timer rest on `wraps-after`, others do not: where the two kinds differ by more than
 * the rates allow, or stamps never come near the time at which the timer is said to start again, it is wrong.
 */
export const acrossRestart: Rule = ({ session, find }) => {
  const rig = find.rig(session.rig);
  const wrapsAfterMs = rig.sourceTimer?.wrapsAfterMs;
  if (session.method !== 'two-timers' || wrapsAfterMs === undefined) return undefined;
  const counted = countedReadings(session);
  const isAcross = ({ sourceMs = 0, shownMs = 0 }: (typeof counted)[number]): boolean => sourceMs < shownMs;
  const across = counted.filter(isAcross);
  const within = counted.filter((reading) => !isAcross(reading)).map(({ latencyMs }) => latencyMs);
  const rangeMs = readingRangeMs(chainOf(session, find), session.method, session.resolutionMs ?? 0);
  const [low, high] = [Math.min(...within), Math.max(...within)];
  const off = across.filter(({ latencyMs }) => latencyMs < high - rangeMs || latencyMs > low + rangeMs);
  const [first] = off;
  if (first === undefined || within.length < 2) return undefined;
  return {
    severity: 'warning',
    message: `Readings across a restart of the source timer differ from the others by more than the rates allow: line ${off.map(({ line }) => line).join(', ')} (${describeSignificant(first.latencyMs, 3, 'ms')}). They rest on source-timer.wraps-after in ${rig.file.path}, ${describeSignificant(wrapsAfterMs / 1000, 6, 's')}.`,
    hint: 'Check wraps-after first, then the digits of these rows.',
  };
};
