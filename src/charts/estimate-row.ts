import type { Figure } from '../register/register.ts';
import type { PlotRow } from './row-plot-input.ts';

export interface EstimateRow {
  readonly label: string;
  readonly figure: Figure;
  /** Heading under which the row stands, e.g. the body; rows of one group follow each other. */
  readonly group?: string;
  /** The place of the body that the figure is of. */
  readonly place?: number | undefined;
}

export interface EstimatesInput {
  /** Unique on the page: letters, digits, `-`, `_`. */
  readonly id: string;
  /** In the order in which they are drawn, top to bottom. */
  readonly rows: readonly EstimateRow[];
  /** Says what the figures are; otherwise the figures' own label. */
  readonly title?: string;
  /** The axis goes up to it at least, so that several charts have one axis. */
  readonly reach?: number;
  /** Whether the axis may have the figures' own range, where one from zero would be blank for the better half. */
  readonly ownRange?: boolean;
  /** Values to mark with a dashed line each, in the figures' unit, and what they are: said under the axis. */
  readonly marked?: { readonly values: readonly number[]; readonly note: string };
}

/** The row of a figure: its point, its interval, its published text. */
export function plotRow({ label, group, place, figure: { text, value, interval } }: EstimateRow): PlotRow {
  return {
    label,
    text,
    value,
    ...(group === undefined ? {} : { group }),
    ...(place === undefined ? {} : { place }),
    ...(interval ? { interval } : {}),
  };
}

/** One axis holds figures of one unit, and intervals of one coverage. */
export function refuseMixtures(id: string, rows: readonly EstimateRow[]): void {
  if (rows.length === 0) throw new RangeError(`chart '${id}' has no figures: give it at least one`);
  const units = new Set(rows.map(({ figure }) => figure.unit));
  if (units.size > 1)
    throw new RangeError(`chart '${id}' mixes the units ${[...units].join(', ')}: one axis has one unit`);
  const levels = new Set(rows.flatMap(({ figure }) => figure.interval?.level ?? []));
  if (levels.size > 1)
    throw new RangeError(`chart '${id}' mixes intervals of ${[...levels].join(', ')}: use one coverage`);
}
