import type { Figure } from '../register/register.ts';

export interface RatePoint {
  /** The name of the rate: `23.976`. */
  readonly rate: string;
  readonly intervalMs: number;
  /** In ms, or in frames: one of the two in all points of a chart. */
  readonly figure: Figure;
}

/** The fitted line at one frame interval, in the unit of the points; `low` and `high` bound its band. */
export interface FittedPoint {
  readonly intervalMs: number;
  readonly fitted: number;
  readonly low?: number;
  readonly high?: number;
}

export interface RateLawInput {
  /** Unique on the page: letters, digits, `-`, `_`. */
  readonly id: string;
  readonly points: readonly RatePoint[];
  /** In ascending order of the interval; in ms from 0, so that the fixed part is seen. */
  readonly line: readonly FittedPoint[];
  /** The law as published: `61.2 ms + 2.49 frames`. */
  readonly lineText: string;
  /** Coverage of the band. */
  readonly level?: number;
  readonly title?: string;
  /** The place of the body among all: gives the points their colour and mark. */
  readonly place?: number;
}

/** The unit of the vertical axis: that of the points. */
export function unitOf(points: readonly RatePoint[]): 'ms' | 'frames' {
  return points[0]?.figure.unit === 'frames' ? 'frames' : 'ms';
}
