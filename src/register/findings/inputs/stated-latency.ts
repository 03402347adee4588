/** Latencies that displays and links state of themselves, set against what sessions read of whole chains. */
import type { Bench, Display, Link, Session } from '../../../model/bench.ts';
import { countedReadings } from '../../session-input.ts';
import type { Finding } from '../../register.ts';
import { describeSignificant } from '../../text.ts';

/**
 * Finer than any stated uncertainty of a latency is; what is below was written in another unit. Common practice, no
 * source.
 */
const FINEST_MS = 0.001;
const HINT = 'Check the number and its unit: value and uncertainty carry one each, such as 14.4 ms.';

export function statedLatencies(bench: Bench): readonly Finding[] {
  const { displays, links, sessions } = bench;
  return [
    ...displays.flatMap((display) =>
      found(
        display,
        sessions.filter((session) => session.display === display.id),
        tooShort(display),
      ),
    ),
    ...links.flatMap((link) =>
      found(
        link,
        sessions.filter((session) => session.links.includes(link.id)),
        undefined,
      ),
    ),
  ];
}

function found(part: Display | Link, sessions: readonly Session[], short: string | undefined): readonly Finding[] {
  const { latency, file, name } = part;
  if (latency === undefined) return [];
  const { valueMs, standardUncertaintyMs } = latency;
  const stated = describeSignificant(valueMs, 3, 'ms');
  const least = sessions
    .map((session) => ({ id: session.id, ms: middle(countedReadings(session).map(({ latencyMs }) => latencyMs)) }))
    .reduce<{ id: string; ms: number } | undefined>(
      (low, each) => (low === undefined || each.ms < low.ms ? each : low),
      undefined,
    );
  const says =
    least !== undefined && valueMs - 2 * standardUncertaintyMs > least.ms
      ? `${name} states a latency of ${stated}, and ${least.id}, with it in the chain, reads ${describeSignificant(least.ms, 3, 'ms')} in all.`
      : standardUncertaintyMs > 0 && standardUncertaintyMs < FINEST_MS
        ? `${name} states its latency to within ${describeSignificant(standardUncertaintyMs, 2, 'ms')}, finer than anything here is measured.`
        : short;
  return says === undefined
    ? []
    : [
        {
          rule: 'stated-latency',
          severity: 'warning',
          where: { place: `${file.path} latency` },
          message: says,
          hint: HINT,
        },
      ];
}

/** Drawing alone takes a display half its scan-out to the middle of the screen, to which its latency refers. */
function tooShort({ name, latency, scanOutMs = 0 }: Display): string | undefined {
  if (latency === undefined || latency.valueMs === 0) return undefined;
  const leastMs = scanOutMs / 2;
  return latency.valueMs + 2 * latency.standardUncertaintyMs < leastMs / 2
    ? `${name} states a latency of ${describeSignificant(latency.valueMs, 3, 'ms')}, and takes ${describeSignificant(leastMs, 3, 'ms')} to draw as far as the middle of its screen.`
    : undefined;
}

function middle(latenciesMs: readonly number[]): number {
  const sorted = latenciesMs.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.POSITIVE_INFINITY;
}
