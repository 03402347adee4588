import { learnVariation } from '../../analysis/learn-variation.ts';
import { DEFAULT_VARIATION } from '../../analysis/variation.ts';
import { ANALYSIS_VERSION } from '../../analysis/version.ts';
import type { Bench } from '../../model/bench.ts';
import type { VariationStatement } from '../../model/variation-statement.ts';
import { digestOfSession, sessionClips } from './session-clips.ts';

/** What all sessions of a bench say of its variation; what single readings do stays as assumed. */
export function learnStatement(bench: Bench, date: string): VariationStatement {
  const learnt = learnVariation(bench.sessions.map((session) => sessionClips(session, bench)));
  return {
    date,
    analysis: ANALYSIS_VERSION,
    knows: learnt.knows,
    reading: DEFAULT_VARIATION.reading,
    bodies: Object.fromEntries(learnt.bodies),
    others: learnt.others,
    sessions: Object.fromEntries(bench.sessions.map((session) => [session.id, digestOfSession(session)])),
  };
}
