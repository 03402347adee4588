/** That a build with mistakes names them all, publishes nothing, and leaves what was published alone. */
import { existsSync, readdirSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { MARK } from '../../src/commands/site-mark.ts';
import { copyProject, type CommandResult, type ProjectCopy } from '../support/project-copy.ts';

const FRONT = '---\ntitle: Broken\nsummary: Asks for what is not there.\ndate: 2026-04-21\n---\n\n';

interface Mistakes {
  readonly name: string;
  readonly files: Readonly<Record<string, string>>;
  /** What stderr has to say, one line each, in this order. */
  readonly says: readonly RegExp[];
}

const CASES: readonly Mistakes[] = [
  {
    name: 'write-ups that ask for what does not exist',
    files: {
      'content/reports/a-broken.mdx': `${FRONT}<Figure id="total/venick-uhd25-a" />\n\n<Figur id="total/vennick-uhd25-a" />\n\n<Figure id="total/vennick-uhd25-a" colour="red" />\n`,
      'content/reports/b-broken.mdx': `${FRONT}See [the pit](/rigs/pitt/) and [the measurand](../../metod/).\n`,
      'content/methods/instrument.mdx': `${FRONT}<Readings session="vennick-uhd25-z" />\n`,
    },
    says: [
      /^content\/methods\/instrument\.mdx:7:1 .*"vennick-uhd25-z".*Did you mean .*vennick-uhd25-a/,
      /^content\/reports\/a-broken\.mdx:7:1 .*"total\/venick-uhd25-a".*Did you mean total\/vennick-uhd25-a/,
      /^content\/reports\/a-broken\.mdx:9:1 .*<Figur>.*Did you mean Figure\b/,
      /^content\/reports\/a-broken\.mdx:11:1 .*"colour"/,
      /^content\/reports\/b-broken\.mdx:7:5 .*"\/rigs\/pitt\/".*Did you mean \/rigs\/pit\//,
      /^content\/reports\/b-broken\.mdx:7:32 .*"\/metod\/".*Did you mean \/method\//,
    ],
  },
  {
    name: 'a write-up that runs a command, prints the environment and forges a figure',
    files: {
      'content/reports/a-broken.mdx': `${FRONT}import { writeFileSync } from 'node:fs'\n\nexport const Figure = () => writeFileSync('ran', '')\n\n{process.env.PATH}\n\n<a class="figure" href="/">1 ms</a>\n\n<iframe src="https://example.org/" />\n`,
    },
    says: [
      /^content\/reports\/a-broken\.mdx:7:1 .*"import .*is code/,
      /^content\/reports\/a-broken\.mdx:9:1 .*"export const Figure.*is code/,
      /^content\/reports\/a-broken\.mdx:11:1 .*"\{process\.env\.PATH\}" is code/,
      /^content\/reports\/a-broken\.mdx:13:1 .*no attribute "class"/,
      /^content\/reports\/a-broken\.mdx:15:1 .*<iframe>/,
    ],
  },
  {
    name: 'sessions with mistakes, and write-ups that are not MDX',
    files: {
      'content/reports/a-broken.mdx': `${FRONT}A < B, and {unclosed\n`,
      'content/reports/b-broken.mdx': FRONT.replace('2026-04-21', '21.4.2026'),
      'data/sessions/x-broken.md':
        '---\nbody: vennick-q5\nrig: balcny\nmethod: two-timers\ndate: 2026-04-11\nsettings: { output: uhd, rate: 25 }\n---\n',
      'data/sessions/x-broken.csv': 'run,source,shown,exclude,note\n1,00:06.929,00:06.596,,\n',
      'data/sessions/vennick-hd60-a.csv': 'run,source,shown,exclude,note\n1,00:06.929,00:06.5x6,,\n',
    },
    says: [
      /^content\/reports\/a-broken\.mdx:7:/,
      /^content\/reports\/b-broken\.mdx:4:\d+ .*YYYY-MM-DD.*"21\.4\.2026"/,
      /^data\/sessions\/vennick-hd60-a\.csv:2 {2}shown .*"00:06\.5x6"/,
      /^data\/sessions\/x-broken\.md:2:7 .*"vennick-q5".*Did you mean vennick-q4/,
      /^data\/sessions\/x-broken\.md:3:6 .*"balcny".*Did you mean balcony/,
    ],
  },
];

let copy: ProjectCopy;
beforeAll(() => {
  copy = copyProject({ builtAs: inject('builtProject') });
});
afterAll(() => copy?.[Symbol.dispose]());

/** Runs a command with these files in place, and takes them away again. */
function runWith(files: Mistakes['files'], script: string): CommandResult {
  const before = Object.keys(files).map(
    (path) => [path, existsSync(`${copy.root}/${path}`) ? copy.read(path) : undefined] as const,
  );
  for (const [path, content] of Object.entries(files)) copy.write(path, content);
  try {
    return copy.run(script);
  } finally {
    for (const [path, content] of before) content === undefined ? copy.remove(path) : copy.write(path, content);
  }
}

/** A site as a build leaves it, of one page. */
function writeSite(): void {
  copy.write('dist/index.html', 'the last good site');
  copy.write(`dist/${MARK}`, `${'0'.repeat(64)}  index.html\n`);
}

/** What a command finds of a site when it begins, and whether it is still so. */
const SITES = {
  none: { set: () => undefined, expectAsItWas: () => expect(existsSync(copy.dist)).toBe(false) },
  'the last good one': {
    set: writeSite,
    expectAsItWas() {
      expect(readdirSync(copy.dist)).toEqual(['index.html', MARK]);
      expect(copy.read('dist/index.html')).toBe('the last good site');
      copy.remove('dist');
    },
  },
};

describe.each(CASES)('$name', ({ files, says }) => {
  it.each([
    ['build', 'none'],
    ['start', 'the last good one'],
    ['figures', 'none'],
  ] as const)(
    'stop `npm run %s` with code 1, all at once, by file, with the nearest choices; the site, %s, stays',
    (script, site) => {
      SITES[site].set();
      const { code, stdout, stderr } = runWith(files, script);
      expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
      const lines = stderr.split('\n').filter((line) => Object.keys(files).some((path) => line.startsWith(path)));
      expect(lines).toEqual(says.map((one) => expect.stringMatching(one)));
      expect(stderr).toContain('Nothing was published.');
      // An author's mistake is no crash.
      expect(stderr).not.toMatch(/\n\s+at /);
      SITES[site].expectAsItWas();
      expect(existsSync(`${copy.root}/ran`)).toBe(false);
    },
  );
});

describe('a fault that shows only when pages are drawn', () => {
  it('leaves the last good site as it was', () => {
    writeSite();
    const { code, stderr } = runWith(
      {
        'content/site.md': copy.read('content/site.md').replace('---\n', '---\nwrite-ups-run-code: true\n'),
        'content/reports/a-broken.mdx': `${FRONT}{nobodyDefinedThis.at(0)}\n`,
      },
      'build',
    );
    expect(code).toBe(1);
    expect(stderr).toContain('nobodyDefinedThis');
    expect(copy.read('dist/index.html')).toBe('the last good site');
    copy.remove('dist');
  });
});
