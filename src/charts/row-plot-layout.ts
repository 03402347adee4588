import { axisAround, axisFromZero, placeOnAxis, tickText } from './axis.ts';
import { CHART_WIDTH, type PlacedText, type Variant } from './chart.ts';
import { layOutColumns, type Columns } from './row-plot-columns.ts';
import type { Drawing } from './render.ts';
import type { PlotRow, RowPlot } from './row-plot-input.ts';
import { textWidth, wrapText } from './text-width.ts';
import { bodyLook, DESCENT, HALF_X_HEIGHT, LINE_HEIGHT, NO_BODY, TEXT_GAP, TEXT_SIZE } from './theme.ts';

const ROW_PADDING = 8;
/** Under the text of a narrow row: its part of the plot, and what parts it from the text and the next row. */
const STRIP_HEIGHT = 15;
const STRIP_PADDING = 5;
const HEADING_SPACE = 14;
/** A bold V at the begin of a line stands out to the left by so much. */
const OVERHANG = 1;
const AXIS_HEIGHT = 22;
/** Beyond this the bottom axis is out of sight from the top rows, and the ticks are written there too. */
const TALL = 520;
/** With a half-height of 1, at 0,0. */
const LEFT_BRACKET = 'M0.5,-1L0,-1L0,1L0.5,1';
const RIGHT_BRACKET = 'M-0.5,-1L0,-1L0,1L-0.5,1';
/** Two strokes across the begin of an axis that does not begin at zero. */
const BREAK = 'M-0.8,1L0,-1M0,1L0.8,-1';
/** Keeps it clear of the label under it. */
const BREAK_RISE = 5;

/** Rows stacked from y = 0 down; texts and lines with x from the left edge of the drawing. */
interface Stack {
  readonly texts: PlacedText[];
  /** Between groups. */
  readonly lines: { x: number; x2: number; y: number }[];
  readonly marks: { y: number; row: PlotRow }[];
  /** Where the grid is drawn: it stays clear of text. */
  readonly bands: { y: number; y2: number }[];
  height: number;
}

/** Places every mark and every text of a row plot, for one variant. */
export function layOutRows(
  { rows, axisTitle, shaded, marked = [], notes, reach, isBroken = false }: RowPlot,
  variant: Variant,
): Omit<Drawing, 'spec'> {
  const total = CHART_WIDTH[variant];
  const values = rows.flatMap(({ value, interval, bracket }) => [
    value,
    interval?.low,
    interval?.high,
    bracket?.low,
    bracket?.high,
  ]);
  const drawn = [...values, shaded?.low, shaded?.high, reach, ...marked].filter((value) => value !== undefined);
  const axisOf = isBroken ? axisAround : axisFromZero;
  const columns = layOutColumns(rows, axisOf(drawn, total), variant);
  const { texts, lines, marks, bands, height } = stackRows(rows, columns, variant);
  const { plotLeft, plotRight } = columns;
  const width = plotRight - plotLeft;
  const axis = axisOf(drawn, width);

  const tall = height > TALL;
  if (tall)
    for (const tick of axis.ticks)
      texts.push({
        x: plotLeft + placeOnAxis(axis, tick, width),
        y: -8,
        text: tickText(tick, axis.format),
        align: 'center',
        weight: 400,
      });
  let bottom = height + AXIS_HEIGHT;
  for (const text of wrapText(axisTitle, plotRight, TEXT_SIZE)) {
    bottom += LINE_HEIGHT;
    texts.push({ x: plotRight, y: bottom, text, align: 'right', weight: 400 });
  }
  for (const note of notes ?? []) {
    bottom += DESCENT;
    for (const text of wrapText(note, total, TEXT_SIZE)) {
      bottom += LINE_HEIGHT;
      texts.push({ x: 0, y: bottom, text, align: 'left', weight: 400 });
    }
  }

  const lookOf = ({ place }: PlotRow) => (place === undefined ? NO_BODY : bodyLook(place));
  const intervals = marks.flatMap(({ y, row }) =>
    row.interval ? [{ y, low: row.interval.low, high: row.interval.high, ...lookOf(row) }] : [],
  );
  const brackets = marks.flatMap(({ y, row: { bracket } }) =>
    bracket ? [{ y, low: bracket.low, high: bracket.high }] : [],
  );
  const points = (bare: boolean) =>
    marks.flatMap(({ y, row }) =>
      row.value !== undefined && (row.interval === undefined) === bare ? [{ y, value: row.value, ...lookOf(row) }] : [],
    );
  return {
    width,
    height,
    padding: {
      left: plotLeft,
      right: total - plotRight,
      top: tall ? AXIS_HEIGHT : 0,
      bottom: bottom - height + DESCENT,
    },
    params: { low: axis.domain[0], high: axis.domain[1], marks: axis.ticks, tickFormat: axis.format },
    data: {
      shaded: shaded ? bands.map((band) => ({ ...band, low: shaded.low, high: shaded.high })) : [],
      grid: bands.flatMap((band) => axis.ticks.filter((tick) => tick !== 0).map((value) => ({ value, ...band }))),
      zero: isBroken ? [] : bands.map((band) => ({ value: 0, ...band })),
      breaks: isBroken ? bands.map(({ y2 }) => ({ y: y2 - BREAK_RISE, value: axis.domain[0], shape: BREAK })) : [],
      marked: bands.flatMap((band) => marked.map((value) => ({ value, ...band }))),
      lines: lines.map(({ x, x2, y }) => ({ x: x - plotLeft, x2: x2 - plotLeft, y })),
      intervals,
      ends: intervals.flatMap(({ low, high, ...end }) => [
        { ...end, value: low },
        { ...end, value: high },
      ]),
      points: points(false),
      bare: points(true),
      spans: brackets,
      brackets: brackets.flatMap(({ y, low, high }) => [
        { y, value: low, shape: LEFT_BRACKET },
        { y, value: high, shape: RIGHT_BRACKET },
      ]),
      texts: texts.map((text) => ({ ...text, x: text.x - plotLeft })),
    },
  };
}

