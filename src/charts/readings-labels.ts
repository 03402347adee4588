import type { PlacedText } from './chart.ts';
import { placeInRun, type RunSpan } from './readings-runs.ts';
import { textWidth } from './text-width.ts';
import { TEXT_SIZE } from './theme.ts';

type Label = Pick<PlacedText, 'text' | 'x' | 'align'>;

const GAP = 8;
/** A label may stand out of its run by this much, into the gaps beside it. */
const OVERHANG = 8;
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500]
  .flatMap((step) => [step, step * 1e3, step * 1e6])
  .sort((a, b) => a - b);

/**
 * `run 1`, `run 2`, or one `run` at the left and the numbers alone where no more fits; none stands out beyond
 * `rightEdge`.
 */
export function labelRuns(spans: readonly RunSpan[], rightEdge: number): Label[] {
  const inFull = spans.map(({ run, left, right }) => centred(`run ${String(run)}`, (left + right) / 2, rightEdge));
  const fits = inFull.every(
    ({ text }, i) => textWidth(text, TEXT_SIZE) <= (spans[i]?.right ?? 0) - (spans[i]?.left ?? 0) + OVERHANG,
  );
  if (fits) return inFull;
  const numbers = spans.map(({ run, left, right }) => centred(String(run), (left + right) / 2, rightEdge));
  return [{ text: 'run', x: -GAP, align: 'right' }, ...apart(numbers)];
}

/** Numbers of readings at round steps, and of the first; none stands out beyond `rightEdge`. */
export function labelNumbers(spans: readonly RunSpan[], count: number, rightEdge: number): Label[] {
  const perReading = spans.reduce((sum, { left, right }) => sum + right - left, 0) / count;
  const room = textWidth(String(count), TEXT_SIZE) + 2 * GAP;
  const step = STEPS.find((candidate) => candidate * perReading >= room) ?? count;
  const isLabelled = (number: number) => number % step === 0 || (number === 1 && step > 2);
  const labels = spans.flatMap((span) =>
    span.indices.flatMap((i, k) => (isLabelled(i + 1) ? [centred(String(i + 1), placeInRun(span, k), rightEdge)] : [])),
  );
  return apart(labels);
}

/** Centred on x, or as near to it as the right edge allows. */
function centred(text: string, x: number, rightEdge: number): Label {
  return { text, x: Math.min(x, rightEdge - textWidth(text, TEXT_SIZE) / 2), align: 'center' };
}

/** Leaves out each label that would come too near to the one before it. */
function apart(labels: readonly Label[]): Label[] {
  let free = -Infinity;
  return labels.filter(({ text, x }) => {
    const half = textWidth(text, TEXT_SIZE) / 2;
    if (x - half < free) return false;
    free = x + half + GAP;
    return true;
  });
}
