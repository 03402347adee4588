/**
 * npm run coverage [-- SESSIONS]
 *
 * Judges the analysis on every row, prints the table, and writes it to src/analysis/coverage-table.json when all
 * sessions (2000 a row) were run. Exit code 1 where a row's coverage is outside 93 to 98 % by more than the
 * sampling of so many sessions explains.
 */
import { writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { ROWS } from './rows.ts';
import { ACCEPTED, isAccepted, LEVEL, TABLE_FILE, type TableRow } from './table.ts';

const FULL = 2000;
const asked = process.argv[2];
const sessions = asked === undefined ? FULL : Number(asked);
if (!Number.isInteger(sessions) || sessions < 2) {
  console.error(`'${asked}' is no number of sessions: give a whole number of 2 or more, or nothing for ${FULL}.`);
  process.exit(2);
}

const rows = await judgeAll();
console.log(render(rows));
const refused = rows.filter(
  (row) =>
    !isAccepted(row.total.coverage, row.sessions, row.safeSide) ||
    !isAccepted(row.difference.coverage, row.sessions / 2, row.safeSide),
);
if (sessions === FULL) writeFileSync(TABLE_FILE, `${JSON.stringify({ level: LEVEL, rows }, null, 1)}\n`);
console.log(
  `\n${rows.length} rows of ${sessions} sessions; ${refused.length} outside ${percent(ACCEPTED.low)} to ${percent(ACCEPTED.high)} by more than two standard errors.`,
);
process.exitCode = refused.length > 0 && sessions === FULL ? 1 : 0;

function judgeAll(): Promise<TableRow[]> {
  const results: TableRow[] = [];
  let next = 0;
  let done = 0;
  return new Promise((resolve, reject) => {
    for (let w = 0; w < Math.min(availableParallelism(), ROWS.length); w += 1) {
      const worker = new Worker(new URL('./worker.ts', import.meta.url));
      const give = (): void => {
        if (next < ROWS.length) worker.postMessage({ index: next++, sessions });
        else void worker.terminate();
      };
      worker.on('error', reject);
      worker.on('message', ({ index, row }: { index: number; row: TableRow }) => {
        results[index] = row;
        done += 1;
        if (process.stderr.isTTY) process.stderr.write(`\r${done}/${ROWS.length} `);
        give();
        if (done === ROWS.length) {
          if (process.stderr.isTTY) process.stderr.write('\r');
          resolve(results);
        }
      });
      give();
    }
  });
}

function render(table: readonly TableRow[]): string {
  const width = Math.max(...table.map(({ rig }) => rig.length));
  const score = ({ coverage, halfWidthMs }: { coverage: number; halfWidthMs: number }): string =>
    `${percent(coverage).padStart(7)} ±${halfWidthMs.toFixed(1).padStart(5)} ms`;
  const head = `${''.padEnd(width)}  spacing  ${'this analysis'.padEnd(17)}  ${'textbook'.padEnd(17)}  difference of two`;
  const lines = table.map(
    ({ rig, spacingMs, total, textbook, difference }) =>
      `${rig.padEnd(width)}  ${`${spacingMs / 1000} s`.padStart(7)}  ${score(total)}  ${score(textbook)}  ${score(difference)}`,
  );
  return [head, ...lines].join('\n');
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}
