import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PROJECT } from '../support/project-files.ts';

/** The first line that a command complains with; no command of these gets as far as reading a file. */
function complaint(command: string, words: readonly string[], env: NodeJS.ProcessEnv = {}) {
  const { status, stderr, stdout } = spawnSync(process.execPath, [join(PROJECT, 'src/commands', command), ...words], {
    env: { ...process.env, ...env },
    encoding: 'utf8',
  });
  return { status, stdout, lines: stderr.split('\n') };
}

describe('a command that is called in a way it does not know', () => {
  it.each([
    ['build.ts', ['--strickt'], "Unknown option '--strickt'; did you mean --strict?"],
    ['build.ts', ['--prefix', 'x'], "Unknown option '--prefix'."],
    ['build.ts', ['--strict=yes'], "Option '--strict' does not take an argument."],
    ['build.ts', ['strict'], "'strict' belongs to no option; did you mean --strict?"],
    ['build.ts', ['now', 'please'], "'now please' belongs to no option; put text of several words in quotes."],
    ['build.ts', ['--output', 'a', '--output', 'b'], '--output is given twice; give it once.'],
    ['start.ts', ['--port', '80x'], "--port is a number up to 65535, not '80x'."],
    ['dev.ts', ['--port', '70000'], "--port is a number up to 65535, not '70000'."],
    ['figures.ts', ['--dat', 'x'], "Unknown option '--dat'; did you mean --data?"],
    ['plan.ts', ['--rigs', 'pit'], "Unknown option '--rigs'; did you mean --rig?"],
    ['add-body.ts', ['--makr', 'X'], "Unknown option '--makr'; did you mean --maker?"],
    ['record.ts', ['--resaon', 'x'], "Unknown option '--resaon'; did you mean --reason?"],
    ['record.ts', ['\u001b[2J'], "'\\u{1b}[2J' belongs to no option; put text of several words in quotes."],
  ])('%s %j is refused with the nearest it could mean', (command, words, message) => {
    const { status, stdout, lines } = complaint(command, words);
    expect({ status, stdout, first: lines[0] }).toEqual({ status: 2, stdout: '', first: message });
  });

  it.each([
    ['build.ts', 'build', { npm_config_strict: 'true' }, 'npm run build -- --strict'],
    ['build.ts', 'build', { npm_config_strickt: 'true' }, 'npm run build -- --strict'],
    ['start.ts', 'start', { npm_config_port: '8080' }, 'npm start -- --port "8080"'],
    ['plan.ts', 'plan', { npm_config_half_width: '5 ms' }, 'npm run plan -- --half-width "5 ms"'],
    [
      'record.ts',
      'record',
      { npm_config_date: '2026-05-02', npm_config_reason: 'why' },
      'npm run record -- --date "2026-05-02" --reason "why"',
    ],
  ])('%s whose options npm took says what to type', (command, script, env, typed) => {
    const { status, lines } = complaint(command, [], { npm_lifecycle_event: script, ...env });
    expect([status, lines[2]]).toEqual([2, `  ${typed}`]);
    expect(lines[0]).toMatch(
      /^npm took (?:an option|options) of this command for itself; a lone -- hands on what follows/,
    );
  });

  it('the settings that npm hands to every command are none of it', () => {
    const env = { npm_lifecycle_event: 'build', npm_config_prefix: 'x', npm_config_cache: 'y', npm_config_noproxy: '' };
    expect(complaint('build.ts', ['--help'], env)).toMatchObject({ status: 0, lines: [''] });
  });
});
