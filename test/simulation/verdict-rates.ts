/**
 * How often the verdicts of one write-up are false, and how often a true difference is found, on simulated benches: two
 * bodies in six conditions, every condition against every other of its body and each body against the other.
 *
 * Verdicts of intervals that speak of their clips are held to the delays that these clips had; those that speak of a
 * condition (where variation was learnt from six conditions repeated on another day) to the condition's own delay.
 *
 * The same write-up then claims of each of its pairs that the slower takes longer by at least half of what was
 * measured, judged as `<Claim>` is; what it asserts is false where the truth is less.
 */
import { rankWithTies } from '../../src/analysis/best.ts';
import type { Chain } from '../../src/analysis/chain.ts';
import type { BudgetedValue } from '../../src/analysis/components.ts';
import { normalLowerTail } from '../../src/analysis/distributions.ts';
import { estimateSession, runLikelihoods } from '../../src/analysis/estimate.ts';
import type { Difference } from '../../src/analysis/difference.ts';
import { probabilityOfErrorAbove, probabilityOfErrorBelow } from '../../src/analysis/error-tail.ts';
import { compareFamily, type Comparison, type ComparisonQuestion } from '../../src/analysis/family.ts';
import { adjustHolm } from '../../src/analysis/holm.ts';
import { learnVariation, type SessionClips } from '../../src/analysis/learn-variation.ts';
import type { SessionInput } from '../../src/analysis/session-input.ts';
import { simulateTwoTimers } from '../../src/analysis/simulate.ts';
import { DEFAULT_VARIATION, type Level, type Variation } from '../../src/analysis/variation.ts';
import { seededRandom, type Random } from '../../src/analysis/random.ts';
import { intervalMs, parseRate, type Rate } from '../../src/model/rate.ts';
import { adjustAmong } from '../../src/register/comparisons/adjust-among.ts';
import { normalNoise } from '../support/normal-noise.ts';

export interface BenchRow {
  readonly name: string;
  readonly clips: number;
  readonly readings: number;
  readonly rates: readonly string[];
  /** Half-width of a reading's own delay, standard deviations of clips and days, as fractions of T_d. */
  readonly jitter?: number;
  readonly clipSd?: number;
  readonly daySd?: number;
  /** Probability that a clip's buffer starts one frame deeper. */
  readonly step?: number;
  /** Six conditions are repeated on another day, and variation is learnt from all sessions. */
  readonly learnt?: boolean;
}

export interface VerdictRates {
  readonly benches: number;
  readonly anyFalse: number;
  /** With a claim of every pair, any false verdict or claim. */
  readonly anyFalseClaimed: number;
  readonly wrongLowest: number;
  /** True differences found, over those that a z test finds which knows the variances (Holm in both). */
  readonly power: number;
}

interface Session {
  readonly input: SessionInput;
  readonly frameMs: number;
  readonly condition: number;
  readonly day: number;
  /** Total latency of its clips' mean and of its condition. */
  readonly clipsMs: number;
  readonly conditionMs: number;
}

interface Estimated {
  readonly budget: BudgetedValue;
  readonly truthMs: number;
}

const BODIES = 2;
const ALPHA = 0.05;
const RESOLUTION_MS = 1;

