import { runLikelihoods } from '../../analysis/estimate.ts';
import type { CountedClips, SessionClips } from '../../analysis/learn-variation.ts';
import type { Bench, Session } from '../../model/bench.ts';
import { intervalMs } from '../../model/rate.ts';
import { configurationId } from '../configuration.ts';
import { lookup } from '../lookup.ts';
import { countedReadings, sessionInput } from '../session-input.ts';

/** `runLikelihoods`, or one that remembers. */
export type LikelihoodEstimator = typeof runLikelihoods;

/** What a session tells of variation: one body, chain and condition, one day. */
export function sessionClips(
  session: Session,
  bench: Bench,
  likelihoods: LikelihoodEstimator = runLikelihoods,
): SessionClips {
  const find = lookup(bench);
  return {
    ...placeOf(session, bench),
    frameMs: intervalMs(session.rate),
    clips: likelihoods(sessionInput(session, find)),
  };
}

/** The same without its readings' likelihoods, which take a while: enough to count repeats. */
export function clipCount(session: Session, bench: Bench): CountedClips {
  const runs = new Set(countedReadings(session).map(({ run }) => run));
  return { ...placeOf(session, bench), clips: [...runs] };
}

/** The beginnings of the checksums of a session's two files: readings, then what was measured. */
export function digestOfSession({ readingsFile, file }: Session): string {
  return [readingsFile, file].map(({ sha256 }) => sha256.slice(0, 12)).join(' ');
}

function placeOf(session: Session, bench: Bench): Pick<SessionClips, 'body' | 'condition' | 'day'> {
  return { body: session.body, condition: configurationId(session, bench, lookup(bench)), day: session.date };
}
