/**
 * How often does the bench say something false? Too slow for a unit test:
 *
 *   npm run error-rates              2,000 demonstrations
 *   npm run error-rates -- 200       fewer
 *   npm run error-rates -- 2000 day  of the second table alone the rows with that word in their names
 *
 * A second table counts verdicts and claims on benches that vary as real ones do (bench-rows.ts), a twentieth as many
 * of each. Nothing was tuned on its seeds, from 95001 on, nor on its other rates.
 *
 * Fails where the family-wise error of "slower" and "faster", or the share of sameness declared at the margin, is above
 * 5.5 % by more than four standard deviations of a share of 5 % can explain.
 */
import { shareTolerance } from '../support/normal-noise.ts';
import { BENCH_ROWS } from './bench-rows.ts';
import { countErrors } from './null-demonstrations.ts';
import { verdictRates, type BenchRow } from './verdict-rates.ts';

const demonstrations = Number(process.argv[2] ?? 2000);
if (!Number.isInteger(demonstrations) || demonstrations < 1) {
  console.error(`the number of demonstrations is a whole number from 1 up, not ${process.argv[2]}`);
  process.exit(1);
}
const [, , , word] = process.argv;
const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;
if (word === undefined) countOnDemonstrations();
countOnBenches(BENCH_ROWS.filter(({ name }) => name.includes(word ?? '')));

function countOnDemonstrations(): void {
  const errors = countErrors(demonstrations, 1);
  const familyWise = errors.falseDifferences / errors.demonstrations;
  const sameness = errors.falseSameness / errors.comparisons;
  console.log(`${errors.demonstrations} demonstrations without any difference, ${errors.comparisons} comparisons.`);
  console.log(`Any "slower" or "faster" (Holm): ${percent(familyWise)} of demonstrations.`);
  console.log(`"The same" at a true difference of the margin: ${percent(sameness)} of comparisons.`);
  const limit = (n: number): number => Math.max(0.055, 0.05 + shareTolerance(0.05, n));
  if (familyWise > limit(errors.demonstrations) || sameness > limit(errors.demonstrations)) {
    console.error('More than the 5 % that are claimed.');
    process.exitCode = 1;
  }
}

function countOnBenches(rows: readonly BenchRow[]): void {
  const benches = Math.max(1, Math.round(demonstrations / 20));
  console.log(
    `\n${benches} benches a row: any false verdict, any false verdict or claim, a wrong lowest, true differences found against a z test`,
  );
  for (const row of rows) {
    const { anyFalse, anyFalseClaimed, wrongLowest, power } = verdictRates(row, benches, 95001);
    console.log(`${row.name}: ${[anyFalse, anyFalseClaimed, wrongLowest, power].map(percent).join(', ')}`);
  }
}
