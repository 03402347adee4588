import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { firstInPath, installPackage } from '../support/install.ts';
import { PROJECT } from '../support/project-files.ts';

const hasR = (): boolean => firstInPath(['Rscript'], process.env['PATH'] ?? '') !== undefined;
// Installing R takes a minute or two, once; where this machine cannot, the committed outputs stand for it.
const canRun = hasR() || (installPackage('r-base-core') && hasR());

it.skipIf(!canRun)('R still prints the numbers that our functions are held to', () => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(PROJECT, 'test/reference/crosscheck.ts'), '--require'],
    { encoding: 'utf8' },
  );
  expect([status, stderr]).toEqual([0, '']);
  expect(Number(/: (\d+) numbers agree/.exec(stdout)?.[1])).toBeGreaterThan(1000);
});
