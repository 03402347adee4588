import type { SessionFigures } from '../session-figures.ts';
import { countedRuns, type CountedReading } from '../session-input.ts';
import { roundTo } from '../text.ts';
import type { Rule } from './rule.ts';

/** Probability from which a stamp is named as a likely misread. */
const LIKELY = 0.5;

/**
 * Stamps that are likelier to be misread than to be what the rates, jitter and repeated frames of this session give.
 * They hardly move the total (`src/analysis/reading-kernel.ts`). Nothing is removed.
 */
export const misread: Rule = (compiled) => {
  const found = likelyMisreads(compiled);
  if (found.length === 0) return undefined;
  const named = found.map(({ line, latencyMs, probability }) => {
    const percent = roundTo(100 * probability, probability > 0.995 ? 1 : 0);
    return `line ${line} (${roundTo(latencyMs, 0)} ms, probability ${percent} %)`;
  });
  return {
    severity: 'caution',
    message: `Most likely misread: ${named.join(', ')}. So unlikely a reading hardly moves the total.`,
    hint: 'Look at the frame again. If it was misread, correct it or say so under exclude; if not, leave it.',
  };
};

/** The readings so named, with their probabilities. */
export function likelyMisreads({
  session,
  estimate,
}: SessionFigures): readonly (CountedReading & { probability: number })[] {
  return countedRuns(session).flatMap((run, r) =>
    run.flatMap((reading, i) => {
      const probability = estimate.diagnostics.misreads[r]?.[i] ?? 0;
      return probability >= LIKELY ? [{ ...reading, probability: Math.min(probability, 0.999) }] : [];
    }),
  );
}
