import type { Bench, Rig } from '../../../model/bench.ts';
import type { Finding } from '../../register.ts';
import { describeSignificant } from '../../text.ts';

/**
 * Timers start again where their digits are used up: 10, 60, 100, 1000 s, … or 12 or 24 hours. Common practice, no
 * source.
 */
const ROUND_SECONDS = [1, 10, 100, 1000, 10_000, 100_000, 60, 600, 3600, 36_000, 360_000, 43_200, 86_400];

/**
 * A timer that starts again at an odd time has most likely a mistyped `wraps-after`: every reading across a restart,
 * and all times between readings, are then off by the difference.
 */
export function oddRestarts({ rigs }: Bench): readonly Finding[] {
  return rigs.flatMap(({ sourceTimer, file }: Rig): readonly Finding[] => {
    const wrapsAfterMs = sourceTimer?.wrapsAfterMs;
    if (wrapsAfterMs === undefined || ROUND_SECONDS.some((seconds) => 1000 * seconds === wrapsAfterMs)) return [];
    return [
      {
        rule: 'odd-restart',
        severity: 'warning',
        where: { place: `${file.path} source-timer.wraps-after` },
        message: `The source timer is said to start again at zero after ${describeSignificant(wrapsAfterMs / 1000, 6, 's')}; timers do so when their digits are used up, as after 60 s or 100 s.`,
        hint: 'Read on the film how far it counts; wraps-after is the first time that it never shows.',
      },
    ];
  });
}
