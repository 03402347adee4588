import { CLIPS_ENOUGH } from '../analysis/plan.ts';
import type { Design } from '../analysis/precision.ts';
import { describeDesign } from '../planning/plan-text.ts';
import { plural } from '../register/provenance.ts';

/** What the plan asked for, and what is still to be done of it. `counts` are the readings that count, clip by clip. */
export function describeProgress(counts: readonly number[], plan: Design | undefined): string {
  const done = `${plural(
    counts.reduce((sum, count) => sum + count, 0),
    'reading',
  )} in ${plural(counts.length, 'clip')}`;
  if (plan === undefined)
    return `${done}. The session’s file states no plan; ${plural(CLIPS_ENOUGH, 'clip')} make up for rates that stay in step within one.`;
  const asked = `Planned: ${describeDesign(plan)}.`;
  const [last, short] = [counts.at(-1) ?? plan.readings, counts.findIndex((count) => count < plan.readings)];
  if (last < plan.readings) return `${done}. ${asked} In this clip ${plural(plan.readings - last, 'reading')} more.`;
  if (counts.length < plan.runs) return `${done}. ${asked} ${plural(plan.runs - counts.length, 'clip')} more.`;
  return short >= 0
    ? `${done}. ${asked} Clip ${short + 1} has ${plural(counts[short] ?? 0, 'reading')}.`
    : `${done}: all that was planned (${describeDesign(plan)}).`;
}
