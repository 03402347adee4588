import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { VALID_FILES, writeBenchFolder, type Files } from '../support/bench-folder.ts';
import { PROJECT } from '../support/project-files.ts';
import { TWO_DISPLAYS } from '../support/two-displays.ts';

/** A bench to plan on, in a folder of its own. */
function planner(changes: Files = {}) {
  const folder = writeBenchFolder(changes);
  const run =
    (command: string) =>
    (...words: readonly string[]) => {
      const { status, stdout, stderr } = spawnSync(
        process.execPath,
        [join(PROJECT, 'src/commands', command), ...words],
        { env: { ...process.env, LAGFOLIO_PUBLICATION: folder.root }, encoding: 'utf8', input: '' },
      );
      return { status, stdout, stderr };
    };
  return {
    plan: run('plan.ts'),
    addBody: run('add-body.ts'),
    bench: () => folder.read(),
    read: (path: string) => readFileSync(join(folder.root, path), 'utf8'),
    has: (path: string) => existsSync(join(folder.root, path)),
    sessions: () => readdirSync(join(folder.root, 'data/sessions')).sort(),
    [Symbol.dispose]: () => folder[Symbol.dispose](),
  };
}

const UNTOUCHED = ['a.csv', 'a.md'];

describe('npm run plan', () => {
  it('says how many clips and readings, how far apart, and what that gives', () => {
    using bench = planner();
    const { status, stdout } = bench.plan('--rig', 'pit', '--rate', '24', '--half-width', '12 ms');
    expect(status).toBe(0);
    expect(stdout).toMatch(
      /^24 frames\/s:\n {2}\d+ clips of \d+ readings each, at least \d\.\d s apart \(\d+ readings\)\n {2}Expected half-width of the 95 % interval, for the clips that are read: (\d+(?:\.\d)?) ms\.\n$/,
    );
    expect(Number(/are read: ([\d.]+) ms/.exec(stdout)?.[1])).toBeLessThanOrEqual(12);
    expect(bench.sessions()).toEqual(UNTOUCHED);
  });

  it('writes a planned session for every combination, which the bench then counts and does not publish', async () => {
    using bench = planner();
    const { status, stdout } = bench.plan(
      '--rig',
      'pit',
      '--rate',
      '24,59.94',
      '--set',
      'audio-out=on',
      '--body',
      'vennick',
      '--half-width',
      '20',
    );
    expect(status).toBe(0);
    expect(stdout).toContain('To be measured in this order:');
    const { planned, sessions } = await bench.bench();
    expect(sessions.map(({ id }) => id)).toEqual(['a']);
    expect(planned.map(({ id, body, rig, method, settings }) => ({ id, body, rig, method, settings }))).toEqual([
      {
        id: 'vennick-24-a',
        body: 'vennick',
        rig: 'pit',
        method: 'two-timers',
        settings: { rate: '24', 'audio-out': 'on' },
      },
      {
        id: 'vennick-59-94-a',
        body: 'vennick',
        rig: 'pit',
        method: 'two-timers',
        settings: { rate: '59.94', 'audio-out': 'on' },
      },
    ]);
    expect(bench.read('data/sessions/vennick-24-a.csv')).toBe('run,source,shown,exclude,note\n');
    expect([1, 2].map((n) => stdout.includes(`  ${n}. data/sessions/`))).toEqual([true, true]);
  });

  it('takes what was not said from measured sessions, never from planned ones, and says which', async () => {
    using bench = planner();
    const words = ['--rig', 'balcony', '--rate', '24', '--body', 'vennick', '--half-width', '20'];
    bench.plan(...words, '--set', 'audio-out=off');
    const { stdout } = bench.plan(...words);
    // as the one session that is measured there states them
    expect(stdout).toContain(
      'Not said, so as in most sessions measured on Balcony: bit depth 10, 4:2:2, audio embedding on. For others, say --set.',
    );
    expect((await bench.bench()).planned.map(({ settings }) => settings)).toEqual([
      { rate: '24', 'bit-depth': '10', chroma: '4:2:2', 'audio-out': 'on' },
      { rate: '24', 'bit-depth': '10', chroma: '4:2:2', 'audio-out': 'off' },
    ]);
  });

  it('names the settings that nobody stated, on the terminal and in the file', () => {
    using bench = planner();
    const { stdout } = bench.plan('--rig', 'pit', '--rate', '24', '--body', 'vennick', '--set', 'audio-out=on');
    expect(stdout).toContain('Not said, and stated by no measured session: bit-depth, chroma. Say --set');
    expect(bench.read('data/sessions/vennick-24-a.md')).toContain('Still to be filled in: bit-depth, chroma.');
  });

  it('makes no copies when run twice, and the next letter when asked to repeat; overwrites nothing', () => {
    using bench = planner();
    const words = ['--rig', 'pit', '--rate', '24', '--body', 'vennick', '--half-width', '20'];
    const first = [...UNTOUCHED, 'vennick-24-a.csv', 'vennick-24-a.md'];
    bench.plan(...words);
    expect(bench.sessions()).toEqual(first);
    const again = bench.plan(...words);
    expect([again.status, again.stdout]).toEqual([
      0,
      expect.stringContaining('Planned already: data/sessions/vennick-24-a.md. To plan it once more, say --repeat.'),
    ]);
    expect(bench.sessions()).toEqual(first);
    bench.plan(...words, '--repeat');
    expect(bench.sessions()).toEqual([...first, 'vennick-24-b.csv', 'vennick-24-b.md']);
  });

  it('shows what ever more readings give where nothing particular is wanted, and can be tried without writing', () => {
    using bench = planner();
    const { status, stdout } = bench.plan('--rig', 'pit', '--rate', '24', '--body', 'vennick', '--dry');
    expect(status).toBe(0);
    expect(stdout.match(/^ {2}[→ ] +\d+ {2}± [\d.]+ ms +\d clips of \d+ readings each/gm)?.length).toBe(6);
    expect(stdout.match(/^ {2}→ /gm)).toHaveLength(1);
    expect(stdout).toContain('Nothing was written, as --dry says. Without it:\n  data/sessions/vennick-24-a.md\n');
    expect(bench.sessions()).toEqual(UNTOUCHED);
  });

  it('says what ever more readings of two displays give, how it is done, and writes the empty comparison', async () => {
    using bench = planner(TWO_DISPLAYS);
    const words = [
      '--display',
      'wall',
      '--against',
      'screen',
      '--picture',
      '59.94',
      '--observer-rate',
      '240',
      '--write',
    ];
    const { status, stdout, stderr } = bench.plan(...words);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^Wall against Stage screen:\n/);
    expect(stdout.match(/^ {2}[→ ] +\d+ {2}± [\d.]+ ms +\d clips of \d+ readings each/gm)?.length).toBe(4);
    expect(stdout).toContain('“Side by side”, content/methods/side-by-side.mdx.');
    expect(bench.read('data/display-pairs/wall-beside-screen.csv')).toBe('run,source,shown,exclude,note\n');
    const front = bench.read('data/display-pairs/wall-beside-screen.md');
    expect(front).toContain('\noutputs: splitter\n');
    expect(front).toContain('\n  refresh: 60000/1001\n');
    expect(front).toContain('# Two running timers are a large flickering target');
    // planned, so that it is no comparison yet, and no mistake
    const { displayPairs, plannedPairs } = await bench.bench();
    expect([displayPairs, plannedPairs.map(({ id }) => id)]).toEqual([[], ['wall-beside-screen']]);
    expect(bench.plan(...words).stdout).toContain(
      'Planned already: data/display-pairs/wall-beside-screen.md. To plan it once more, say --repeat.\n\nNothing to write.',
    );
    expect(bench.has('data/display-pairs/wall-beside-screen-2.md')).toBe(false);
    expect(bench.plan(...words, '--repeat').stdout).toContain('data/display-pairs/wall-beside-screen-2.md');
  });

  it.each([
    [
      'what is of two displays alone',
      ['--rig', 'pit', '--rate', '24', '--write'],
      '--write goes with --display and --against',
    ],
    ['one display alone', ['--display', 'wall'], 'Say which: --against screen | wall'],
    ['one display twice', ['--display', 'wall', '--against', 'wall'], 'are two displays, not one'],
    [
      'a body between displays',
      ['--display', 'wall', '--against', 'screen', '--body', 'vennick'],
      '--body is of a session',
    ],
    ['no picture', ['--display', 'wall', '--against', 'screen'], 'Say at which rate the picture comes: --picture 60'],
    [
      'outputs that are none',
      ['--display', 'wall', '--against', 'screen', '--picture', '60', '--outputs', 'two'],
      '--outputs is splitter, unknown or a duration such as "1 ms", not \'two\'.',
    ],
    [
      'a method without a note',
      ['--display', 'wall', '--against', 'screen', '--picture', '60', '--method', 'mirrored-screen'],
      'write content/methods/mirrored-screen.mdx',
    ],
    [
      'a difference to be seen',
      ['--display', 'wall', '--against', 'screen', '--picture', '60', '--difference', '5 ms'],
      'Of two displays plan for --half-width',
    ],
  ])('of two displays refuses %s', (_what, words, says) => {
    using bench = planner(TWO_DISPLAYS);
    const { status, stderr } = bench.plan(...words);
    expect([status, stderr]).toEqual([2, expect.stringContaining(says)]);
  });

  it.each([
    ['no rig', ['--rate', '24'], 'Say which: --rig balcony | pit'],
    ['a rig that is none', ['--rig', 'pitt', '--rate', '24'], "There is no rig 'pitt'; did you mean pit?"],
    ['no rate', ['--rig', 'pit'], 'Say at which frame rate: --rate 59.94'],
    [
      'a rate that no session here has',
      ['--rig', 'pit', '--rate', '25'],
      "'25' is no level of rate in data/settings.yaml; it has 23.976, 24, 59.94; did you mean 24?",
    ],
    [
      'a setting that is none',
      ['--rig', 'pit', '--rate', '24', '--set', 'chrome=4:2:0'],
      "There is no setting 'chrome'; did you mean chroma?",
    ],
    [
      'a setting without a level',
      ['--rig', 'pit', '--rate', '24', '--set', 'chroma'],
      "--set takes a setting and its level: --set output=uhd, not 'chroma'.",
    ],
    [
      'a width that is none',
      ['--rig', 'pit', '--rate', '24', '--half-width', 'narrow'],
      `--half-width is a duration above zero, such as "5 ms", not 'narrow'.`,
    ],
    [
      'two aims at once',
      ['--rig', 'pit', '--rate', '24', '--half-width', '5', '--difference', '5'],
      'Give --half-width or --difference, not both: they plan for different things.',
    ],
    [
      'a power without a difference',
      ['--rig', 'pit', '--rate', '24', '--power', '0.9'],
      '--power goes with --difference: it is the share of cases in which the difference is seen.',
    ],
    [
      'a power above one',
      ['--rig', 'pit', '--rate', '24', '--difference', '9', '--power', '90'],
      "--power is a share between 0 and 1, such as 0.8, not '90'.",
    ],
    [
      'a body that is none',
      ['--rig', 'pit', '--rate', '24', '--half-width', '20', '--body', 'venick'],
      "There is no body 'venick'; did you mean vennick?",
    ],
  ])('refuses %s, and writes nothing', (_what, words, message) => {
    using bench = planner();
    const { status, stderr } = bench.plan(...words);
    expect([status, stderr.trim()]).toEqual([2, message]);
    expect(bench.sessions()).toEqual(UNTOUCHED);
  });
});

