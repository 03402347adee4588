import { expect, it } from 'vitest';
import { estimateSession, keepEstimate, type Estimate } from '../../src/analysis/estimate.ts';
import type { SessionInput } from '../../src/analysis/session-input.ts';
import { Memory } from '../../src/memory/memory.ts';
import { lookup } from '../../src/register/lookup.ts';
import { sessionInput } from '../../src/register/session-input.ts';
import { estimateAhead } from '../../src/site/estimate-ahead.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const inputs = (count: number): readonly SessionInput[] =>
  Array.from({ length: count }, (_, index) => {
    const one = session(
      'a',
      { rate: '24' },
      { readings: [300, 310, 300 + index].map((ms, row) => reading(row + 2, ms)) },
    );
    return sessionInput(one, lookup(bench([one])));
  });

/** Estimates that are worked out in this thread are counted. */
function memory() {
  const here: SessionInput[] = [];
  const estimates = new Memory<SessionInput, Estimate>({
    name: 'estimates',
    code: ['src/analysis'],
    compute: (input) => {
      here.push(input);
      return estimateSession(input);
    },
    keep: keepEstimate,
    restore: (estimate) => estimate,
  });
  return { here, estimates };
}

it('gives on threads, in any order, what one gives after the other, to the last bit', async () => {
  const all = inputs(40);
  const { here, estimates } = memory();
  const told: number[] = [];
  await estimateAhead(estimates, all, { threads: 3, report: (done) => told.push(done) });
  expect(told.at(-1)).toBe(40);
  expect(all.map(estimates.recall)).toEqual(all.map(estimateSession));
  expect(here).toEqual([]);
});

it('leaves what is refused to whoever asks for it', async () => {
  const [good, ...others] = inputs(40);
  const bad: SessionInput = { ...good!, runs: [] };
  const { here, estimates } = memory();
  await estimateAhead(estimates, [bad, ...others], { threads: 2 });
  expect(() => estimates.recall(bad)).toThrow(RangeError);
  expect(here).toEqual([bad]);
});

it.each([
  ['few sessions', 5, 2],
  ['one core', 40, 1],
])('starts no thread for %s', async (_what, count, threads) => {
  const all = inputs(count);
  const { here, estimates } = memory();
  await estimateAhead(estimates, all, { threads });
  estimates.recall(all[0]!);
  expect(here).toHaveLength(1);
});
