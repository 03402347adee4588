/** Judges the rows it is sent, one at a time. */
import { parentPort } from 'node:worker_threads';
import { judge } from './judge.ts';
import { ALL_ROWS, seedOf, tableRow } from './table.ts';

parentPort!.on('message', ({ index, sessions }: { index: number; sessions: number }) => {
  const row = ALL_ROWS[index]!;
  parentPort!.postMessage({ index, row: tableRow(row, index, judge(row, sessions, seedOf(index))) });
});
