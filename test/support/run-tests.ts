/**
 * `npm test`: types, style and unused code, then every test. What follows `--` goes to the test runner:
 * `npm test -- --project unit`, `npm test -- test/ingest`.
 */
import '../../src/commands/no-requests.ts';
import { spawnSync } from 'node:child_process';
import { describeCounts } from './count-reporter.ts';
import { PROJECT } from './project-files.ts';

const run = (command: string, ...words: string[]): number =>
  spawnSync(command, words, { cwd: PROJECT, stdio: 'inherit', shell: process.platform === 'win32' }).status ?? 1;

/** What must be sound before a test is worth running, and what is wrong where it is not. */
const SOUND: readonly { readonly holds: () => boolean; readonly otherwise: string }[] = [
  { holds: () => run('astro', 'check') === 0, otherwise: 'The types do not check' },
  {
    holds: () => run('npm', 'run', '--silent', 'lint') === 0,
    otherwise: 'The style does not hold (npm run format sets most of it)',
  },
];
const unsound = SOUND.find(({ holds }) => !holds());
if (unsound === undefined) {
  process.exitCode = run(
    'vitest',
    'run',
    '--config',
    'test/vitest.config.ts',
    '--reporter=default',
    '--reporter=./test/support/count-reporter.ts',
    ...process.argv.slice(2),
  );
} else {
  console.error(`\n${unsound.otherwise}, so no test was run.`);
  console.log(describeCounts({ passed: 0, failed: 1, skipped: 0 }));
  process.exitCode = 1;
}
