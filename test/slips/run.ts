/**
 * `npm run slips [-- SEED [COUNT]]`: tries single slips of the demonstration; by default on a seed held out from
 * tuning.
 */
import { runSlips, type End } from './run-slips.ts';

/** Rules were tuned on seed 1; what is reported is of another. */
const HELD_OUT = 20_260;
const [seed = HELD_OUT, count = 320] = process.argv.slice(2).map(Number);
const outcomes = await runSlips(seed, count);
const ENDS: readonly End[] = ['refused', 'found', 'unchanged', 'within scatter', 'got through', 'crash'];
const row = (name: string, of: readonly { readonly end: End }[]): string =>
  [name.padEnd(34), ...ENDS.map((end) => String(of.filter((one) => one.end === end).length).padStart(16))].join('');
console.log([`seed ${seed}`.padEnd(34), ...ENDS.map((end) => end.padStart(16))].join(''));
for (const [kind, of] of Map.groupBy(outcomes, (outcome) => outcome.kind)) console.log(row(kind, of));
console.log(row(`all ${outcomes.length}`, outcomes));
const failed = outcomes.filter(({ end }) => end === 'got through' || end === 'crash');
for (const { kind, file, end, says } of failed) console.log(`\n${end}: ${kind}, ${file}\n  ${says}`);
process.exitCode = failed.length > 0 ? 1 : 0;
