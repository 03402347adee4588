/** Two branches that both recorded: each keeps a true entry, whichever of them was merged into the other. */
import { describe, expect, it } from 'vitest';
import { compareWithLedger, inputsOf, isUnchanged } from '../../src/ledger/compare.ts';
import { joinBranches } from '../../src/ledger/join.ts';
import { replay } from '../../src/ledger/replay.ts';
import { statementsOf } from '../../src/ledger/statements.ts';
import { isInputId, type Ledger } from '../../src/model/ledger.ts';
import type { Bench, Session } from '../../src/model/bench.ts';
import { describeProblem } from '../../src/model/problem-text.ts';
import { compileRegister } from '../../src/site/compile.ts';
import { ledgerAfter } from '../support/ledger.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const UHD = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
const [a, b] = [session('a', UHD), session('b', { ...UHD, rate: '25' })];
const [c, d] = [session('c', UHD, { body: 'brae' }), session('d', { ...UHD, rate: '25' }, { body: 'brae' })];
const longer = (one: Session): Session => ({
  ...one,
  readings: [reading(2, 800), reading(3, 310), reading(4, 305)],
  readingsFile: { ...one.readingsFile, sha256: '1'.repeat(64) },
});

const common = ledgerAfter([{ bench: bench([a, b]), date: '2026-03-01' }]);
/** One mends a reading, then adds a session; the other adds a session in between. */
const ours = ledgerAfter(
  [
    { bench: bench([longer(a), b]), date: '2026-04-01', reason: 'Ours mends' },
    { bench: bench([longer(a), b, c]), date: '2026-06-01', reason: 'Ours adds' },
  ],
  common,
);
const theirs = ledgerAfter([{ bench: bench([a, b, d]), date: '2026-05-01', reason: 'Theirs adds' }], common);
const merged = bench([longer(a), b, c, d]);

function join(sides: readonly [Ledger, Ledger], now: Bench = merged) {
  const chain = [...new Set(sides.flatMap((side) => side.chain))];
  const register = compileRegister(now);
  const ledger: Ledger = { ...sides[0], figures: [], analysis: '', checksums: {}, chain };
  const joined = joinBranches(ledger, statementsOf(now, register), inputsOf(now, register));
  const figures = [...joined.state.values()].filter(({ id }) => !isInputId(id));
  const inputs = inputsOf(now, register);
  const after: Ledger = {
    ...ledger,
    ...inputs,
    figures: figures.map((row, index) => ({ ...row, line: index + 2 })),
    head: joined.chain.at(-1)?.says ?? '',
    chain: joined.chain,
  };
  return { ...joined, after, changes: compareWithLedger({ ...now, ledger: after }, register) };
}

describe('two branches that were merged', () => {
  it('have one chain, with the entry of each and no other, by day', () => {
    const { chain, problems, after } = join([ours, theirs]);
    expect(problems).toEqual([]);
    expect(chain.map(({ date, reason }) => `${date} ${reason}`)).toEqual([
      '2026-03-01 Record of 2026-03-01',
      '2026-04-01 Ours mends',
      '2026-05-01 Theirs adds',
      '2026-06-01 Ours adds',
    ]);
    expect(replay(after).faults).toEqual([]);
    // what needs no other place stays as it is, and what does keeps its name
    expect(chain[1]).toBe(ours.chain[1]);
    expect(chain[2]?.id).toBe(theirs.chain[1]?.id);
  });

  it('leave nothing unrecorded', () => expect(isUnchanged(join([ours, theirs]).changes)).toBe(true));

  it('come to the same, whichever was merged into the other', () =>
    expect(join([theirs, ours]).chain.map(({ says }) => says)).toEqual(
      join([ours, theirs]).chain.map(({ says }) => says),
    ));

  it('say of each change what it changed', () => {
    const { entries } = replay(join([ours, theirs]).after);
    const told = entries.map(({ reason, moved, added }) => [
      reason,
      moved.flatMap(({ id, from, to }) =>
        ['maximum/a', 'count/sessions'].includes(id) ? [`${id}: ${from} → ${to}`] : [],
      ),
      added['session'] ?? 0,
    ]);
    // largest reading of a: 310 ms, then 800 ms; two sessions, three on either branch, four together
    expect(told).toEqual([
      ['Ours adds', ['count/sessions: 3 → 4'], 1],
      ['Theirs adds', ['count/sessions: 2 → 3'], 1],
      ['Ours mends', ['maximum/a: 310 ms → 800 ms'], 0],
      ['Record of 2026-03-01', [], 2],
    ]);
  });

  it('are not joined with a change that neither recorded in their midst', () => {
    const other = { ...d, file: { ...d.file, sha256: '3'.repeat(64) } };
    expect(join([ours, theirs], bench([longer(a), b, c, other])).problems.map(describeProblem)).toEqual([
      'data/sessions/d.md  is as neither branch recorded it (333333333333). Take it back to what one of them recorded, join, and record its change after that.',
    ]);
  });

  it('are not joined where an entry was edited', () => {
    const edited: Ledger = { ...theirs, chain: theirs.chain.with(1, { ...theirs.chain[1]!, reason: 'Other' }) };
    expect(join([ours, edited]).problems.map(({ code }) => code)).toEqual(['entry-edited']);
  });
});

it('one branch alone is written again from its entries', () => {
  const { chain, state, problems } = join([ours, ours], bench([longer(a), b, c]));
  expect(problems).toEqual([]);
  expect(chain).toEqual(ours.chain);
  expect(state).toEqual(replay(ours).state);
});
