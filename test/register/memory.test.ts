import { expect, it } from 'vitest';
import { estimateSession } from '../../src/analysis/estimate.ts';
import { Memory } from '../../src/register/memory.ts';
import { lookup } from '../../src/register/lookup.ts';
import { sessionInput } from '../../src/register/session-input.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const inputOf = (latencyMs: number) => {
  const one = session('a', { rate: '24' }, { readings: [reading(2, 300), reading(3, 310), reading(4, latencyMs)] });
  return sessionInput(one, lookup(bench([one])));
};

it('gives the estimate that would be made anew', () => {
  const memory = new Memory(estimateSession);
  for (const latencyMs of [305, 350, 305])
    expect(memory.recall(inputOf(latencyMs))).toEqual(estimateSession(inputOf(latencyMs)));
});

it('makes an estimate once, and again only after it went unused', () => {
  const memory = new Memory(estimateSession);
  const first = memory.recall(inputOf(305));
  memory.forgetUnused();
  expect(memory.recall(inputOf(305))).toBe(first);
  memory.forgetUnused();
  memory.forgetUnused();
  expect(memory.recall(inputOf(305))).not.toBe(first);
});
