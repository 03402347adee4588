import { intervalAt } from '../analysis/error-tail.ts';
import type { RateFloor } from '../analysis/rate-floor.ts';
import { predictRateLaw, type RateLaw } from '../analysis/rate-law.ts';

/** The fitted line with its band, at one frame interval. */
export interface CurvePoint {
  readonly intervalMs: number;
  readonly fitted: number;
  readonly low: number;
  readonly high: number;
}

const POINTS = 41;

/** The law in ms, from an interval of zero, where the fixed part is seen, to the slowest rate measured. */
export function lawInMs(law: RateLaw, floor: RateFloor): readonly CurvePoint[] {
  return sample(0, longest(law), floor, (intervalMs) => pointOf(law, floor, intervalMs));
}

/** The law in frames, from the fastest rate to the slowest: what is fixed in ms counts more frames the shorter they are. */
export function lawInFrames(law: RateLaw, floor: RateFloor, fastestIntervalMs: number): readonly CurvePoint[] {
  return sample(fastestIntervalMs, longest(law), floor, (intervalMs) => {
    const { fitted, low, high } = pointOf(law, floor, intervalMs);
    return { intervalMs, fitted: fitted / intervalMs, low: low / intervalMs, high: high / intervalMs };
  });
}

function pointOf(law: RateLaw, floor: RateFloor, intervalMs: number): CurvePoint {
  if (floor.kind === 'floor' && intervalMs <= floor.breakIntervalMs) {
    return { intervalMs, fitted: floor.floorMs, low: floor.floorInterval.low, high: floor.floorInterval.high };
  }
  const at = predictRateLaw(law, intervalMs);
  const { low, high } = intervalAt(at, law.level);
  return { intervalMs, fitted: at.value, low, high };
}

function longest({ points }: RateLaw): number {
  return Math.max(...points.map(({ intervalMs }) => intervalMs));
}

/** Evenly, and at the bend. */
function sample(
  from: number,
  to: number,
  floor: RateFloor,
  at: (intervalMs: number) => CurvePoint,
): readonly CurvePoint[] {
  const places = Array.from({ length: POINTS }, (_, i) => from + ((to - from) * i) / (POINTS - 1));
  const bend =
    floor.kind === 'floor' && floor.breakIntervalMs > from && floor.breakIntervalMs < to ? [floor.breakIntervalMs] : [];
  return [...places, ...bend].sort((a, b) => a - b).map(at);
}
