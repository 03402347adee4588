import { extent, nice, ticks } from 'd3-array';
import { textWidth } from './text-width.ts';
import { TEXT_SIZE } from './theme.ts';

export interface Axis {
  readonly domain: readonly [low: number, high: number];
  readonly ticks: readonly number[];
  /** vega's number format for the ticks: all with the same number of decimals. */
  readonly format: string;
  /** Width of the widest tick label, in px. */
  readonly labelWidth: number;
}

const MAX_TICKS = 8;
const MOST_DECIMALS = 6;
/** Between two tick labels that stand side by side, in px. */
const LABEL_GAP = 22;

/**
 * An axis for lengths: it holds zero and all values, ends on round numbers, and its labels have room: side by
 * side, or one over the other with `spacingPx` between them.
 */
export function axisFromZero(values: Iterable<number>, lengthPx: number, spacingPx?: number): Axis {
  const [low, high] = finiteExtent(values);
  return roomyAxis(Math.min(0, low), Math.max(0, high), lengthPx, (axis) => spacingPx ?? axis.labelWidth + LABEL_GAP);
}

/** An axis for positions, not lengths: it holds all values, and a little more where they are all the same. */
export function axisAround(values: Iterable<number>, lengthPx: number, spacingPx?: number): Axis {
  const [low, high] = finiteExtent(values);
  const margin = high > low ? 0 : Math.max(0.5, Math.abs(high) * 0.01);
  return roomyAxis(low - margin, high + margin, lengthPx, (axis) => spacingPx ?? axis.labelWidth + LABEL_GAP);
}

/** Whether an axis from zero would be blank for the better half, so that one of the values' own range shows more. */
export function isFarFromZero(values: Iterable<number>): boolean {
  const [low, high] = finiteExtent(values);
  return low > 0 && low > high - low;
}

/** A logarithmic axis for counts: from the smallest to the largest, marked at those of them that have room. */
export function axisOfCounts(counts: Iterable<number>, lengthPx: number): Axis {
  const [low, high] = finiteExtent(counts);
  if (low <= 0) throw new RangeError('a logarithmic axis needs values above zero');
  const top = high > low ? high : low * 2;
  const ascending = [...new Set(counts)].sort((a, b) => a - b);
  const format = '.0f';
  let free = -Infinity;
  const marks = ascending.filter((count) => {
    const half = textWidth(tickText(count, format), TEXT_SIZE) / 2;
    const px = (Math.log(count / low) / Math.log(top / low)) * lengthPx;
    if (px - half < free) return false;
    free = px + half + LABEL_GAP / 2;
    return true;
  });
  return {
    domain: [low, top],
    ticks: marks,
    format,
    labelWidth: Math.max(0, ...marks.map((mark) => textWidth(tickText(mark, format), TEXT_SIZE))),
  };
}

/** Where a value stands on a linear axis of that length, in px from its low end. */
export function placeOnAxis({ domain: [low, high] }: Axis, value: number, lengthPx: number): number {
  return ((value - low) / (high - low)) * lengthPx;
}

/** A tick as vega prints it: fixed decimals, a true minus sign. */
export function tickText(value: number, format: string): string {
  return value.toFixed(Number(format.slice(1, -1))).replace('-', '−');
}

function roomyAxis(low: number, high: number, lengthPx: number, spacing: (axis: Axis) => number): Axis {
  const top = high > low ? high : low + 1;
  for (let count = MAX_TICKS; ; count -= 1) {
    const domain = nice(low, top, count);
    const marks = ticks(domain[0], domain[1], count);
    const decimals = Math.max(
      ...marks.map((mark) => (String(Number(mark.toFixed(MOST_DECIMALS))).split('.')[1] ?? '').length),
    );
    const format = `.${String(decimals)}f`;
    const axis = {
      domain,
      ticks: marks,
      format,
      labelWidth: Math.max(...marks.map((mark) => textWidth(tickText(mark, format), TEXT_SIZE))),
    };
    if (count === 1 || (marks.length <= MAX_TICKS && spacing(axis) * (marks.length - 1) <= lengthPx)) return axis;
  }
}

function finiteExtent(values: Iterable<number>): [low: number, high: number] {
  const [low, high] = extent(values);
  if (low === undefined || high === undefined || !Number.isFinite(low) || !Number.isFinite(high))
    throw new RangeError('an axis needs finite values');
  return [low, high];
}
