export interface Range {
  readonly low: number;
  readonly high: number;
}

/** One row: a label at the left, a text at the right, and its marks on the common axis. */
export interface PlotRow {
  readonly label: string;
  /** Heading under which the row stands; rows of one group follow each other. */
  readonly group?: string;
  readonly text: string;
  /** The place of the body that it is of, which gives it its colour and its mark. */
  readonly place?: number;
  /** A point: filled where it has an interval, an open diamond where it has none. */
  readonly value?: number;
  /** An uncertainty. */
  readonly interval?: Range;
  /** Limits that are no uncertainty: drawn as `[ ]`. */
  readonly bracket?: Range;
}

/** Rows of marks on one horizontal axis that holds zero, or is broken and says so. */
export interface RowPlot {
  /** Unique on the page: letters, digits, `-`, `_`. */
  readonly id: string;
  readonly rows: readonly PlotRow[];
  readonly axisTitle: string;
  /** A stretch of the axis to set off, such as a margin. */
  readonly shaded?: Range;
  /** The axis goes up to it at least. */
  readonly reach?: number;
  /** The axis has the range of the rows, with a mark where it is broken off, in place of one from zero. */
  readonly isBroken?: boolean;
  /** Values of the axis to mark with a dashed line each. */
  readonly marked?: readonly number[];
  /** Under the axis. */
  readonly notes?: readonly string[];
  readonly title: string;
  readonly description: string;
}
