import fc from 'fast-check';
import { expect, it } from 'vitest';
import { rankWithTies } from '../../src/analysis/best.ts';
import { bracketChain } from '../../src/analysis/chain-brackets.ts';
import { estimateChainDifference, estimateChainElement, fitChain } from '../../src/analysis/chain-network.ts';
import { estimateClassicalInterval } from '../support/classical-interval.ts';
import { changesOf } from '../../src/analysis/clip-mean.ts';
import { errorOf } from '../../src/analysis/linear-error.ts';
import { DEFAULT_VARIATION } from '../../src/analysis/variation.ts';
import type { BudgetedValue } from '../../src/analysis/components.ts';
import { estimateDrift } from '../../src/analysis/drift.ts';
import { compareFamily } from '../../src/analysis/family.ts';
import { estimateRandomEffects } from '../../src/analysis/random-effects.ts';
import { findRateFloor } from '../../src/analysis/rate-floor.ts';
import { estimateRateLaw, predictRateLaw } from '../../src/analysis/rate-law.ts';
import { estimateRatio } from '../../src/analysis/ratio.ts';
import { poolSessions } from '../../src/analysis/repeat-sessions.ts';
import { fitSettings } from '../../src/analysis/settings-model.ts';
import { proposeTerms } from '../../src/analysis/settings-terms.ts';
import { summarize } from '../../src/analysis/summary.ts';

/**
 * Whatever finite latencies and uncertainties of at least 0 are asked about, however few, equal or confounded, the
 * answer is typed data: no NaN anywhere, and Infinity only as degrees of freedom.
 */
const SEED = 20260411;
const RUNS = 40;

function expectNoHoles(value: unknown, path = 'answer'): number {
  if (typeof value === 'number') {
    const allowed = Number.isFinite(value) || (value === Infinity && /egreesOfFreedom$/.test(path));
    if (!allowed) expect.fail(`${path} is ${value}`);
    return 1;
  }
  if (typeof value !== 'object' || value === null) return 0;
  return Object.entries(value).reduce((count, [key, part]) => count + expectNoHoles(part, `${path}.${key}`), 0);
}

// in microseconds, as anyone writes them; few distinct ones, so that equal readings and zero scatter come up all the
// time
const latency = fc.oneof(
  fc.constantFrom(0, 16.7, 100, 250.25),
  fc.integer({ min: -50_000, max: 900_000 }).map((us) => us / 1000),
);
const uncertainty = fc.oneof(
  fc.constantFrom(0, 1, 4),
  fc.integer({ min: 1, max: 60_000 }).map((us) => us / 1000),
);
const freedom = fc.constantFrom(9, 17.8, Infinity);
const latencies = fc.array(latency, { minLength: 1, maxLength: 8 });
const weighed = fc.tuple(uncertainty, freedom).map(([standardUncertainty, degreesOfFreedom]) => ({
  standardUncertainty,
  error: errorOf({ value: 0, components: [{ name: 'own', standardUncertainty, degreesOfFreedom, sharedKey: null }] }),
}));
const estimate = fc.record({ value: latency, weight: weighed }).map(({ value, weight }) => ({ value, ...weight }));
const budget: fc.Arbitrary<BudgetedValue> = fc.record({
  value: latency,
  components: fc.uniqueArray(
    fc.record({
      name: fc.constantFrom('phases', 'skew', 'clock'),
      standardUncertainty: uncertainty,
      degreesOfFreedom: freedom,
      sharedKey: fc.constantFrom(null, 'rig:x'),
    }),
    { maxLength: 3, selector: (component) => component.name },
  ),
});
const point = estimate.chain(({ value, ...rest }) =>
  fc
    .constantFrom(1001 / 24, 1000 / 30, 1001 / 60, 1000 / 120)
    .map((intervalMs) => ({ intervalMs, totalMs: value, ...rest })),
);
const condition = fc.record({
  rate: fc.constantFrom('24', '60'),
  audio: fc.constantFrom('off', 'on'),
  chroma: fc.constantFrom('420', '422', '444'),
});
const observation = fc
  .record({ condition, total: estimate.filter(({ standardUncertainty }) => standardUncertainty > 0) })
  .map(({ condition: at, total }) => ({ condition: at, ...total }));
