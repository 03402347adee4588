export interface PrecisionLine {
  /** How the readings are taken: `1 run, 0.3 s apart`. */
  readonly label: string;
  /** In ascending number of readings, each half-width with its published text. */
  readonly points: readonly { readonly readings: number; readonly halfWidth: number; readonly text: string }[];
}

export interface PrecisionInput {
  /** Unique on the page: letters, digits, `-`, `_`. */
  readonly id: string;
  readonly lines: readonly PrecisionLine[];
  /** Of the half-widths. */
  readonly unit: string;
  readonly title?: string;
}
