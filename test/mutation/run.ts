/**
 * `npm run mutants [-- --share 0.02 --seed 7] [options of Stryker]`: all mutants, or a seeded share of them. Tests are
 * mended on one seed, and the score is reported on another.
 */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { PROJECT } from '../support/project-files.ts';

const { values, tokens } = parseArgs({
  options: { share: { type: 'string' }, seed: { type: 'string' } },
  strict: false,
  tokens: true,
});
const { share = '1', seed = '1' } = values as { readonly share?: string; readonly seed?: string };
if (!(Number(share) > 0 && Number(share) <= 1)) throw new RangeError(`--share is above 0 and at most 1, not ${share}`);
const own = new Set(tokens.flatMap((token) => (isOwn(token) ? [token.index, token.index + 1] : [])));
const rest = process.argv.slice(2).filter((_word, at) => !own.has(at));

function isOwn(token: (typeof tokens)[number]): boolean {
  return token.kind === 'option' && ['share', 'seed'].includes(token.name);
}

const { status } = spawnSync(
  process.execPath,
  [
    join(PROJECT, 'node_modules/@stryker-mutator/core/bin/stryker.js'),
    'run',
    'test/mutation/stryker.json',
    ...(Number(share) < 1 ? ['--checkers', 'sample'] : []),
    ...rest,
  ],
  { cwd: PROJECT, stdio: 'inherit', env: { ...process.env, MUTANTS_SHARE: share, MUTANTS_SEED: seed } },
);
process.exitCode = status ?? 1;
