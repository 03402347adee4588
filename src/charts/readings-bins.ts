import { extent, tickStep } from 'd3-array';
import type { ReadingsInput } from './readings-input.ts';

/** Beyond this, single dots merge into a smear and the drawing grows without telling more. */
export const MOST_DOTS = 400;
const COLUMNS = 36;
const ROWS = 20;

/** Size of the fields into which many readings are counted. */
export interface BinSize {
  /** Readings that follow each other. */
  readonly readings: number;
  readonly latencyMs: number;
}

/** Undefined where every reading gets its own dot. */
export function binSize(readings: ReadingsInput['readings']): BinSize | undefined {
  if (readings.length <= MOST_DOTS) return undefined;
  const [low = 0, high = 0] = extent(readings, ({ latencyMs, excluded }) =>
    excluded === undefined ? latencyMs : undefined,
  );
  return { readings: niceAtLeast(readings.length / COLUMNS), latencyMs: high > low ? tickStep(low, high, ROWS) : 1 };
}

/** Middle of the bin in which a value lies. */
export function binCentre(value: number, size: number): number {
  return (Math.floor(value / size) + 0.5) * size;
}

function niceAtLeast(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return ([1, 2, 5].find((step) => step * power >= value) ?? 10) * power;
}
