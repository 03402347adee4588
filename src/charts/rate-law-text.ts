import { percent } from './estimates-text.ts';
import { unitOf, type RateLawInput } from './rate-law-input.ts';

export interface RateLawWords {
  readonly title: string;
  readonly description: string;
  /** Beside the line: the law, and what the band is. */
  readonly lineLabel: readonly string[];
}

/** The words of a rate-law chart. Every number in them is a published text. */
export function describeRateLaw({ points, line, lineText, level, title }: RateLawInput): RateLawWords {
  const hasBand = line.some(({ low, high }) => low !== undefined && high !== undefined);
  const band = hasBand ? `${level === undefined ? '' : `${percent(level)} `}interval` : 'no interval';
  const sorted = [...points].sort((a, b) => a.intervalMs - b.intervalMs);
  const [fastest, slowest] = [sorted[0], sorted.at(-1)];
  const ends =
    fastest && slowest && fastest !== slowest
      ? `, from ${fastest.figure.text} at ${fastest.rate} Hz to ${slowest.figure.text} at ${slowest.rate} Hz`
      : '';
  const bare = points.filter(({ figure }) => !figure.interval);
  return {
    title: title ?? 'Total latency against frame interval',
    lineLabel: [`line: ${lineText}`, hasBand ? `band: ${band}` : band],
    description: [
      `Total latency ${unitOf(points) === 'ms' ? 'against frame interval, both in ms' : 'in frames against frame interval in ms,'} on axes that include zero: ${points.length === 1 ? 'one figure' : `${String(points.length)} figures`} as points with their intervals${ends}.`,
      `The line through them is ${lineText}${hasBand ? `, with its ${band} as a band` : ''}.`,
      ...(bare.length === 0
        ? []
        : [
            `Without an interval, drawn as open diamonds: ${bare.map(({ rate, figure }) => `${figure.text} at ${rate} Hz`).join('; ')}.`,
          ]),
    ].join(' '),
  };
}
