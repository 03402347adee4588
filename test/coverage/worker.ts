/** Judges the rows it is sent, one at a time. */
import { parentPort } from 'node:worker_threads';
import { judge } from './judge.ts';
import { judgePairs } from './pair-table.ts';
import { ALL_ROWS, seedOf, tableRow } from './table.ts';

export interface Task {
  readonly of: 'totals' | 'displays';
  readonly index: number;
  readonly sessions: number;
}

parentPort!.on('message', ({ at, ...task }: Task & { readonly at: number }) =>
  parentPort!.postMessage({ at, row: judged(task) }),
);

function judged({ of, index, sessions }: Task) {
  if (of === 'displays') return judgePairs(index, sessions);
  const row = ALL_ROWS[index]!;
  return tableRow(row, index, judge(row, sessions, seedOf(index)));
}
