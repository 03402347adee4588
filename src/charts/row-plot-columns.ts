import type { Axis } from './axis.ts';
import { CHART_WIDTH, type Variant } from './chart.ts';
import type { PlotRow } from './row-plot-input.ts';
import { textWidth } from './text-width.ts';
import { TEXT_GAP, TEXT_SIZE } from './theme.ts';

const WIDEST_LABEL = 230;
const PLUS_MINUS = ' ± ';
/** Between half a tick label and the edge of the drawing. */
const EDGE = 4;

/** The columns of a row plot, in px from the left edge of the drawing. */
export interface Columns {
  readonly plotLeft: number;
  readonly plotRight: number;
  /** Widest that a line of a row's label may be. */
  readonly labelLimit: number;
  /** Where a row's published text starts, so that all line up on ' ± '. */
  readonly valueX: (text: string) => number;
}

/** Wide: label, plot, value side by side. Narrow: the plot has the whole width, under label and value. */
export function layOutColumns(rows: readonly PlotRow[], axis: Axis, variant: Variant): Columns {
  const total = CHART_WIDTH[variant];
  const texts = rows.map(({ text }) => text);
  const lead = Math.max(...texts.map(leadWidth));
  const valueWidth = lead + Math.max(...texts.map((text) => textWidth(text, TEXT_SIZE) - leadWidth(text)));
  const valueX = (text: string) => total - valueWidth + lead - leadWidth(text);
  // half of the last tick label stands out at either end
  const edge = axis.labelWidth / 2 + EDGE;
  if (variant === 'narrow') return { plotLeft: edge, plotRight: total - edge, labelLimit: total, valueX };
  const labelLimit = Math.ceil(
    Math.max(...rows.map(({ label }) => Math.min(WIDEST_LABEL, textWidth(label, TEXT_SIZE)))),
  );
  return {
    plotLeft: labelLimit + TEXT_GAP,
    plotRight: total - Math.max(valueWidth + TEXT_GAP, edge),
    labelLimit,
    valueX,
  };
}

/** Width of what stands before ' ± '; of the whole text where there is none. */
function leadWidth(text: string): number {
  const at = text.indexOf(PLUS_MINUS);
  return textWidth(at === -1 ? text : text.slice(0, at), TEXT_SIZE);
}
