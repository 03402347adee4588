import type { Config } from 'vega-lite';

/** The site serves this font; the others stand in where it cannot be loaded. */
export const FONT_FAMILY = '"Source Sans 3", system-ui, sans-serif';

/** All text, in px at the design width: never under 12 px where the column is a little narrower. */
export const TEXT_SIZE = 13.5;
export const LINE_HEIGHT = 17;
/** From the baseline down to the end of a `p`, and up to the middle of an `x`. */
export const DESCENT = 5;
export const HALF_X_HEIGHT = 4.5;
/** Between columns of text and plot. */
export const TEXT_GAP = 18;

/** Colours come from the page, so that one drawing serves light, dark and print; each has a stand-in. */
export const COLOUR = {
  text: 'currentColor',
  ink: 'var(--ink, currentColor)',
  soft: 'var(--ink-soft, currentColor)',
  rule: 'var(--rule, #ccc)',
  accent: 'var(--accent, currentColor)',
  accent2: 'var(--accent-2, currentColor)',
  accent3: 'var(--accent-3, currentColor)',
  caution: 'var(--caution, currentColor)',
} as const;

const BODY_COLOURS = 6;
const BODY_SHAPES = ['circle', 'square', 'triangle-up', 'diamond', 'cross', 'triangle-down'] as const;

/** A body's colour and mark, by its place among all bodies: no two of 36 have both in common. */
export function bodyLook(place: number): { readonly colour: string; readonly shape: string } {
  const turn = Math.floor(place / BODY_COLOURS);
  return {
    colour: `var(--body-${String((place % BODY_COLOURS) + 1)}, currentColor)`,
    shape: BODY_SHAPES[(place + turn) % BODY_SHAPES.length] ?? 'circle',
  };
}

/** Of a mark that is of no one body. */
export const NO_BODY = { colour: COLOUR.accent, shape: 'circle' } as const;

export const CHART_CONFIG: Config = {
  aria: false,
  autosize: { type: 'none' },
  background: 'transparent',
  font: FONT_FAMILY,
  view: { stroke: null },
  axis: {
    domain: false,
    ticks: false,
    // where vega would round the grid to whole pixels, the marks stand beside it
    tickRound: false,
    translate: 0,
    title: null,
    labels: true,
    labelColor: COLOUR.text,
    labelFontSize: TEXT_SIZE,
    labelFlush: false,
    labelOverlap: false,
    labelPadding: 6,
    grid: true,
    gridColor: COLOUR.rule,
    gridWidth: 1,
  },
  text: { color: COLOUR.text, fontSize: TEXT_SIZE, baseline: 'alphabetic' },
};
