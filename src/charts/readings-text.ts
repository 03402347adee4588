import { extent } from 'd3-array';
import { percent } from './estimates-text.ts';
import { binSize } from './readings-bins.ts';
import type { ReadingsInput } from './readings-input.ts';
import { MOST_RUNS } from './readings-runs.ts';

export interface ReadingsWords {
  readonly title: string;
  readonly description: string;
  /** Beside the line: the total, and what the band is. */
  readonly totalLabel: readonly string[];
  /** Under the plot. */
  readonly notes: readonly string[];
}

const MOST_LISTED = 6;
const NO_BREAK = '\u00a0';

/** The words of a readings chart. */
export function describeReadings({ readings, total, title }: ReadingsInput): ReadingsWords {
  const counted = readings.filter(({ excluded }) => excluded === undefined);
  const runs = new Set(readings.map(({ run }) => run)).size;
  const [low = 0, high = 0] = extent(counted, ({ latencyMs }) => latencyMs);
  const level = total.interval && percent(total.interval.level);
  const excluded = readings.length - counted.length;
  const bins = bin(readings);
  return {
    title: title ?? 'Readings in the order taken',
    totalLabel: [`total ${total.text}`, level === undefined ? 'no interval' : `band: ${level} interval`],
    notes: [...bins, ...(runs > MOST_RUNS ? [`${String(runs)} runs, one after the other.`] : [])],
    description: [
      `Latency of ${count(readings.length, 'reading')} in ${count(runs, 'run')}, in the order taken.`,
      ...bins,
      counted.length === 1
        ? `The one that counts is ${latencyText(low)} ms.`
        : low === high
          ? `All ${String(counted.length)} that count are ${latencyText(low)} ms.`
          : `The ${String(counted.length)} that count run from ${latencyText(low)} ms to ${latencyText(high)} ms.`,
      level === undefined
        ? `The total is ${total.text}, drawn as a line; it has no interval.`
        : `The total is ${total.text}, drawn as a line with its ${level} interval as a band.`,
      excluded === 0
        ? 'None is excluded.'
        : `${count(excluded, 'reading')} excluded, drawn apart: ${list(excludedReadings(readings).map(({ number, reason }) => `no. ${String(number)} (${reason})`))}.`,
    ].join(' '),
  };
}

/** Under the plot: which readings are excluded, and what their marks mean on an axis of that range. */
export function excludedNote(readings: ReadingsInput['readings'], [low, high]: readonly [number, number]): string[] {
  const excluded = excludedReadings(readings);
  if (excluded.length === 0) return [];
  const isOff = ({ latencyMs }: ExcludedReading) => latencyMs !== undefined && (latencyMs < low || latencyMs > high);
  const marks = excluded.every(isOff)
    ? 'Triangles'
    : excluded.some(isOff)
      ? 'Crosses, and triangles off the scale'
      : 'Crosses';
  const items = excluded.map(
    ({ number, latencyMs }) =>
      `no.${NO_BREAK}${String(number)} (${latencyMs === undefined ? `no${NO_BREAK}value` : `${latencyText(latencyMs)}${NO_BREAK}ms`})`,
  );
  return [`${marks}: excluded, ${list(items)}.`];
}

interface ExcludedReading {
  readonly number: number;
  readonly latencyMs: number | undefined;
  readonly reason: string;
}

function excludedReadings(readings: ReadingsInput['readings']): ExcludedReading[] {
  return readings.flatMap(({ excluded, latencyMs }, i) =>
    excluded === undefined ? [] : [{ number: i + 1, latencyMs, reason: excluded }],
  );
}

function bin(readings: ReadingsInput['readings']): string[] {
  const size = binSize(readings);
  return size
    ? [
        `Each dot stands for the readings of one field, ${String(size.readings)} readings by ${latencyText(size.latencyMs)} ms; its area shows their number.`,
      ]
    : [];
}

function list(items: readonly string[]): string {
  const rest = items.length - MOST_LISTED;
  return rest > 0 ? `${items.slice(0, MOST_LISTED).join(', ')} and ${String(rest)} more` : items.join(', ');
}

function count(number: number, noun: string): string {
  return `${String(number)} ${noun}${number === 1 ? '' : 's'}`;
}

/** A latency as read: at most three decimals, which is as fine as any timer is written. */
function latencyText(ms: number): string {
  return String(Number(ms.toFixed(3))).replace('-', '−');
}
