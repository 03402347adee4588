import { rollup } from 'd3-array';
import { placeOnAxis, type Axis } from './axis.ts';
import { binCentre, binSize } from './readings-bins.ts';
import { placeInRun, type RunSpan } from './readings-runs.ts';
import type { ReadingsInput } from './readings-input.ts';

/** What the marks of a readings chart are placed by. */
export interface Plot {
  readonly readings: ReadingsInput['readings'];
  readonly spans: readonly RunSpan[];
  readonly axis: Axis;
  readonly height: number;
  /** Where a cross stands that has no latency, below the plot. */
  readonly noValueY: number;
}

export interface Dot {
  /** In px; the latency finds its own place on the axis. */
  readonly x: number;
  readonly latencyMs: number;
  readonly area: number;
  readonly opacity: number;
}

export interface Cross {
  readonly x: number;
  readonly y: number;
  readonly shape: string;
}

const DOT_AREA = 22;
const SMALL_DOT_AREA = 11;
/** Nearer to each other than this, dots are small. */
const DENSE_STEP = 4;
const SMALLEST_AREA = 1.5;
/** Dots that stand for many let an excluded reading's cross show through. */
const FIELD_OPACITY = 0.5;
const EDGE_INSET = 5;
/** With its centre at 0,0 and a half-width of 1. */
const CROSS = 'M-1,-1L1,1M-1,1L1,-1';

/** A dot for every reading that counts or, beyond `MOST_DOTS`, for every field that holds some. */
export function placeDots({ readings, spans, axis, height }: Plot): Dot[] {
  const counted = spans.map((span) => ({
    span,
    places: span.indices.flatMap((i, k) => {
      const reading = readings[i];
      return reading?.excluded === undefined && reading?.latencyMs !== undefined
        ? [{ k, latencyMs: reading.latencyMs }]
        : [];
    }),
  }));
  const bins = binSize(readings);
  if (!bins) {
    const area = stepOf(spans) < DENSE_STEP ? SMALL_DOT_AREA : DOT_AREA;
    return counted.flatMap(({ span, places }) =>
      places.map(({ k, latencyMs }) => ({ x: placeInRun(span, k), latencyMs, area, opacity: 1 })),
    );
  }
  const fields = counted.flatMap(({ span, places }) => {
    const columns = rollup(
      places,
      (all) => all.length,
      ({ k }) => Math.floor(k / bins.readings),
      ({ latencyMs }) => binCentre(latencyMs, bins.latencyMs),
    );
    return [...columns].flatMap(([column, rows]) => {
      const x = placeInRun(span, column * bins.readings, bins.readings);
      return [...rows].map(([latencyMs, number]) => ({ x, latencyMs, number }));
    });
  });
  const fieldHeight = placeOnAxis(axis, axis.domain[0] + bins.latencyMs, height);
  const side = Math.min(stepOf(spans) * bins.readings, fieldHeight);
  const most = Math.max(...fields.map(({ number }) => number));
  // vega's area of a circle is that of its bounding square
  return fields.map(({ x, latencyMs, number }) => ({
    x,
    latencyMs,
    area: Math.max(SMALLEST_AREA, (side ** 2 * number) / most),
    opacity: FIELD_OPACITY,
  }));
}

/** A cross for every excluded reading; a triangle at the edge where it lies off the scale; one per field. */
export function placeCrosses({ readings, spans, axis, height, noValueY }: Plot): Cross[] {
  const bins = binSize(readings);
  const [low, high] = axis.domain;
  const shapeAndY = (latencyMs: number | undefined): Omit<Cross, 'x'> => {
    if (latencyMs === undefined) return { y: noValueY, shape: CROSS };
    if (latencyMs > high) return { y: EDGE_INSET, shape: 'triangle-up' };
    if (latencyMs < low) return { y: height - EDGE_INSET, shape: 'triangle-down' };
    return {
      y: height - placeOnAxis(axis, bins ? binCentre(latencyMs, bins.latencyMs) : latencyMs, height),
      shape: CROSS,
    };
  };
  const crosses = spans.flatMap((span) =>
    span.indices.flatMap((i, k) => {
      const reading = readings[i];
      if (reading?.excluded === undefined) return [];
      const x = bins
        ? placeInRun(span, Math.floor(k / bins.readings) * bins.readings, bins.readings)
        : placeInRun(span, k);
      return [{ x, ...shapeAndY(reading.latencyMs) }];
    }),
  );
  return [...new Map(crosses.map((cross) => [`${String(cross.x)} ${String(cross.y)}`, cross])).values()];
}

/** Width that one reading takes, the same in all runs. */
function stepOf([span]: readonly RunSpan[]): number {
  return span ? (span.right - span.left) / span.indices.length : 0;
}