const session = fc
  .record({ body: fc.constantFrom('a', 'b'), display: fc.constantFrom('x', 'y'), link: fc.boolean(), estimate })
  .map(({ body, display, link, estimate: e }) => ({
    id: `${body} ${display}`,
    elements: [`body:${body}`, `display:${display}`, ...(link ? ['link:w'] : [])],
    ...e,
  }));

const FACTORS = [
  { id: 'rate', kind: 'numeric', levels: ['24', '60'], numbers: [24, 60] },
  { id: 'audio', kind: 'unordered', levels: ['off', 'on'] },
  { id: 'chroma', kind: 'ordered', levels: ['420', '422', '444'] },
] as const;

const QUESTIONS: readonly (readonly [name: string, ask: fc.IProperty<unknown>])[] = [
  [
    'a list of readings',
    ask(latencies, (x) => [
      summarize(x),
      estimateDrift(
        x.map((_, i) => i),
        x,
      ),
    ]),
  ],
  [
    'runs',
    ask(fc.array(latencies, { minLength: 1, maxLength: 4 }), (runs) => [
      estimateClassicalInterval(runs),
      runs.length > 1 && estimateRandomEffects(runs),
    ]),
  ],
  [
    'a family',
    ask(fc.array(fc.tuple(budget, budget), { maxLength: 4 }), (pairs) =>
      compareFamily(pairs.map(([a, b], i) => ({ id: String(i), a, b, margin: 4 }))),
    ),
  ],
  ['a ratio', ask(fc.tuple(budget, budget), ([a, b]) => estimateRatio(a, b))],
  [
    'a ranking',
    ask(fc.array(budget, { maxLength: 5 }), (entries) =>
      rankWithTies(entries.map((entry, i) => ({ id: String(i), ...entry }))),
    ),
  ],
  [
    'rates',
    ask(fc.array(point, { maxLength: 7 }), (points) => {
      const law = estimateRateLaw(points);
      return [law, law.kind === 'rate-law' && predictRateLaw(law, 20), findRateFloor(points)];
    }),
  ],
  [
    'settings',
    ask(fc.array(observation, { maxLength: 8 }), (observations) => {
      const terms = proposeTerms(
        observations.map((o) => o.condition),
        FACTORS,
      );
      return (['stated', 'residual'] as const).map((scale) => fitSettings(observations, FACTORS, terms, { scale }));
    }),
  ],
  [
    'a network',
    ask(fc.array(session, { maxLength: 6 }), (sessions) => {
      const chain = fitChain(sessions);
      return [
        chain,
        bracketChain(sessions),
        ...(chain.kind === 'chain'
          ? [estimateChainElement(chain, 'link:w'), estimateChainDifference(chain, 'body:a', 'body:b')]
          : []),
      ];
    }),
  ],
  [
    'repeat sessions',
    ask(fc.array(estimate, { minLength: 1, maxLength: 5 }), (sessions) =>
      poolSessions(sessions, { sizes: changesOf(DEFAULT_VARIATION.day, 40), frameMs: 40 }),
    ),
  ],
];

function ask<T>(questions: fc.Arbitrary<T>, answer: (question: T) => unknown): fc.IProperty<unknown> {
  return fc.property(questions, (question) => void expectNoHoles(answer(question))) as fc.IProperty<unknown>;
}

it.each(QUESTIONS)('%s: no answer holds a NaN', (_, property) => {
  fc.assert(property, { seed: SEED, numRuns: RUNS });
});

it('the check looks inside', () => {
  expect(() => expectNoHoles({ a: [{ value: Number.NaN }] })).toThrow('answer.a.0.value is NaN');
  expect(() => expectNoHoles({ standardUncertainty: Infinity })).toThrow('standardUncertainty is Infinity');
  expect(expectNoHoles(summarize([1, 2, 4]))).toBe(9);
});
