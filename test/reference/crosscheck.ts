/**
 * Reruns the R scripts of this folder and compares what they print with the committed outputs, number by number.
 *
 *   npm run crosscheck              compare; says so and passes where R is not installed
 *   npm run crosscheck -- --require  the same, but fails where R is not installed
 *   npm run crosscheck -- --write   write the outputs anew, and R's version with them
 */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { compareOutputs } from './compare-outputs.ts';

const here = fileURLToPath(new URL('.', import.meta.url));
const options = process.argv.slice(2);
const unknown = options.filter((option) => option !== '--require' && option !== '--write');
if (unknown.length > 0) fail(`unknown option ${unknown.join(', ')}: use --require or --write`);

const version = rscript(['-e', 'cat(R.version.string)']);
if (version === undefined) {
  const hint =
    'R is not installed, so nothing was compared (Debian: apt-get install --no-install-recommends r-base-core)';
  if (options.length > 0) fail(hint);
  console.log(hint);
  process.exit(0);
}

const scripts = readdirSync(here)
  .filter((name) => name.endsWith('.R') && name !== 'emit.R')
  .sort();
if (scripts.length === 0) fail('no R script was found');
if (options.includes('--write')) writeFileSync(`${here}outputs/r-version.txt`, `${version}\n`);
let compared = 0;
const differences: string[] = [];
for (const script of scripts) {
  const output = rscript(['--vanilla', script]);
  if (output === undefined) fail(`Rscript ${script} failed`);
  const committed = `${here}outputs/${script.replace(/\.R$/, '.txt')}`;
  if (options.includes('--write')) writeFileSync(committed, output);
  const result = compareOutputs(readFileSync(committed, 'utf8'), output);
  compared += result.numbers;
  differences.push(...result.differences.map((difference) => `${script}: ${difference}`));
}
if (differences.length > 0)
  fail(`${differences.length} of ${compared} numbers differ from the committed outputs:\n${differences.join('\n')}`);
console.log(`${scripts.length} R scripts rerun with ${version}: ${compared} numbers agree with the committed outputs.`);

/** Standard output, or undefined where Rscript is missing; ends the run where it fails. */
function rscript(args: readonly string[]): string | undefined {
  const run = spawnSync('Rscript', args, { cwd: here, encoding: 'utf8', env: { ...process.env, LC_ALL: 'C' } });
  if (run.error) return undefined;
  if (run.status !== 0) fail(`Rscript ${args.join(' ')} failed:\n${run.stderr}`);
  return run.stdout;
}

function fail(message: string): never {
  console.error(message);
  process.exit(1);
}
