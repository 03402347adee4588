/** What an editor should know of the statement of variation: that it is missing, thin, or no longer true. */
import {
  countRepeats,
  disagreement,
  DISAGREES,
  FEWEST_REPEATS,
  levelKnown,
  type Repeats,
} from '../../analysis/learn-variation.ts';
import { varianceOf } from '../../analysis/distribution.ts';
import { gainOfRepeat } from '../../analysis/repeat-gain.ts';
import { estimateAt } from '../../analysis/level-errors.ts';
import type { Bench, Session } from '../../model/bench.ts';
import { statedOf, type VariationStatement } from '../../model/variation-statement.ts';
import type { Compilation } from '../compilation.ts';
import { plural } from '../provenance.ts';
import type { Finding } from '../register.ts';
import type { SessionFigures } from '../session-figures.ts';
import { describeCount, describeSignificant } from '../text.ts';
import { clipCount, digestOfSession, sessionClips, type LikelihoodEstimator } from './session-clips.ts';

/** As a finding names the statement, there or not. */
const WHERE = { file: 'data/variation.yaml' };
const LEARN = 'npm run variation -- --date YYYY-MM-DD, and record what it moves';

export function variationFindings({ bench, sessions, likelihoods }: Compilation): readonly Finding[] {
  if (bench.sessions.length === 0) return [];
  const repeats = countRepeats(bench.sessions.map((session) => clipCount(session, bench)));
  return [
    ...(bench.variation === undefined
      ? notLearnt(repeats)
      : [...otherBodies(bench, bench.variation), ...disagreeing(bench, bench.variation, likelihoods)]),
    ...((bench.variation?.knows ?? levelKnown(repeats)) === 'condition' ? [] : daysUnknown(repeats, sessions)),
  ];
}

/** Sessions that the statement was not learnt from, as they are now. */
function freshSessions({ sessions }: Bench, statement: VariationStatement): readonly Session[] {
  return sessions.filter((session) => statement.sessions[session.id] !== digestOfSession(session));
}

function notLearnt(repeats: Repeats): readonly Finding[] {
  if (levelKnown(repeats) === 'clips') return [];
  return [
    {
      rule: 'variation-not-learnt',
      severity: 'note',
      where: WHERE,
      message: `Nothing states how delays vary on this bench, so every figure speaks of its own clips and of no more; the sessions could tell, with ${plural(repeats.clips, 'clip')} repeated on a day and ${plural(repeats.days, 'day')} on which a condition was measured again.`,
      hint: `Let them say it: ${LEARN}.`,
    },
  ];
}

/** A body that is misspelt in the statement, or was left out of it, varies by what is stated of all others. */
function otherBodies({ bodies, sessions }: Bench, statement: VariationStatement): readonly Finding[] {
  const ids = bodies.map(({ id }) => id);
  const stated = Object.keys(statement.bodies);
  const unknown = stated.filter((id) => !ids.includes(id));
  const missing = ids.filter(
    (id) =>
      stated.length > 0 &&
      !stated.includes(id) &&
      sessions.some((session) => session.body === id && Object.hasOwn(statement.sessions, session.id)),
  );
  if (unknown.length + missing.length === 0) return [];
  const says = [
    ...unknown.map((id) => `it states sizes of ${id}, which is no body here`),
    ...missing.map((id) => `it states none of ${id}, whose sessions it was learnt from`),
  ];
  return [
    {
      rule: 'variation-bodies',
      severity: 'warning',
      where: WHERE,
      message: `The statement of variation and the bodies do not go together: ${says.join('; ')}. Where none are stated of a body, those of all others hold.`,
      hint: `Correct the name of the body in the file, or learn it anew: ${LEARN}.`,
    },
  ];
}

function disagreeing(
  bench: Bench,
  statement: VariationStatement,
  likelihoods: LikelihoodEstimator,
): readonly Finding[] {
  const fresh = freshSessions(bench, statement);
  if (fresh.length === 0) return [];
  const bodies = new Set(fresh.map(({ body }) => body));
  const known = bench.sessions.filter((session) => bodies.has(session.body) && !fresh.includes(session));
  const evidence = disagreement(
    known.map((session) => sessionClips(session, bench, likelihoods)),
    fresh.map((session) => sessionClips(session, bench, likelihoods)),
    (body) => statedOf(statement, body),
  );
  if (evidence < DISAGREES) return [];
  return [
    {
      rule: 'variation-disagrees',
      severity: 'caution',
      where: WHERE,
      message: `What was added or changed since ${statement.date} (${plural(fresh.length, 'session')}) varies otherwise than the statement of variation says: it foretells that ${describeCount(Math.min(evidence, 1e6))} times worse than no knowledge of this bench would. Of publications that agree with theirs, at most one in twenty is told so.`,
      hint: `Look for what changed; where nothing is wrong, learn it anew: ${LEARN}.`,
    },
  ];
}

/** What a repeat would buy, for the session whose condition is known worst. */
function daysUnknown(repeats: Repeats, sessions: readonly SessionFigures[]): readonly Finding[] {
  const errors = sessions.map(({ session, estimate }) => ({ session, error: estimateAt(estimate, 'condition').error }));
  const worst = errors.reduce((a, b) => (varianceOf(b.error) > varianceOf(a.error) ? b : a));
  const { aloneMs, togetherMs } = gainOfRepeat(worst.error);
  const missing = FEWEST_REPEATS - repeats.days;
  return [
    {
      rule: 'days-unknown',
      severity: 'note',
      where: WHERE,
      message: `${repeats.days === 0 ? 'No condition was measured again on another day' : `Conditions were measured again on another day only ${describeCount(repeats.days)} ${repeats.days === 1 ? 'time' : 'times'}`}, which cannot tell how much days differ: figures speak of their clips or their day, not of the condition.`,
      hint: `Measure conditions again on another day, ${plural(missing, 'session')} in all. By what is assumed of days meanwhile, a repeat of ${worst.session.id} alone would take what is known of its condition from ± ${ms(aloneMs)} to ± ${ms(togetherMs)}.`,
    },
  ];
}

function ms(value: number): string {
  return describeSignificant(value, 2, 'ms');
}
