import { max, min, pairs } from 'd3-array';
import type { Bench } from '../../../model/bench.ts';
import type { FoundOfSession } from '../rule.ts';

const DAY_MS = 86_400_000;
/**
 * A bench that rests for longer before or after one session, and than it ever did otherwise, has more likely a mistyped
 * date.
 */
const LONG_REST_DAYS = 90;
const TIMES_ANY_OTHER = 3;

/** Days far from those of all other sessions, as far as these lie from each other. */
export function datesApart({ sessions }: Bench): readonly FoundOfSession[] {
  const days = sessions.map(({ date }) => Date.parse(date) / DAY_MS);
  return sessions.flatMap((session, index) => {
    const own = days[index] ?? 0;
    const others = days.filter((_, other) => other !== index).sort((a, b) => a - b);
    const nearest = min(others, (day) => Math.abs(day - own)) ?? 0;
    const longest = max(pairs(others), ([before, after]) => after - before) ?? 0;
    if (nearest <= Math.max(LONG_REST_DAYS, TIMES_ANY_OTHER * longest)) return [];
    return [
      {
        rule: 'date-apart',
        severity: 'caution' as const,
        session: session.id,
        message: `Its date, ${session.date}, is ${nearest} days from that of any other session.`,
        hint: 'Check the year, and that day and month are not exchanged.',
      },
    ];
  });
}
