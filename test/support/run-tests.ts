/**
 * `npm test`: types, then every test. What follows `--` goes to the test runner:
 * `npm test -- --project unit`, `npm test -- test/ingest`.
 */
import { spawnSync } from 'node:child_process';
import { describeCounts } from './count-reporter.ts';
import { PROJECT } from './project-files.ts';

const run = (command: string, ...words: string[]): number =>
  spawnSync(command, words, { cwd: PROJECT, stdio: 'inherit', shell: process.platform === 'win32' }).status ?? 1;

if (run('astro', 'check') === 0) {
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
  console.error('\nThe types do not check, so no test was run.');
  console.log(describeCounts({ passed: 0, failed: 1, skipped: 0 }));
  process.exitCode = 1;
}
