import { extent, nice, ticks } from 'd3-array';
import { textWidth } from './text-width.ts';
import { TEXT_SIZE } from './theme.ts';

export interface Axis {
  readonly domain: readonly [low: number, high: number];
  readonly ticks: readonly number[];
}

const MAX_TICKS = 8;
const TICK_GAP = 22;

/** An axis for lengths: it holds zero and all values, ends on round numbers, and its labels have room. */
export function axisFromZero(values: readonly number[], lengthPx: number): Axis {
  return roomyAxis([0, ...values], lengthPx, (labels) => Math.max(...labels.map((label) => textWidth(label, TEXT_SIZE))) + TICK_GAP);
}

/** An axis for positions: it holds all values, and a little more where they are all the same. */
export function axisAround(values: readonly number[], lengthPx: number, spacingPx: number): Axis {
  const [low = 0, high = 0] = extent(values);
  const margin = high > low ? 0 : Math.max(0.5, Math.abs(high) * 0.01);
  return roomyAxis([low - margin, high + margin], lengthPx, () => spacingPx);
}

function roomyAxis(values: readonly number[], lengthPx: number, spacing: (labels: string[]) => number): Axis {
  const [low = 0, high = 0] = extent(values);
  if (!Number.isFinite(low) || !Number.isFinite(high)) throw new RangeError('an axis needs finite values');
  const top = high > low ? high : low + 1;
  for (let count = MAX_TICKS; ; count -= 1) {
    const domain = nice(low, top, count);
    const marks = ticks(domain[0], domain[1], count);
    if (count === 1 || (marks.length <= MAX_TICKS && spacing(marks.map(tickText)) * (marks.length - 1) <= lengthPx)) return { domain, ticks: marks };
  }
}

/** As vega's format `~f` prints it, with a true minus sign. */
export function tickText(value: number): string {
  return String(Number(value.toFixed(6))).replace('-', '−');
}
