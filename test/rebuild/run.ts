/**
 * `npm run rebuilds [-- SEED [EDITS]]`: builds after each of many random edits, and compares with a build from nothing.
 */
import { runEdits } from './run-edits.ts';

const [seed = 1, edits = 200] = process.argv.slice(2).map(Number);
let count = 0;
const outcomes = runEdits({
  seed,
  edits,
  every: 1,
  report: ({ edit, isBuilt, stale = [] }) => {
    count += 1;
    console.log(
      `${String(count).padStart(4)} of ${edits}  ${edit.padEnd(24)} ${isBuilt ? '' : 'refused, and taken back'}${stale.map((line) => `\n      stale: ${line}`).join('')}`,
    );
  },
});
const stale = outcomes.filter((outcome) => (outcome.stale ?? []).length > 0);
console.log(
  `seed ${seed}: ${outcomes.length} edits, ${outcomes.filter(({ isBuilt }) => !isBuilt).length} of them refused; ${stale.length} left a page behind`,
);
process.exitCode = stale.length > 0 ? 1 : 0;
