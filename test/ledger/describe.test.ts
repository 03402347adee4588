import { expect, it } from 'vitest';
import type { Changes } from '../../src/ledger/compare.ts';
import { describeChanges } from '../../src/ledger/describe.ts';
import type { Cause } from '../../src/model/ledger.ts';

const edited: readonly Cause[] = [{ kind: 'changed', file: 'data/sessions/a.csv', own: true }];
const move = (id: string, causes: readonly Cause[] = edited) => ({ id, from: '1 ms', to: '2 ms', line: 2, causes });
const none: Changes = { moved: [], gone: [], added: [], unchanged: 5, faults: [], renames: [], renamed: [] };

it('says nothing where nothing changed', () => expect(describeChanges(none)).toBe(''));

it('puts together what has one cause, and lists what went and what is new', () => {
  const rig: Cause = { kind: 'changed', file: 'data/rigs/attic.md', own: true };
  const changes: Changes = {
    moved: [move('total/a'), move('mean/a'), move('total/b', [rig])],
    gone: [
      { id: 'total/c', from: '3 ms', line: 4, causes: [{ kind: 'gone', file: 'data/sessions/c.csv', own: true }] },
    ],
    added: ['n/1', 'n/2', 'n/3', 'n/4', 'n/5', 'n/6', 'n/7'],
    unchanged: 5,
    faults: [],
    renames: [],
    renamed: [],
  };
  expect(describeChanges(changes)).toBe(`Since the last record: 3 moved, 1 gone, 7 new; 5 as recorded.

  data/sessions/a.csv changed:
    total/a  1 ms → 2 ms
    mean/a   1 ms → 2 ms

  data/rigs/attic.md changed:
    total/b  1 ms → 2 ms

  data/sessions/c.csv is gone:
    total/c  3 ms → no longer published

  new: n/1, n/2, n/3, n/4, n/5 and 2 more

  To record this state: npm run record -- --reason "…" --date YYYY-MM-DD`);
});

it('cuts a long list of figures, and a long list of causes, and counts the rest', () => {
  const many = Array.from({ length: 9 }, (_, index): Cause => ({ kind: 'new', file: `f${index}`, own: true }));
  const text = describeChanges({
    ...none,
    moved: Array.from({ length: 25 }, (_, index) => move(`total/${index}`, many)),
  });
  expect(text).toContain('\n    and 15 more\n');
  expect(text).toContain('f5 is new; and 3 more:');
});
