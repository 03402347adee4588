import { readingRangeMs } from '../../../analysis/phase-errors.ts';
import type { Session } from '../../../model/bench.ts';
import type { Lookup } from '../../lookup.ts';
import { plural } from '../../provenance.ts';
import { chainOf, countedRuns, type CountedReading } from '../../session-input.ts';
import { describeSignificant } from '../../text.ts';
import { likelyMisreads } from '../misread.ts';
import type { Rule } from '../rule.ts';

/** Rows of a run that may be named as misread; with more, it is the rates that are wrong, or the delay that varies. */
const MOST = 0.25;

/**
 * Readings of one run lie within `readingRangeMs` of each other, whatever the phases are. A row without which the run
 * does so was most likely misread; where the estimate itself says so of it, that is said once.
 */
export const beyondRange: Rule = (compiled) => {
  const { session, find } = compiled;
  const rangeMs = readingRangeMs(chainOf(session, find), session.method, session.resolutionMs ?? 0);
  const said = new Set(likelyMisreads(compiled).map(({ line }) => line));
  const rows = beyondRangeReadings(session, find).filter(({ line }) => !said.has(line));
  if (rows.length === 0) return undefined;
  const named = rows.map(({ line, latencyMs }) => `line ${line} (${describeSignificant(latencyMs, 3, 'ms')})`);
  return {
    severity: 'warning',
    message: `${plural(rows.length, 'reading')} lie further from the others of the clip than the rates of the rig allow, ${describeSignificant(rangeMs, 3, 'ms')} from lowest to highest: ${named.join(', ')}.`,
    hint: 'Look at the film again: a mistyped digit is the usual cause. Correct it, or say under exclude why it does not count.',
  };
};

/** Readings that are further from the others of their clip than phases can put them. */
export function beyondRangeReadings(session: Session, find: Lookup): readonly CountedReading[] {
  const rangeMs = readingRangeMs(chainOf(session, find), session.method, session.resolutionMs ?? 0);
  return countedRuns(session).flatMap((run) => outside(run, rangeMs));
}

/** The few readings without which the others of a run keep within the range; none where it takes many. */
function outside(run: readonly CountedReading[], rangeMs: number): readonly CountedReading[] {
  const sorted = run.toSorted((a, b) => a.latencyMs - b.latencyMs);
  const out: CountedReading[] = [];
  while (sorted.length > 2 && at(sorted, -1) - at(sorted, 0) > rangeMs) {
    const middle = at(sorted, Math.floor(sorted.length / 2));
    const odd = at(sorted, -1) - middle > middle - at(sorted, 0) ? sorted.pop() : sorted.shift();
    if (odd !== undefined) out.push(odd);
  }
  return out.length <= Math.max(1, MOST * run.length) ? out.toSorted((a, b) => a.line - b.line) : [];
}

function at(sorted: readonly CountedReading[], index: number): number {
  return sorted.at(index)?.latencyMs ?? 0;
}
