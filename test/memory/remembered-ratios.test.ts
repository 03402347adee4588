import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import type { BudgetedValue } from '../../src/analysis/components.ts';
import { estimateRatios, type RatiosAsked } from '../../src/analysis/ratio.ts';
import { keepResultsIn } from '../../src/memory/memory.ts';
import { RememberedRatios } from '../../src/site/remembered-ratios.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ratios-'));
  keepResultsIn(folder);
});
afterEach(() => {
  keepResultsIn(undefined);
  rmSync(folder, { recursive: true });
});

const value = (ms: number, standardUncertainty: number): BudgetedValue => ({
  value: ms,
  components: [{ name: 'phase', standardUncertainty, degreesOfFreedom: Infinity, sharedKey: null }],
});
const asked = (level: number, ...uncertainties: readonly number[]): RatiosAsked => ({
  values: uncertainties.map((u, place) => value(100 + place, u)),
  pairs: uncertainties.slice(1).map((_, place) => [place + 1, 0] as const),
  level,
});
function remembering() {
  const pairs: (readonly [number, number])[] = [];
  const ratios = new RememberedRatios((question) => {
    pairs.push(...question.pairs);
    return estimateRatios(question);
  });
  return { ratios, pairs };
}

it('gives what would be computed, and computes only what is new: another error, another level', () => {
  const { ratios, pairs } = remembering();
  for (const question of [asked(0.95, 1, 2, 3), asked(0.95, 1, 2, 3), asked(0.95, 1, 2, 4), asked(0.9, 1, 2)])
    expect(ratios.recall(question)).toEqual(estimateRatios(question));
  expect(pairs).toEqual([
    [1, 0],
    [2, 0],
    [2, 0],
    [1, 0],
  ]);
});

it('keeps what was last used from one run to the next, and forgets the rest', () => {
  const first = remembering().ratios;
  first.recall(asked(0.95, 1, 2, 3));
  first.keepUsed();
  first.recall(asked(0.95, 1, 2));
  first.keepUsed();
  const { ratios, pairs } = remembering();
  expect(ratios.recall(asked(0.95, 1, 2, 3))).toEqual(estimateRatios(asked(0.95, 1, 2, 3)));
  expect(pairs).toEqual([[2, 0]]);
});

it('computes anew what was damaged, and all of it when asked to pass over what is kept', () => {
  const first = remembering().ratios;
  first.recall(asked(0.95, 1, 2));
  first.keepUsed();
  keepResultsIn(folder, { fresh: true });
  const fresh = remembering();
  fresh.ratios.recall(asked(0.95, 1, 2));
  expect(fresh.pairs).toEqual([[1, 0]]);
  keepResultsIn(folder);
  const [file = ''] = readdirSync(join(folder, 'ratios'));
  writeFileSync(join(folder, 'ratios', file), 'damaged');
  const damaged = remembering();
  expect(damaged.ratios.recall(asked(0.95, 1, 2))).toEqual(estimateRatios(asked(0.95, 1, 2)));
  expect(damaged.pairs).toEqual([[1, 0]]);
});
