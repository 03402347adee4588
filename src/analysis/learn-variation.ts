/**
 * How delays vary from clip to clip and from day to day, learnt from all sessions of a publication.
 *
 *     1. each condition of a body, its clips by day   → likelihood of the sizes     level-likelihood.ts
 *     2. its conditions together, bodies informing each other → weights of the sizes  pool-sizes.ts
 *     3. which level there is evidence of              → of what intervals may speak
 *
 * Sizes are fractions of T_d, so that conditions of all rates tell of one set of them.
 */
import { logLikelihoodOfSizes, type ClipLikelihood } from './level-likelihood.ts';
import { poolSizes } from './pool-sizes.ts';
import { NODES, SIZES_BEFOREHAND, sizesOf, weightsOf, type LevelSizes } from './size-grid.ts';
import type { Level } from './variation.ts';
import { exp, ln } from './elementary.ts';

/** What a session tells of variation. */
export interface SessionClips {
  readonly body: string;
  /** Sessions of one body with the same name here measured the same thing. */
  readonly condition: string;
  readonly day: string;
  /** T_d. */
  readonly frameMs: number;
  readonly clips: readonly ClipLikelihood[];
}

/** What is needed of a session to count repeats. */
export interface CountedClips extends Pick<SessionClips, 'body' | 'condition' | 'day'> {
  readonly clips: readonly unknown[];
}

export interface LearntVariation {
  readonly knows: Level;
  /** How often something was measured again: clips beyond the first of their day, days beyond the first of theirs. */
  readonly repeats: Repeats;
  readonly bodies: ReadonlyMap<string, LevelSizes>;
  /** For a body without sessions. */
  readonly others: LevelSizes;
}

export interface Repeats {
  readonly clips: number;
  readonly days: number;
}

/** With fewer repeats than these at a level, nothing is claimed at it: four conditions, each measured on a second day. */
export const FEWEST_REPEATS = 4;

export function learnVariation(sessions: readonly SessionClips[]): LearntVariation {
  const byBody = [...Map.groupBy(sessions, ({ body }) => body)];
  const pooled = poolSizes(byBody.map(([, own]) => logLikelihoodOfBody(own)));
  const repeats = countRepeats(sessions);
  return {
    knows: levelKnown(repeats),
    repeats,
    bodies: new Map(byBody.map(([body], b) => [body, sizesOf(pooled.bodies[b]!)])),
    others: sizesOf(pooled.others),
  };
}

/** Of which level so many repeats allow to speak. */
export function levelKnown({ clips, days }: Repeats): Level {
  if (days >= FEWEST_REPEATS) return 'condition';
  return clips >= FEWEST_REPEATS ? 'day' : 'clips';
}

export function countRepeats(sessions: readonly CountedClips[]): Repeats {
  const conditions = [...Map.groupBy(sessions, conditionKey).values()];
  const days = conditions.map((own) => [...Map.groupBy(own, ({ day }) => day).values()]);
  return {
    clips: days.flat().reduce((sum, own) => sum + own.reduce((all, { clips }) => all + clips.length, -1), 0),
    days: days.reduce((sum, own) => sum + own.length - 1, 0),
  };
}

/**
 * How much better the sizes thought of beforehand foretell `fresh` sessions, given `known` ones, than stated sizes do.
 *
 * An e-value (V. Vovk and R. Wang, "E-values: calibration, combination and applications", Annals of Statistics 49,
 * 2021): where the stated sizes hold, its expectation is at most 1, so that by Markov's inequality it reaches 20 in at
 * most 5 % of publications, however many sessions there are.
 */
export function disagreement(
  known: readonly SessionClips[],
  fresh: readonly SessionClips[],
  statedFor: (body: string) => LevelSizes,
): number {
  const beforehand = weightsOf(SIZES_BEFOREHAND);
  let logRatio = 0;
  for (const [body, own] of Map.groupBy(fresh, (session) => session.body)) {
    const before = known.filter((session) => session.body === body);
    const logBefore = logLikelihoodOfBody(before);
    const logs = logLikelihoodOfBody([...before, ...own]).map((log, i) => log - logBefore[i]!);
    logRatio += logMean(logs, beforehand) - logMean(logs, weightsOf(statedFor(body)));
  }
  return exp(logRatio);
}

/** Reached by `disagreement` in at most one of twenty publications that agree. */
export const DISAGREES = 20;

function logLikelihoodOfBody(sessions: readonly SessionClips[]): readonly number[] {
  const sum = NODES.map(() => 0);
  for (const own of Map.groupBy(sessions, conditionKey).values()) {
    const days = [...Map.groupBy(own, ({ day }) => day).values()].map((day) => day.flatMap(({ clips }) => clips));
    logLikelihoodOfSizes({ frameMs: own[0]!.frameMs, days }).forEach((log, i) => (sum[i]! += log));
  }
  return sum;
}

function conditionKey({ body, condition }: Pick<SessionClips, 'body' | 'condition'>): string {
  return `${body} ${condition}`;
}

/** log Σ wᵢ exp(logᵢ) */
function logMean(logs: readonly number[], weights: readonly number[]): number {
  const highest = Math.max(...logs);
  return highest + ln(logs.reduce((sum, log, i) => sum + weights[i]! * exp(log - highest), 0));
}