describe('npm run add-body', () => {
  const BODY = ['--name', 'Fenn 3', '--maker', 'Fenn', '--model', '3', '--invented'];

  it('writes a body and the sessions that make it comparable, which read back as planned', async () => {
    using bench = planner();
    const { status, stdout } = bench.addBody(
      ...BODY,
      '--rig',
      'balcony',
      '--half-width',
      '20 ms',
      '--sensor-readout',
      '9 ms',
    );
    expect([status, stdout.includes('Measured on 1 other body.')]).toEqual([0, true]);
    const { bodies, planned } = await bench.bench();
    expect(bodies.find(({ id }) => id === 'fenn-3')).toMatchObject({
      name: 'Fenn 3',
      maker: 'Fenn',
      model: '3',
      readoutMs: 9,
      invented: true,
    });
    expect(planned).toHaveLength(1);
    expect(planned[0]).toMatchObject({
      body: 'fenn-3',
      rig: 'balcony',
      settings: { rate: '23.976', 'bit-depth': '10', chroma: '4:2:2', 'audio-out': 'on' },
    });
  });

  it('writes the body alone where nothing on the rig can be compared with it, and says what to do', async () => {
    using bench = planner();
    const { status, stdout } = bench.addBody(...BODY, '--rig', 'pit');
    expect(status).toBe(0);
    expect(stdout).toContain(
      'Nothing has been measured on pit yet that it could be compared with; plan its sessions with npm run plan -- --rig pit --body fenn-3 --rate RATE.',
    );
    expect((await bench.bench()).planned).toEqual([]);
  });

  it('can be tried without writing', () => {
    using bench = planner();
    const { status, stdout } = bench.addBody(...BODY, '--rig', 'balcony', '--half-width', '20 ms', '--dry');
    expect([
      status,
      stdout.includes('Nothing was written, as --dry says. Without it:\n  data/bodies/fenn-3.md\n'),
    ]).toEqual([0, true]);
    expect(bench.has('data/bodies/fenn-3.md')).toBe(false);
    expect(bench.sessions()).toEqual(UNTOUCHED);
  });

  it('asks nobody where there is nobody, and says what is missing', () => {
    using bench = planner();
    const { status, stderr } = bench.addBody('--name', 'Fenn 3');
    expect([status, stderr.split('\n')[0]]).toEqual([2, '--maker is missing, and there is nobody to ask.']);
    expect(bench.has('data/bodies/fenn-3.md')).toBe(false);
  });

  it.each([
    [
      'a body that is there',
      ['--name', 'Vennick', '--maker', 'O', '--model', 'V', '--rig', 'pit'],
      'data/bodies/vennick.md is there already; choose another --id. Nothing was written.',
    ],
    [
      'a name that gives no id',
      ['--name', '三', '--maker', 'O', '--model', 'V', '--rig', 'pit'],
      "'' cannot be an id; give one with --id, in lower-case letters, digits and hyphens.",
    ],
    [
      'a readout without a unit',
      [...BODY, '--rig', 'pit', '--sensor-readout', '9'],
      `--sensor-readout is a duration, such as "14 ms", not '9'.`,
    ],
    [
      'a seed that is none, before anything is written',
      [...BODY, '--rig', 'balcony', '--half-width', '20', '--seed', 'x'],
      "--seed is a whole number, not 'x'.",
    ],
    [
      'a name that would steer a terminal',
      ['--name', 'Fenn \u001b[2J3', '--maker', 'O', '--model', 'V', '--rig', 'pit'],
      '--name holds the character U+001B, which steers terminals or turns the direction of text.',
    ],
    ['no sessions at the most', [...BODY, '--rig', 'pit', '--most', '0'], "--most is a whole number above 0, not '0'."],
  ])('refuses %s', (_what, words, message) => {
    using bench = planner();
    const { status, stderr } = bench.addBody(...words);
    expect([status, stderr.trim()]).toEqual([2, message]);
    expect(bench.read('data/bodies/vennick.md')).toBe(VALID_FILES['data/bodies/vennick.md']);
    expect(bench.has('data/bodies/fenn-3.md')).toBe(false);
  });
});
