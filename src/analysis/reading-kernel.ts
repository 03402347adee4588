/**
 * How likely one reading is for every pipeline delay: the frame that ought to be visible, an older one shown a second time,
 * or a stamp that says nothing.
 *
 *     (1 − ε) · [ (1 − ρ)·V(y + ρ·T_d) + ρ·V(y − T_d + ρ·T_d) ]  +  ε/200,    y = x − L
 *
 * V is `visibility.ts`. Frames that are repeated with probability ρ make the picture older by ρ·T_d on the mean: L is
 * counted with that, so that it stays the mean delay. A misread (probability ε) is taken to be as likely to give any of two
 * hundred stamps, about as many as differ from the true one in a digit of either timer: a judgement, no source.
 */
import { visibility, type Shape } from './visibility.ts';

export interface ReadingKernel {
  /** Value at y = highMs − k·stepMs; 0 beyond both ends. */
  readonly values: Float64Array;
  readonly highMs: number;
  /** What a misread contributes for every delay. */
  readonly floor: number;
}

export interface KernelShape extends Shape {
  /** T_d. */
  readonly frameMs: number;
  /** ρ. */
  readonly repeat: number;
  /** ε. */
  readonly misread: number;
}

const STAMPS = 200;
/** Standard deviations beyond which a normal distribution is cut: misreads are likelier there. */
const TAIL = 4.5;

/** A table wherever V is not zero. */
export function readingKernel(shape: KernelShape, stepMs: number): ReadingKernel {
  const { frameMs, standsMs, windowMs, jitterMs, repeat, misread } = shape;
  const shiftMs = repeat * frameMs;
  const highMs = standsMs + (repeat > 0 ? frameMs : 0) + TAIL * jitterMs + stepMs;
  const lowMs = -windowMs - shiftMs - TAIL * jitterMs - stepMs;
  const count = Math.ceil((highMs - lowMs) / stepMs) + 2;
  const values = new Float64Array(count);
  const at = (k: number): number => {
    const y = highMs - k * stepMs + shiftMs;
    const first = visibility(y, shape);
    return (1 - misread) * (repeat > 0 ? (1 - repeat) * first + repeat * visibility(y - frameMs, shape) : first);
  };
  // a smooth table is filled linearly between entries an eighth of σ apart: it errs by less than 1/500 of its height
  const stride = Math.max(1, Math.floor(jitterMs / stepMs / 8));
  for (let k = 0; k < count; k += stride) values[k] = at(k);
  if (stride > 1) fillBetween(values, stride);
  return { values, highMs, floor: misread / STAMPS };
}

/** Linear between every so many entries; beyond the last there is nothing. */
function fillBetween(values: Float64Array, stride: number): void {
  for (let k = 0; k + stride < values.length; k += stride) {
    const [here, slope] = [values[k]!, (values[k + stride]! - values[k]!) / stride];
    for (let d = 1; d < stride; d += 1) values[k + d] = here + slope * d;
  }
}
