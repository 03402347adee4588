/** What a page gets for one chart: the same drawing for a wide and for a narrow column, and its words. */
export interface Chart {
  /** Unique on its page, and the same in every build: the place of the chart. */
  readonly id: string;
  /** SVG for columns of about 640 px and more, and for print. */
  readonly wide: string;
  /** SVG for narrower columns. `src/styles/chart.css` shows one of the two. */
  readonly narrow: string;
  readonly title: string;
  /** The text alternative: what is shown, over what range, and the main comparison. */
  readonly description: string;
}

export type Variant = 'wide' | 'narrow';

/** Width of the drawing in px; at these widths one unit of the drawing is one CSS pixel. */
export const CHART_WIDTH: Readonly<Record<Variant, number>> = { wide: 680, narrow: 330 };

/** Where and how a piece of text stands, in px from the top left corner of the plotting area. */
export interface PlacedText {
  readonly x: number;
  /** The baseline. */
  readonly y: number;
  readonly text: string;
  readonly align: 'left' | 'center' | 'right';
  readonly weight: 400 | 600;
}