export function verdictRates(row: BenchRow, benches: number, seed: number): VerdictRates {
  const all = Array.from({ length: benches }, (_, b) => estimateBench(row, seed + b));
  const variances = all[0]!.map((_, i) => all.reduce((sum, bench) => sum + errorOf(bench[i]!) ** 2, 0) / benches);
  let [anyFalse, anyFalseClaimed, wrongLowest, found, findable] = [0, 0, 0, 0, 0];
  for (const bench of all) {
    const pairs = pairsOf(row.rates.length);
    const questions = pairs.map(([i, j]) => ({ id: `${i} ${j}`, a: bench[i]!.budget, b: bench[j]!.budget, margin: 1 }));
    const compared = compareFamily(questions, ALPHA);
    const truths = pairs.map(([i, j]) => bench[i]!.truthMs - bench[j]!.truthMs);
    const knowing = adjustHolm(
      pairs.map(([i, j]) => {
        const u = Math.sqrt(variances[i]! + variances[j]!);
        return Math.min(1, 2 * normalLowerTail(-Math.abs(bench[i]!.budget.value - bench[j]!.budget.value) / u));
      }),
    );
    compared.forEach((comparison, k) => {
      if (saidOf(comparison) * truths[k]! > 0) found += 1;
      if (knowing[k]! <= ALPHA) findable += 1;
    });
    if (compared.some((comparison, k) => isFalse(comparison, truths[k]!))) anyFalse += 1;
    if (saysFalseWithClaims(questions, truths)) anyFalseClaimed += 1;
    if (bodiesOf(bench).some(lowestIsWrong)) wrongLowest += 1;
  }
  return {
    benches,
    anyFalse: anyFalse / benches,
    anyFalseClaimed: anyFalseClaimed / benches,
    wrongLowest: wrongLowest / benches,
    power: found / findable,
  };
}

/** 1 for "slower", −1 for "faster", 0 for neither. */
function saidOf({ verdict: { kind } }: Comparison): -1 | 0 | 1 {
  return kind === 'slower' ? 1 : kind === 'faster' ? -1 : 0;
}

/** A verdict is false where it has the wrong sign, or where there is nothing to tell. */
function isFalse(comparison: Comparison, truthMs: number): boolean {
  return saidOf(comparison) !== 0 && saidOf(comparison) * truthMs < 1e-9;
}

function saysFalseWithClaims(questions: readonly ComparisonQuestion[], truths: readonly number[]): boolean {
  const compared = compareFamily(questions, ALPHA, questions.length);
  const differences = compared.map(({ difference }) => difference as Difference);
  const bounds = differences.map(({ value }) => value / 2);
  const claims = differences.map((difference, k) => {
    const { value } = difference;
    const side = value > 0 ? probabilityOfErrorAbove : probabilityOfErrorBelow;
    return Math.min(1, 2 * side(difference, value - bounds[k]!));
  });
  const adjusted = adjustAmong([...differences.map(({ p }) => p), ...claims], claims);
  return questions.some(
    (_, k) =>
      isFalse(compared[k]!, truths[k]!) ||
      (adjusted[k]! <= ALPHA && Math.sign(bounds[k]!) * (truths[k]! - bounds[k]!) < -1e-9),
  );
}

function errorOf({ budget, truthMs }: Estimated): number {
  return budget.value - truthMs;
}

function bodiesOf(bench: readonly Estimated[]): readonly (readonly Estimated[])[] {
  const each = bench.length / BODIES;
  return Array.from({ length: BODIES }, (_, b) => bench.slice(b * each, (b + 1) * each));
}

/** The truly lowest is not among those that are called the lowest. */
function lowestIsWrong(conditions: readonly Estimated[]): boolean {
  const ranked = rankWithTies(conditions.map(({ budget }, i) => ({ id: String(i), ...budget })));
  const least = Math.min(...conditions.map(({ truthMs }) => truthMs));
  return !ranked.some(({ id, tiedWithBest }) => tiedWithBest && conditions[Number(id)]!.truthMs <= least + 1e-9);
}

function pairsOf(conditions: number): readonly (readonly [number, number])[] {
  const within = Array.from({ length: BODIES }, (_, b) =>
    Array.from({ length: conditions }, (_i, i) =>
      Array.from({ length: i }, (_j, j) => [b * conditions + i, b * conditions + j] as const),
    ).flat(),
  ).flat();
  return [...within, ...Array.from({ length: conditions }, (_, i) => [i, conditions + i] as const)];
}