function stackRows(rows: readonly PlotRow[], columns: Columns, variant: Variant): Stack {
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
function stackWideRow(stack: Stack, row: PlotRow, { valueX, labelLimit }: Columns, opensGroup: boolean): void {
  const top = stack.height;
  const baseline = top + LINE_HEIGHT;
  stack.texts.push({ x: valueX(row.text), y: baseline, text: row.text, align: 'left', weight: 400 });
  stackLines(stack, wrapText(row.label, labelLimit, TEXT_SIZE), 400);
  stack.height += ROW_PADDING;
  stack.marks.push({ y: baseline - HALF_X_HEIGHT, row });
  const band = opensGroup ? undefined : stack.bands.at(-1);
  if (band) band.y2 = stack.height;
  else stack.bands.push({ y: top, y2: stack.height });
}

/** Label and value above, side by side where both fit; under them a strip of the plot. */
function stackNarrowRow(stack: Stack, row: PlotRow, { valueX, labelLimit }: Columns): void {
  const labels = wrapText(row.label, labelLimit, TEXT_SIZE);
  const x = valueX(row.text);
  stackLines(stack, labels, 400);
  if (textWidth(labels.at(-1) ?? '', TEXT_SIZE) + TEXT_GAP > x) stack.height += LINE_HEIGHT;
  stack.texts.push({ x, y: stack.height, text: row.text, align: 'left', weight: 400 });
  const top = stack.height + STRIP_PADDING;
  stack.bands.push({ y: top, y2: top + STRIP_HEIGHT });
  stack.marks.push({ y: top + STRIP_HEIGHT / 2, row });
  stack.height = top + STRIP_HEIGHT + STRIP_PADDING;
}

/** Adds lines of text under each other; the stack then ends at the baseline of the last. */
function stackLines(stack: Stack, lines: readonly string[], weight: 400 | 600): void {
  for (const text of lines) {
    stack.height += LINE_HEIGHT;
    stack.texts.push({ x: weight === 600 ? OVERHANG : 0, y: stack.height, text, align: 'left', weight });
  }
}
