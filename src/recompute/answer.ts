/**
 * A reader's question → the figures that answer it, from the raw files of the sessions that it takes.
 *
 *     one session     its own figures
 *     two sessions    both, with difference, ratio and verdict in each family that the publication adjusts them in
 *     no session      everything that is published
 */
import { contributionsOf } from '../register/contributions.ts';
import { compilationOf, compileSessions, type Compilation } from '../register/compilation.ts';
import { comparisonFigures } from '../register/comparisons/comparison-figures.ts';
import type { Family } from '../register/comparisons/family.ts';
import { located } from '../register/located.ts';
import { findRateLaws } from '../register/rate-law/rate-laws.ts';
import type { Figure } from '../register/register.ts';
import type { Estimator } from '../register/session-figures.ts';
import type { Bench } from '../model/bench.ts';
import { familyAlone } from './family-alone.ts';

export interface Families {
  /** Those that every bench has by itself. */
  readonly standing: readonly Family[];
  /** Those that write-ups ask for. */
  readonly asked: readonly Family[];
}

export interface Question {
  /** None: the whole publication. */
  readonly sessions: readonly string[];
  /** Probability of coverage. */
  readonly level: number;
}

/**
 * Families in which the publication compares two sessions, either less the other; one of their own where it does not.
 */
export function familiesOf({ sessions: [a, b] }: Question, { standing, asked }: Families): readonly Family[] {
  if (a === undefined || b === undefined) return [];
  const holding = [...standing, ...asked].filter(({ pairs }) => pairs.some((pair) => isOf(pair, a, b)));
  return holding.length > 0 ? holding : [familyAlone(a, b)];
}

/** Sessions whose files it takes; undefined: all. */
export function sessionsNeeded(question: Question, families: Families): readonly string[] | undefined {
  if (question.sessions.length === 0) return undefined;
  const compared = familiesOf(question, families).flatMap(({ pairs }) => pairs.flatMap(({ a, b }) => [a, b]));
  return [...new Set([...question.sessions, ...compared])];
}

/** Throws a ProblemsError where the analysis refuses a session. */
export function answer(bench: Bench, question: Question, families: Families, estimator: Estimator): readonly Figure[] {
  const compilation = compileSessions(bench, { estimator });
  if (question.sessions.length === 0) return everything(compilation, families);
  const own = question.sessions.flatMap((id) => compilation.session(id).figures);
  const [a, b] = question.sessions;
  if (a === undefined || b === undefined) return own;
  const compared = familiesOf(question, families).flatMap((family) => {
    const members = new Set(family.pairs.flatMap((pair) => [pair.a, pair.b]));
    const sessions = compilation.sessions.filter(({ session: { id } }) => members.has(id));
    return comparisonFigures(compilationOf(bench, sessions), family, 1 - question.level).filter(
      ({ of, kind }) => kind === 'family' || isOf({ a: of['session'] ?? '', b: of['than'] ?? '' }, a, b),
    );
  });
  return [...new Map([...compared, ...own].map((figure) => [figure.id, figure])).values()];
}

function everything(compilation: Compilation, { asked }: Families): readonly Figure[] {
  const laws = located('rate laws', findRateLaws, compilation);
  return contributionsOf(compilation, laws, () => asked).flatMap(({ figures }) => figures);
}

function isOf(pair: { readonly a: string; readonly b: string }, a: string, b: string): boolean {
  return (pair.a === a && pair.b === b) || (pair.a === b && pair.b === a);
}
