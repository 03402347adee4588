import { expect, it } from 'vitest';
import { checkLedger } from '../../src/ledger/check.ts';
import type { Changes } from '../../src/ledger/compare.ts';
import { describeProblem } from '../../src/model/problem-text.ts';
import { LEDGER_CODES } from '../../src/model/problem.ts';
import { ledgerOf } from '../support/ledger.ts';
import { bench, session } from '../support/small-bench.ts';

const published = bench([session('a', { rate: '24' })]);
const changes: Changes = {
  moved: [
    {
      id: 'total/a',
      from: '308 ± 54 ms',
      to: '340 ± 60 ms',
      line: 7,
      causes: [
        { kind: 'analysis', from: '1', to: '2' },
        { kind: 'changed', file: 'data/sessions/a.csv', own: true },
      ],
    },
  ],
  gone: [
    { id: 'total/b', from: '200 ms', line: 9, causes: [{ kind: 'gone', file: 'data/sessions/b.csv', own: true }] },
  ],
  added: ['total/c'],
  unchanged: 3,
  faults: [],
  renames: [{ from: 'data/sessions/x', to: 'data/sessions/y' }],
  renamed: [{ id: 'total/y', was: 'total/x' }],
};

it('refuses each number that moved or went, at its line, with its cause and the way out', () => {
  const problems = checkLedger({ ...published, ledger: ledgerOf(published) }, changes);
  expect(problems.map(describeProblem)).toEqual([
    'content/ledger/figures.csv  data/sessions/x  is called data/sessions/y now, so its address is another. If that is meant, say why: npm run record -- --reason "…" --date YYYY-MM-DD.',
    'content/ledger/figures.csv:7  total/a  was "308 ± 54 ms", is now "340 ± 60 ms": the analysis went from version 1 to version 2; data/sessions/a.csv changed. If that is meant, say why: npm run record -- --reason "…" --date YYYY-MM-DD.',
    'content/ledger/figures.csv:9  total/b  was "200 ms", is no longer published: data/sessions/b.csv is gone. If that is meant, say why: npm run record -- --reason "…" --date YYYY-MM-DD.',
  ]);
  const without = checkLedger(published, changes);
  expect(without.map(describeProblem)).toEqual([
    'content/ledger/figures.csv  nothing was recorded yet, so no number can be held to what was published. Record the first state: npm run record -- --reason "first publication" --date YYYY-MM-DD.',
  ]);
  expect(new Set([...problems, ...without].map(({ code }) => code))).toEqual(new Set(LEDGER_CODES));
});

it('lets new figures and an unchanged state pass', () => {
  expect(
    checkLedger({ ...published, ledger: ledgerOf(published) }, { ...changes, moved: [], gone: [], renames: [] }),
  ).toEqual([]);
});
