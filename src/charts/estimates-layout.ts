import { axisFromZero, placeOnAxis, tickText } from './axis.ts';
import { CHART_WIDTH, type PlacedText, type Variant } from './chart.ts';
import { layOutColumns, type Columns } from './estimates-columns.ts';
import type { EstimateRow } from './estimates.ts';
import type { Drawing } from './render.ts';
import { textWidth, wrapText } from './text-width.ts';
import { DESCENT, HALF_X_HEIGHT, LINE_HEIGHT, TEXT_GAP, TEXT_SIZE } from './theme.ts';

const ROW_PADDING = 8;
/** Under the text of a narrow row: its part of the plot, and what parts it from the text and the next row. */
const STRIP_HEIGHT = 15;
const STRIP_PADDING = 5;
const HEADING_SPACE = 14;
const AXIS_HEIGHT = 22;
/** Beyond this the bottom axis is out of sight from the top rows, and the ticks are written there too. */
const TALL = 520;

/** Rows stacked from y = 0 down; texts and lines with x from the left edge of the drawing. */
interface Stack {
  readonly texts: PlacedText[];
  /** Between groups. */
  readonly lines: { x: number; x2: number; y: number }[];
  readonly marks: { y: number; row: EstimateRow }[];
  /** Where the grid is drawn: it stays clear of text. */
  readonly bands: { y: number; y2: number }[];
  height: number;
}

/** Places every mark and every text of an estimates chart, for one variant. */
export function layOutEstimates(rows: readonly EstimateRow[], axisTitle: string, variant: Variant): Omit<Drawing, 'spec'> {
  const columns = layOutColumns(rows, variant);
  const { texts, lines, marks, bands, height } = stackRows(rows, columns, variant);
  const { plotLeft, plotRight } = columns;
  const width = plotRight - plotLeft;
  const axis = axisFromZero(rows.flatMap(({ figure: { value, interval } }) => (interval ? [value, interval.low, interval.high] : [value])), width);
  const tall = height > TALL;
  const topTicks = tall ? axis.ticks.map((tick) => ({ x: placeOnAxis(axis, tick, width), y: -8, text: tickText(tick, axis.format), align: 'center', weight: 400 })) : [];
  const title = { x: width, y: height + AXIS_HEIGHT + LINE_HEIGHT, text: axisTitle, align: 'right', weight: 400 };
  const withInterval = marks.flatMap(({ y, row: { figure } }) => (figure.interval ? [{ y, value: figure.value, ...figure.interval }] : []));

  return {
    width,
    height,
    padding: { left: plotLeft, right: CHART_WIDTH[variant] - plotRight, top: tall ? AXIS_HEIGHT : 0, bottom: AXIS_HEIGHT + LINE_HEIGHT + DESCENT },
    params: { low: axis.domain[0], high: axis.domain[1], marks: axis.ticks, tickFormat: axis.format },
    data: {
      grid: bands.flatMap((band) => axis.ticks.filter((tick) => tick !== 0).map((value) => ({ value, ...band }))),
      zero: bands.map((band) => ({ value: 0, ...band })),
      lines: lines.map(({ x, x2, y }) => ({ x: x - plotLeft, x2: x2 - plotLeft, y })),
      intervals: withInterval.map(({ y, low, high }) => ({ y, low, high })),
      ends: withInterval.flatMap(({ y, low, high }) => [{ y, value: low }, { y, value: high }]),
      points: withInterval.map(({ y, value }) => ({ y, value })),
      bare: marks.flatMap(({ y, row: { figure } }) => (figure.interval ? [] : [{ y, value: figure.value }])),
      texts: [...texts.map((text) => ({ ...text, x: text.x - plotLeft })), ...topTicks, title],
    },
  };
}

function stackRows(rows: readonly EstimateRow[], columns: Columns, variant: Variant): Stack {
  const stack: Stack = { texts: [], lines: [], marks: [], bands: [], height: 0 };
  const stackRow = variant === 'wide' ? stackWideRow : stackNarrowRow;
  let group: string | undefined;
  for (const row of rows) {
    const opensGroup = row.group !== group;
    if (opensGroup && row.group !== undefined) stackHeading(stack, row.group, variant);
    stackRow(stack, row, columns, opensGroup);
    group = row.group;
  }
  return stack;
}

function stackHeading(stack: Stack, heading: string, variant: Variant): void {
  const width = CHART_WIDTH[variant];
  if (stack.height > 0) {
    stack.lines.push({ x: 0, x2: width, y: stack.height + HEADING_SPACE / 2 });
    stack.height += HEADING_SPACE;
  }
  stackLines(stack, wrapText(heading, width, TEXT_SIZE, 600), 600);
  stack.height += DESCENT;
}

/** Label at the left, value at the right, the plot between them; the grid runs on from row to row. */
function stackWideRow(stack: Stack, row: EstimateRow, { valueX, labelLimit }: Columns, opensGroup: boolean): void {
  const top = stack.height;
  const baseline = top + LINE_HEIGHT;
  stack.texts.push({ x: valueX(row.figure.text), y: baseline, text: row.figure.text, align: 'left', weight: 400 });
  stackLines(stack, wrapText(row.label, labelLimit, TEXT_SIZE), 400);
  stack.height += ROW_PADDING;
  stack.marks.push({ y: baseline - HALF_X_HEIGHT, row });
  const band = opensGroup ? undefined : stack.bands.at(-1);
  if (band) band.y2 = stack.height;
  else stack.bands.push({ y: top, y2: stack.height });
}

/** Label and value above, side by side where both fit; under them a strip of the plot. */
function stackNarrowRow(stack: Stack, row: EstimateRow, { valueX, labelLimit }: Columns): void {
  const labels = wrapText(row.label, labelLimit, TEXT_SIZE);
  const x = valueX(row.figure.text);
  stackLines(stack, labels, 400);
  if (textWidth(labels.at(-1) ?? '', TEXT_SIZE) + TEXT_GAP > x) stack.height += LINE_HEIGHT;
  stack.texts.push({ x, y: stack.height, text: row.figure.text, align: 'left', weight: 400 });
  const top = stack.height + STRIP_PADDING;
  stack.bands.push({ y: top, y2: top + STRIP_HEIGHT });
  stack.marks.push({ y: top + STRIP_HEIGHT / 2, row });
  stack.height = top + STRIP_HEIGHT + STRIP_PADDING;
}

/** Adds lines of text under each other; the stack then ends at the baseline of the last. */
function stackLines(stack: Stack, lines: readonly string[], weight: 400 | 600): void {
  for (const text of lines) stack.texts.push({ x: 0, y: (stack.height += LINE_HEIGHT), text, align: 'left', weight });
}
