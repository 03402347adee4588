import { extent } from 'd3-array';
import { axisAround, placeOnAxis, type Axis } from './axis.ts';
import { CHART_WIDTH, type PlacedText, type Variant } from './chart.ts';
import { placeCrosses, placeDots, type Plot } from './readings-marks.ts';
import { labelNumbers, labelRuns } from './readings-labels.ts';
import { layOutRuns } from './readings-runs.ts';
import { excludedNote, type ReadingsWords } from './readings-text.ts';
import type { ReadingsInput } from './readings-input.ts';
import type { Drawing } from './render.ts';
import { textWidth, wrapText } from './text-width.ts';
import { DESCENT, HALF_X_HEIGHT, LINE_HEIGHT, TEXT_SIZE } from './theme.ts';

const HEIGHT: Readonly<Record<Variant, number>> = { wide: 230, narrow: 210 };
const TICK_SPACING = 34;
const LABEL_GAP = 8;
/** Below the plot: crosses of readings without a value. */
const NO_VALUE_STRIP = 16;

/** Places every mark and every text of a readings chart, for one variant. */
export function layOutReadings(
  { readings, total }: ReadingsInput,
  words: ReadingsWords,
  variant: Variant,
): Omit<Drawing, 'spec'> {
  const whole = CHART_WIDTH[variant];
  const height = HEIGHT[variant];
  const axis = axisAround(
    latencyRange(readings, total.interval ? [total.interval.low, total.interval.high] : [total.value, total.value]),
    height,
    TICK_SPACING,
  );

  const left = Math.ceil(axis.labelWidth) + LABEL_GAP;
  const right =
    variant === 'wide'
      ? Math.ceil(Math.max(...words.totalLabel.map((line) => textWidth(line, TEXT_SIZE)))) + LABEL_GAP
      : 1;
  const width = whole - left - right;
  const spans = layOutRuns(readings, width);
  const plot: Plot = { readings, spans, axis, height, noValueY: height + NO_VALUE_STRIP / 2 + 1 };
  const crosses = placeCrosses(plot);

  const texts: PlacedText[] = [];
  const put = (text: string, x: number, y: number, align: PlacedText['align'] = 'left') =>
    texts.push({ x, y, text, align, weight: 400 });

  // above the plot, upwards: the runs, the total where there is no room beside it, the axis title
  let top = -LABEL_GAP - HALF_X_HEIGHT;
  if (spans.length > 1) {
    for (const { text, x, align } of labelRuns(spans, width + right)) put(text, x, top, align);
    top -= LINE_HEIGHT;
  }
  if (variant === 'narrow') {
    put(words.totalLabel.join(', '), -left, top);
    top -= LINE_HEIGHT;
  }
  put('Latency, ms', -left, top);

  if (variant === 'wide') {
    const totalY = height - placeOnAxis(axis, total.value, height);
    const middle = Math.min(Math.max(totalY, LINE_HEIGHT), height - LINE_HEIGHT);
    words.totalLabel.forEach((line, i) =>
      put(line, width + LABEL_GAP, middle + HALF_X_HEIGHT + (i - 0.5) * LINE_HEIGHT),
    );
  }

  // below the plot, downwards: readings without a value, numbers, the axis title, the notes
  let bottom = height + (crosses.some(({ y }) => y > height) ? NO_VALUE_STRIP : 0) + LINE_HEIGHT + 2;
  for (const { text, x, align } of labelNumbers(spans, readings.length, width + right)) put(text, x, bottom, align);
  bottom += LINE_HEIGHT;
  put('reading, in the order taken', width, bottom, 'right');
  for (const note of [...words.notes, ...excludedNote(readings, axis.domain)]) {
    bottom += DESCENT;
    for (const line of wrapText(note, whole, TEXT_SIZE)) {
      bottom += LINE_HEIGHT;
      put(line, -left, bottom);
    }
  }

  return {
    width,
    height,
    padding: { left, right, top: TEXT_SIZE - top, bottom: bottom - height + DESCENT },
    params: { low: axis.domain[0], high: axis.domain[1], marks: axis.ticks, tickFormat: axis.format },
    data: {
      band: total.interval ? [{ low: total.interval.low, high: total.interval.high }] : [],
      total: [{ value: total.value }],
      separators: spans.slice(1).map((span, i) => ({ x: ((spans[i]?.right ?? 0) + span.left) / 2 })),
      dots: placeDots(plot),
      crosses,
      texts,
    },
  };
}

/** What the axis must hold: all that counts, and excluded readings no further out than the counted ones are wide. */
function latencyRange(readings: ReadingsInput['readings'], total: readonly [number, number]): Axis['domain'] {
  const [first = total[0], last = total[1]] = extent(readings, ({ latencyMs, excluded }) =>
    excluded === undefined ? latencyMs : undefined,
  );
  const [low, high] = [Math.min(first, total[0]), Math.max(last, total[1])];
  const reach = high - low;
  const [nearLow = low, nearHigh = high] = extent(readings, ({ latencyMs = NaN }) =>
    latencyMs >= low - reach && latencyMs <= high + reach ? latencyMs : undefined,
  );
  return [Math.min(low, nearLow), Math.max(high, nearHigh)];
}
