import { axisFromZero, tickText } from './axis.ts';
import { CHART_WIDTH, type PlacedText, type Variant } from './chart.ts';
import type { EstimateRow } from './estimates.ts';
import type { Drawing } from './render.ts';
import { textWidth, wrapText } from './text-width.ts';
import { LINE_HEIGHT, TEXT_SIZE } from './theme.ts';

const GAP = 18;
/** From the baseline down, and from the baseline up to the middle of a lower-case letter. */
const DESCENT = 5;
const HALF_X_HEIGHT = 4.5;
const ROW_PADDING = 8;
/** Below the text of a narrow row: its part of the plot. */
const STRIP_HEIGHT = 21;
const STRIP_PADDING = 6;
const HEADING_SPACE = 14;
const AXIS_HEIGHT = 22;
const WIDEST_LABEL = 230;
const PLOT_EDGE = 8;
/** Beyond this the bottom axis is out of sight from the top rows, and the ticks are written there too. */
const TALL = 520;

/** Text from the left edge of the drawing, before the plotting area's place in it is known. */
type FreeText = PlacedText;

interface Columns {
  readonly plotLeft: number;
  readonly plotRight: number;
  /** Where a row's text starts to be its value: texts line up on ' ± '. */
  readonly valueX: (text: string) => number;
  readonly labelLimit: number;
}

/** Places every mark and every text of an estimates chart, for one variant. */
export function layOutEstimates(rows: readonly EstimateRow[], axisTitle: string, variant: Variant): Omit<Drawing, 'spec'> {
  const columns = layOutColumns(rows, variant);
  const plotWidth = columns.plotRight - columns.plotLeft;
  const values = rows.flatMap(({ figure: { value, interval } }) => (interval ? [value, interval.low, interval.high] : [value]));
  const axis = axisFromZero(values, plotWidth);

  const texts: FreeText[] = [];
  const lines: { x: number; x2: number; y: number }[] = [];
  const marks: { y: number; row: EstimateRow }[] = [];
  /** Stretches over which the grid is drawn: it stays clear of text. */
  const bands: { y: number; y2: number }[] = [];
  let y = 0;
  let group: string | undefined;
  for (const row of rows) {
    if (row.group !== undefined && row.group !== group) {
      if (y > 0) {
        y += HEADING_SPACE;
        lines.push({ x: 0, x2: CHART_WIDTH[variant], y: y - HEADING_SPACE / 2 });
      }
      y = placeLines(texts, wrapText(row.group, CHART_WIDTH[variant], TEXT_SIZE, 600), y, 600) + DESCENT;
      bands.push({ y, y2: y });
    }
    group = row.group;
    const labels = wrapText(row.label, columns.labelLimit, TEXT_SIZE);
    const firstBaseline = y + LINE_HEIGHT;
    const value = { y: firstBaseline, text: row.figure.text, align: 'left', weight: 400, x: columns.valueX(row.figure.text) } as const;
    if (variant === 'wide') {
      const top = bands.pop()?.y ?? 0;
      y = placeLines(texts, labels, y, 400) + ROW_PADDING;
      bands.push({ y: top, y2: y });
      texts.push(value);
      marks.push({ y: firstBaseline - HALF_X_HEIGHT, row });
    } else {
      const besideLabel = textWidth(labels.at(-1) ?? '', TEXT_SIZE) + GAP <= value.x;
      y = placeLines(texts, labels, y, 400);
      if (!besideLabel) y += LINE_HEIGHT;
      texts.push({ ...value, y });
      marks.push({ y: y + (STRIP_PADDING + STRIP_HEIGHT) / 2, row });
      bands.push({ y: y + STRIP_PADDING, y2: y + STRIP_HEIGHT });
      y += STRIP_HEIGHT + ROW_PADDING / 2;
    }
  }
  const height = y;
  const shifted = texts.map((text) => ({ ...text, x: text.x - columns.plotLeft }));
  const tall = height > TALL;
  const toPx = (value: number) => ((value - axis.domain[0]) / (axis.domain[1] - axis.domain[0])) * plotWidth;
  if (tall) for (const tick of axis.ticks) shifted.push({ x: toPx(tick), y: -8, text: tickText(tick), align: 'center', weight: 400 });
  shifted.push({ x: plotWidth, y: height + AXIS_HEIGHT + LINE_HEIGHT, text: axisTitle, align: 'right', weight: 400 });

  return {
    width: plotWidth,
    height,
    padding: {
      left: columns.plotLeft,
      right: CHART_WIDTH[variant] - columns.plotRight,
      top: tall ? AXIS_HEIGHT : DESCENT,
      bottom: AXIS_HEIGHT + LINE_HEIGHT + DESCENT + 1,
    },
    params: { low: axis.domain[0], high: axis.domain[1], marks: axis.ticks },
    data: {
      grid: bands.flatMap((band) => axis.ticks.filter((tick) => tick !== 0).map((value) => ({ value, ...band }))),
      zero: bands.map((band) => ({ value: 0, ...band })),
      intervals: marks.flatMap(({ y, row: { figure } }) => (figure.interval ? [{ y, low: figure.interval.low, high: figure.interval.high }] : [])),
      ends: marks.flatMap(({ y, row: { figure } }) => (figure.interval ? [{ y, value: figure.interval.low }, { y, value: figure.interval.high }] : [])),
      points: marks.flatMap(({ y, row: { figure } }) => (figure.interval ? [{ y, value: figure.value }] : [])),
      bare: marks.flatMap(({ y, row: { figure } }) => (figure.interval ? [] : [{ y, value: figure.value }])),
      lines: lines.map(({ x, x2, y }) => ({ x: x - columns.plotLeft, x2: x2 - columns.plotLeft, y })),
      texts: shifted,
    },
  };
}

/** Adds lines of text under each other from `top`; gives the baseline of the last. */
function placeLines(texts: FreeText[], lines: readonly string[], top: number, weight: 400 | 600): number {
  lines.forEach((text, i) => texts.push({ x: 0, y: top + (i + 1) * LINE_HEIGHT, text, align: 'left', weight }));
  return top + lines.length * LINE_HEIGHT;
}

function layOutColumns(rows: readonly EstimateRow[], variant: Variant): Columns {
  const texts = rows.map(({ figure }) => figure.text);
  const lead = Math.max(...texts.map(leadWidth));
  const width = lead + Math.max(...texts.map((text) => textWidth(text, TEXT_SIZE) - leadWidth(text)));
  const total = CHART_WIDTH[variant];
  const valueX = (text: string) => total - width + lead - leadWidth(text);
  // half of the widest tick label may stand out on either side
  const edge = Math.max(PLOT_EDGE, ...rows.map(({ figure }) => textWidth(tickText(Math.round(figure.interval?.high ?? figure.value)), TEXT_SIZE) / 2 + 4));
  if (variant === 'narrow') return { plotLeft: edge, plotRight: total - edge, valueX, labelLimit: total };
  const widest = Math.max(...rows.map(({ label }) => Math.min(WIDEST_LABEL, textWidth(label, TEXT_SIZE))));
  return { plotLeft: Math.ceil(widest) + GAP, plotRight: total - Math.max(width + GAP, edge), valueX, labelLimit: Math.ceil(widest) };
}

/** Width of what stands before ' ± ', where texts line up; of the whole text where there is none. */
function leadWidth(text: string): number {
  const at = text.indexOf(' ± ');
  return textWidth(at === -1 ? text : text.slice(0, at), TEXT_SIZE);
}
