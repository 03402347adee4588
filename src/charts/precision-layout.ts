import { axisFromZero, axisOfCounts, placeOnAxis } from './axis.ts';
import { CHART_WIDTH, type PlacedText, type Variant } from './chart.ts';
import type { PrecisionInput } from './precision-input.ts';
import type { Drawing } from './render.ts';
import { textWidth, wrapText } from './text-width.ts';
import { COLOUR, DESCENT, HALF_X_HEIGHT, LINE_HEIGHT, TEXT_SIZE } from './theme.ts';

const HEIGHT: Readonly<Record<Variant, number>> = { wide: 280, narrow: 250 };
const WIDEST_LABEL: Readonly<Record<Variant, number>> = { wide: 170, narrow: 96 };
const LABEL_GAP = 8;
const LEADER = 22;
const LABEL_SPACE = 3;
/** A line is told by its label, its dashes and its colour, in this order of trust. */
const DASHES: readonly (readonly number[])[] = [
  [1, 0],
  [7, 4],
  [2, 3],
  [9, 3, 2, 3],
];
const COLOURS = [COLOUR.accent, COLOUR.accent2, COLOUR.accent3, COLOUR.ink];

/** Places every line and every text of a precision chart, for one variant. */
export function layOutPrecision({ lines, unit }: PrecisionInput, variant: Variant): Omit<Drawing, 'spec'> {
  const total = CHART_WIDTH[variant];
  const points = lines.flatMap((line) => line.points);
  const labels = lines.map(({ label }) => wrapText(label, WIDEST_LABEL[variant], TEXT_SIZE));
  const needed = labels.reduce((sum, { length }) => sum + length * LINE_HEIGHT + LABEL_SPACE, 0);
  const height = Math.max(HEIGHT[variant], needed);
  const yAxis = axisFromZero(
    points.map(({ halfWidth }) => halfWidth),
    height,
    2 * LINE_HEIGHT,
  );
  const left = Math.ceil(yAxis.labelWidth) + LABEL_GAP;
  const right = Math.ceil(Math.max(...labels.flat().map((text) => textWidth(text, TEXT_SIZE)))) + LEADER + 1;
  const width = total - left - right;
  const xAxis = axisOfCounts(
    points.map(({ readings }) => readings),
    width,
  );

  const texts: PlacedText[] = [];
  const put = (text: string, x: number, y: number, align: PlacedText['align'] = 'left') =>
    texts.push({ x, y, text, align, weight: 400 });
  const top = -LABEL_GAP - HALF_X_HEIGHT;
  put(`Half-width of the interval, ${unit}`, -left, top);
  const bottom = height + 2 * LINE_HEIGHT + 4;
  put('number of readings, logarithmic', width, bottom, 'right');

  const ends = lines.map((line) => height - placeOnAxis(yAxis, line.points.at(-1)?.halfWidth ?? 0, height));
  const places = spread(
    ends,
    labels.map(({ length }) => length * LINE_HEIGHT + LABEL_SPACE),
    height,
  );
  labels.forEach((label, i) => {
    const middle = places[i] ?? 0;
    label.forEach((text, k) =>
      put(text, width + LEADER, middle + HALF_X_HEIGHT + (k - (label.length - 1) / 2) * LINE_HEIGHT),
    );
  });

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
    },
    data: {
      lines: lines.flatMap((line, i) =>
        line.points.map(({ readings, halfWidth }) => ({
          line: i,
          readings,
          halfWidth,
          colour: COLOURS[i % COLOURS.length],
          dash: DASHES[i % DASHES.length],
        })),
      ),
      points: lines.flatMap((line, i) =>
        line.points.map(({ readings, halfWidth }) => ({ readings, halfWidth, colour: COLOURS[i % COLOURS.length] })),
      ),
      leaders: ends.map((y, i) => ({ y, y2: places[i] ?? y, x2: width + LEADER - LABEL_SPACE })),
      texts,
    },
  };
}

/** Middles of labels as near as they come to where each wants to be, in the same order, none touching another. */
function spread(wanted: readonly number[], heights: readonly number[], height: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0) || a - b);
  const places: number[] = [];
  let free = 0;
  for (const i of order) {
    const half = (heights[i] ?? 0) / 2;
    places[i] = Math.max(wanted[i] ?? 0, free + half);
    free = places[i] + half;
  }
  // what the lowest has gone beyond the bottom edge, those above give back
  let floor = height + LINE_HEIGHT / 2;
  for (const i of order.reverse()) {
    const half = (heights[i] ?? 0) / 2;
    places[i] = Math.min(places[i] ?? 0, floor - half);
    floor = places[i] - half;
  }
  return places;
}
