import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { PROJECT } from '../support/project-files.ts';

const folder = mkdtempSync(join(tmpdir(), 'launch-'));
afterAll(() => rmSync(folder, { recursive: true }));

const program = join(folder, 'program.ts');
writeFileSync(
  program,
  `const told: string[] = [process.execPath, process.env['ASTRO_TELEMETRY_DISABLED'] ?? '', ...process.argv.slice(2)];
console.log(JSON.stringify(told));
process.exitCode = 3;
`,
);
/** Another Node, as far as the launcher can tell. */
const other = join(folder, basename(process.execPath));
copyFileSync(process.execPath, other);

describe('the launcher', () => {
  it.each([
    ['the pinned Node', process.execPath],
    ['another', other],
  ])('called on %s runs a program on the pinned one, with its words, silent and with its exit code', (_what, node) => {
    const { ASTRO_TELEMETRY_DISABLED, ...env } = process.env;
    const words = [join(PROJECT, 'src/commands/launch.mjs'), program, '--a', 'b c'];
    const { status, stdout, stderr } = spawnSync(node, words, { env, encoding: 'utf8' });
    expect({ status, stderr }).toEqual({ status: 3, stderr: '' });
    expect(JSON.parse(stdout)).toEqual([process.execPath, '1', '--a', 'b c']);
  });
});