function estimateBench(row: BenchRow, seed: number): readonly Estimated[] {
  const random = seededRandom(seed);
  const conditions = BODIES * row.rates.length;
  const days = row.learnt ? [0, 1] : [0];
  const sessions = days.flatMap((day) =>
    Array.from({ length: conditions }, (_, condition) => condition)
      .filter((condition) => day === 0 || condition % BODIES === 0)
      .map((condition) => drawSession(row, condition, day, random)),
  );
  const learnt = row.learnt ? learn(sessions, row.rates.length) : () => DEFAULT_VARIATION;
  return sessions.slice(0, conditions).map((session, i) => estimated(session, learnt(session), i));
}

function estimated({ input, clipsMs, conditionMs }: Session, variation: Variation, i: number): Estimated {
  const estimate = estimateSession({ ...input, variation });
  const truths: Readonly<Record<Level, number>> = { clips: clipsMs, day: Number.NaN, condition: conditionMs };
  return {
    budget: {
      value: estimate.value,
      own: { key: String(i), error: estimate.errors[estimate.speaksOf] },
      components: estimate.components.map(({ sharedKey, ...rest }) => ({ ...rest, sharedKey })),
    },
    truthMs: truths[estimate.speaksOf],
  };
}

/** What a statement of variation learnt from these sessions says of the body of each. */
function learn(sessions: readonly Session[], conditionsOfBody: number): (session: Session) => Variation {
  const bodyOf = ({ condition }: Session): string => String(Math.floor(condition / conditionsOfBody));
  const { knows, bodies } = learnVariation(
    sessions.map(
      (session): SessionClips => ({
        body: bodyOf(session),
        condition: String(session.condition),
        day: String(session.day),
        frameMs: session.frameMs,
        clips: runLikelihoods(session.input),
      }),
    ),
  );
  return (session) => ({ ...DEFAULT_VARIATION, knows, ...bodies.get(bodyOf(session))! });
}

/** Every other condition is alike in both bodies; the second is half a frame slower in the rest. */
function drawSession(row: BenchRow, index: number, day: number, random: Random): Session {
  const noise = normalNoise(random);
  const at = index % row.rates.length;
  const rate = rateOf(row.rates[at]!);
  const frameMs = intervalMs(rate);
  const pipelineMs = 45 + 2.3 * frameMs + (index >= row.rates.length && at % 2 === 1 ? frameMs / 2 : 0);
  const chain: Chain = {
    source: { refresh: rateOf('60') },
    body: { rate },
    display: { refresh: rateOf('60'), sync: 'input' },
  };
  const dayMs = (row.daySd ?? 0) * frameMs * noise();
  const step = row.step ?? 0;
  const offsets = Array.from(
    { length: row.clips },
    () => dayMs + (row.clipSd ?? 0) * frameMs * noise() + (random.uniform() < step ? frameMs : 0),
  );
  const runs = offsets.map((offsetMs) => {
    const stamps = simulateTwoTimers(
      chain,
      { pipelineMs: pipelineMs + offsetMs, jitterMs: (row.jitter ?? 0) * frameMs },
      { readings: row.readings, spacingMs: 700 },
      RESOLUTION_MS,
      random,
    );
    return {
      latenciesMs: stamps.map(({ sourceMs, shownMs }) => sourceMs - shownMs),
      sourceMs: stamps.map(({ sourceMs }) => sourceMs),
    };
  });
  const waits = frameMs / 2;
  return {
    input: { method: 'two-timers', chain, resolutionMs: RESOLUTION_MS, runs },
    frameMs,
    condition: index,
    day,
    clipsMs: pipelineMs + waits + offsets.reduce((sum, offset) => sum + offset / row.clips, 0),
    conditionMs: pipelineMs + waits + step * frameMs,
  };
}

function rateOf(text: string): Rate {
  const rate = parseRate(text);
  if (rate === undefined) throw new RangeError(`'${text}' is no rate`);
  return rate;
}
