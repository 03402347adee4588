import { axisFromZero, placeOnAxis, type Axis } from './axis.ts';
import { CHART_WIDTH, type PlacedText, type Variant } from './chart.ts';
import type { RateLawWords } from './rate-law-text.ts';
import { unitOf, type RateLawInput, type RatePoint } from './rate-law-input.ts';
import type { Drawing } from './render.ts';
import { textWidth, wrapText } from './text-width.ts';
import { bodyLook, COLOUR, DESCENT, HALF_X_HEIGHT, LINE_HEIGHT, TEXT_SIZE } from './theme.ts';

const HEIGHT: Readonly<Record<Variant, number>> = { wide: 300, narrow: 240 };
const LABEL_GAP = 8;
const WIDEST_LINE_LABEL = 150;
/** Axis labels stand one under the other here: what they need is their height. */
const LINES_PER_TICK = 2;

/** Places every mark and every text of a rate-law chart, for one variant. */
export function layOutRateLaw(
  { points, line, place }: RateLawInput,
  words: RateLawWords,
  variant: Variant,
): Omit<Drawing, 'spec'> {
  const total = CHART_WIDTH[variant];
  const look = place === undefined ? { colour: COLOUR.ink, shape: 'circle' } : bodyLook(place);
  const height = HEIGHT[variant];
  const values = [
    ...points.flatMap(({ figure: { value, interval } }) => [value, interval?.low ?? value, interval?.high ?? value]),
    ...line.flatMap(({ fitted, low, high }) => [fitted, low ?? fitted, high ?? fitted]).map(aboveZero),
  ];
  // what counts along a vertical axis is the height of its labels, not their width
  const yAxis = axisFromZero(values, height, LINES_PER_TICK * LINE_HEIGHT);
  const left = Math.ceil(yAxis.labelWidth) + LABEL_GAP;
  const lineLabel = words.lineLabel.flatMap((text) =>
    wrapText(text, variant === 'wide' ? WIDEST_LINE_LABEL : total, TEXT_SIZE),
  );
  const right = Math.ceil(
    variant === 'wide' ? Math.max(...lineLabel.map((text) => textWidth(text, TEXT_SIZE))) + LABEL_GAP : LABEL_GAP,
  );
  const width = total - left - right;
  const xAxis = axisFromZero(
    [...points, ...line].map(({ intervalMs }) => intervalMs),
    width,
  );

  const texts: PlacedText[] = [];
  const put = (text: string, x: number, y: number, align: PlacedText['align'] = 'left') =>
    texts.push({ x, y, text, align, weight: 400 });
  const rates = placeRates(points, xAxis, width, right);
  for (const { text, x, y } of rates) put(text, x, y, 'center');
  let top = Math.min(...rates.map(({ y }) => y)) - LINE_HEIGHT;
  put('frames per second', width, top, 'right');
  put(`Total latency, ${unitOf(points)}`, -left, top);
  if (variant === 'narrow') {
    for (const text of [...lineLabel].reverse()) {
      top -= LINE_HEIGHT;
      put(text, -left, top);
    }
  } else {
    const end = line.at(-1);
    const y = height - placeOnAxis(yAxis, end?.fitted ?? 0, height);
    const first = Math.min(Math.max(y + HALF_X_HEIGHT, TEXT_SIZE), height - (lineLabel.length - 1) * LINE_HEIGHT);
    lineLabel.forEach((text, i) => put(text, width + LABEL_GAP, first + i * LINE_HEIGHT));
  }
  const bottom = height + 2 * LINE_HEIGHT + 4;
  put('frame interval, ms', width, bottom, 'right');

  const drawn = points.map(({ intervalMs, figure: { value, interval } }) => ({ intervalMs, value, interval }));
  return {
    width,
    height,
    padding: { left, right, top: TEXT_SIZE - top, bottom: bottom - height + DESCENT },
    params: {
      xLow: xAxis.domain[0],
      xHigh: xAxis.domain[1],
      xMarks: xAxis.ticks,
      xFormat: xAxis.format,
      yLow: yAxis.domain[0],
      yHigh: yAxis.domain[1],
      yMarks: yAxis.ticks,
      yFormat: yAxis.format,
      bodyColour: look.colour,
      bodyShape: look.shape,
    },
    data: {
      band: line.filter(({ low, high }) => low !== undefined && high !== undefined),
      line,
      leaders: rates.map(({ intervalMs, y }) => ({ intervalMs, top: y + DESCENT })),
      intervals: drawn.flatMap(({ intervalMs, interval }) =>
        interval ? [{ intervalMs, low: interval.low, high: interval.high }] : [],
      ),
      points: drawn.flatMap(({ intervalMs, value, interval }) => (interval ? [{ intervalMs, value }] : [])),
      bare: drawn.flatMap(({ intervalMs, value, interval }) => (interval ? [] : [{ intervalMs, value }])),
      texts,
    },
  };
}

/**
 * Where a line or its band dips below zero, which no latency does, the drawing ends at the axis instead of making room
 * for it.
 */
function aboveZero(value: number): number {
  return Math.max(0, value);
}

/** The name of each rate above its interval, one line higher where it would touch its neighbour. */
function placeRates(
  points: readonly RatePoint[],
  axis: Axis,
  width: number,
  right: number,
): { text: string; x: number; y: number; intervalMs: number }[] {
  const byName = new Map(points.map(({ rate, intervalMs }) => [rate, intervalMs]));
  const laneEnds: number[] = [];
  return [...byName]
    .sort(([, a], [, b]) => a - b)
    .map(([text, intervalMs]) => {
      const half = textWidth(text, TEXT_SIZE) / 2;
      const x = Math.min(placeOnAxis(axis, intervalMs, width), width + right - half);
      const free = laneEnds.findIndex((end) => end <= x - half);
      const lane = free === -1 ? laneEnds.length : free;
      laneEnds[lane] = x + half + LABEL_GAP;
      return { text, x, y: -LABEL_GAP - lane * LINE_HEIGHT, intervalMs };
    });
}
