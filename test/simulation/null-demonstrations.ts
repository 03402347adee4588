/**
 * Demonstrations in which nothing differs: simulated on the balcony rig, estimated and compared as the site does it.
 * Counts what is called different or the same although it is not.
 */
import type { Chain } from '../../src/analysis/chain.ts';
import { estimateDifference } from '../../src/analysis/difference.ts';
import type { BudgetedValue } from '../../src/analysis/components.ts';
import { estimateSession } from '../../src/analysis/estimate.ts';
import { judgeFamily } from '../../src/analysis/family.ts';
import { seededRandom, type Random } from '../../src/analysis/random.ts';
import { simulateTwoTimers } from '../../src/analysis/simulate.ts';
import { intervalMs, rate, type Rate } from '../../src/model/rate.ts';
import { RIGS } from '../demonstration/rigs.ts';

/** Rates of the demonstration with the clips it takes there: long enough for a beat to pass, except the third. */
const CONDITIONS: readonly {
  readonly rate: Rate;
  readonly runs: number;
  readonly readings: number;
  readonly spacingS: number;
}[] = [
  { rate: rate(24000, 1001), runs: 2, readings: 8, spacingS: 2.6 },
  { rate: rate(60000, 1001), runs: 3, readings: 8, spacingS: 2.4 },
  { rate: rate(60000, 1001), runs: 2, readings: 10, spacingS: 0.3 },
];
const BODIES = 3;
const PIPELINE_INTERVALS = 6.5;
const RESOLUTION_MS = 1;

export interface Errors {
  readonly demonstrations: number;
  readonly comparisons: number;
  /** Demonstrations in which any comparison came out slower or faster. */
  readonly falseDifferences: number;
  /** Comparisons whose true difference is the margin, and which came out the same. */
  readonly falseSameness: number;
}

/** Takes `demonstrations` of three bodies in three conditions each, seeded one by one. */
export function countErrors(demonstrations: number, firstSeed: number): Errors {
  let comparisons = 0;
  let falseDifferences = 0;
  let falseSameness = 0;
  for (let seed = firstSeed; seed < firstSeed + demonstrations; seed += 1) {
    const random = seededRandom(seed);
    const questions = CONDITIONS.flatMap((condition, c) => {
      const margin = intervalMs(condition.rate) / 2;
      const bodies = Array.from({ length: BODIES }, () => takeSession(condition, random));
      return bodies.flatMap((a, i) =>
        bodies
          .slice(i + 1)
          .map((b, k) => ({ id: `${c} ${i} ${i + 1 + k}`, difference: estimateDifference(a, b), margin })),
      );
    });
    const family = judgeFamily(questions);
    comparisons += family.length;
    if (family.some(({ verdict }) => verdict.kind === 'slower' || verdict.kind === 'faster')) falseDifferences += 1;
    // moving one of a pair by the margin makes sameness false: the same data, asked about a truth at the margin
    falseSameness += questions.filter(({ difference, margin }) => {
      if (difference.kind === 'not-estimable') return false;
      const [moved] = judgeFamily([
        { id: 'moved', margin, difference: { ...difference, value: difference.value + margin } },
      ]);
      return moved?.equivalence?.equivalent ?? false;
    }).length;
  }
  return { demonstrations, comparisons, falseDifferences, falseSameness };
}

function takeSession(condition: (typeof CONDITIONS)[number], random: Random): BudgetedValue {
  const { source, display, observer } = RIGS.balcony;
  const chain: Chain = { ...(source && { source }), body: { rate: condition.rate }, display, observer };
  const truth = { pipelineMs: PIPELINE_INTERVALS * intervalMs(condition.rate) };
  const runs = Array.from({ length: condition.runs }, () => {
    const sampling = { readings: condition.readings, spacingMs: 1000 * condition.spacingS };
    const stamps = simulateTwoTimers(chain, truth, sampling, RESOLUTION_MS, random);
    return {
      latenciesMs: stamps.map(({ sourceMs, shownMs }) => sourceMs - shownMs),
      sourceMs: stamps.map(({ sourceMs }) => sourceMs),
    };
  });
  const { value, components } = estimateSession({ method: 'two-timers', chain, runs, resolutionMs: RESOLUTION_MS });
  return {
    value,
    components: components.map((component) => ({
      ...component,
      sharedKey: component.sharedKey && `${component.sharedKey}:balcony`,
    })),
  };
}
