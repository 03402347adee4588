import type { BudgetedValue } from '../analysis/components.ts';
import { estimateSession, runLikelihoods } from '../analysis/estimate.ts';
import { estimateAt } from '../analysis/level-errors.ts';
import { estimateRatios, type NoRatio, type Ratio, type RatiosAsked } from '../analysis/ratio.ts';
import type { Level } from '../analysis/variation.ts';
import type { Bench } from '../model/bench.ts';
import type { Problem } from '../model/problem.ts';
import { problemsError } from '../model/problem-text.ts';
import { compilePairs, type CompiledPair } from './displays/compile-pairs.ts';
import { lookup, type Lookup } from './lookup.ts';
import { refusalOf } from './refusal.ts';
import type { Figure, Finding } from './register.ts';
import type { LikelihoodEstimator } from './variation/session-clips.ts';
import { compileSession, keyOf, type Estimator, type SessionFigures } from './session-figures.ts';

/** A bench whose sessions are estimated: what every further comparison starts from. */
export interface Compilation {
  readonly bench: Bench;
  readonly find: Lookup;
  /** In the order of the bench. */
  readonly sessions: readonly SessionFigures[];
  session(id: string): SessionFigures;
  /**
   * A session's total with its named components; those that sessions have in common carry the same key. Its own error
   * is that of the level of which the session speaks, unless another is asked for.
   */
  budgetOf(id: string, level?: Level): BudgetedValue;
  readonly ratios: RatioEstimator;
  readonly likelihoods: LikelihoodEstimator;
  /** Displays read against each other, in the order of the bench. */
  readonly pairs: readonly CompiledPair[];
}

/** `estimateRatios`, or one that remembers: ratios depend on what is asked alone. */
export type RatioEstimator = (asked: RatiosAsked) => readonly (Ratio | NoRatio)[];

/** What computes, where it is not the analysis itself. */
export interface Computing {
  /** One that remembers, where the same sessions are compiled again and again. */
  readonly estimator?: Estimator;
  readonly ratios?: RatioEstimator;
  readonly likelihoods?: LikelihoodEstimator;
}

/** What one kind of comparison adds to the register. */
export interface Contribution {
  readonly figures: readonly Figure[];
  readonly findings: readonly Finding[];
}

/** Throws one ProblemsError with every session that the analysis refuses. */
export function compileSessions(
  bench: Bench,
  { estimator = estimateSession, ...computing }: Computing = {},
): Compilation {
  const find = lookup(bench);
  const problems: Problem[] = [];
  const sessions = bench.sessions.flatMap((session) => {
    try {
      const compiled = compileSession(session, find, estimator);
      if (!hasFiniteTotal(compiled)) throw new RangeError('the total has no finite value or interval');
      return [compiled];
    } catch (error) {
      problems.push(refusalOf(session, find, estimator, error));
      return [];
    }
  });
  if (problems.length > 0) throw problemsError(problems);
  return compilationOf(bench, sessions, computing);
}

function hasFiniteTotal({ estimate: { value, interval } }: SessionFigures): boolean {
  return [value, interval.low, interval.high].every(Number.isFinite);
}

/** A compilation of sessions that are estimated already. */
export function compilationOf(
  bench: Bench,
  sessions: readonly SessionFigures[],
  { ratios = estimateRatios, likelihoods = runLikelihoods }: Omit<Computing, 'estimator'> = {},
): Compilation {
  const find = lookup(bench);
  const byId = new Map(sessions.map((compiled) => [compiled.session.id, compiled]));
  const session = (id: string): SessionFigures => {
    const compiled = byId.get(id);
    if (compiled === undefined) throw new Error(`no session '${id}' on this bench`);
    return compiled;
  };
  return {
    bench,
    find,
    sessions,
    ratios,
    likelihoods,
    pairs: compilePairs(bench),
    session,
    budgetOf: (id, level) => {
      const { estimate, session: measured } = session(id);
      const { value, error } = estimateAt(estimate, level ?? estimate.speaksOf);
      return {
        value,
        own: { key: id, error },
        components: estimate.components.map((component) => ({
          ...component,
          sharedKey: keyOf(component.sharedKey, measured),
        })),
      };
    },
  };
}
