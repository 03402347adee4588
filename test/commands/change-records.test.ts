import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { publicationTexts } from '../../src/commands/publication-texts.ts';
import { compileSite } from '../../src/site/compile.ts';
import { foldersOf } from '../../src/site/publication.ts';
import { movedPages } from '../../src/views/moved-pages.ts';
import { VALID_FILES, writeBenchFolder, type Files } from '../support/bench-folder.ts';
import { PROJECT } from '../support/project-files.ts';

const REPORT = `${VALID_FILES['content/reports/first.mdx']}<Figure id="total/a" />, as [this](../../sessions/a/) shows.\n`;
const SECOND: Files = {
  'data/sessions/b.md': VALID_FILES['data/sessions/a.md'],
  'data/sessions/b.csv': VALID_FILES['data/sessions/a.csv'].replaceAll('00:', '01:'),
};

function publication(files: Files = {}) {
  const folder = writeBenchFolder({ 'content/reports/first.mdx': REPORT, ...files });
  return {
    root: folder.root,
    call: (command: string, ...words: readonly string[]) => {
      const { status, stdout, stderr } = spawnSync(
        process.execPath,
        [join(PROJECT, 'src/commands', `${command}.ts`), ...words],
        { env: { ...process.env, LAGFOLIO_PUBLICATION: folder.root }, encoding: 'utf8', input: '' },
      );
      return { status, stdout, stderr };
    },
    read: (path: string) => readFileSync(join(folder.root, path), 'utf8'),
    has: (path: string) => existsSync(join(folder.root, path)),
    all: () => publicationTexts(folder.root),
    [Symbol.dispose]: () => folder[Symbol.dispose](),
  };
}

describe('npm run rename', () => {
  it('keeps references, ledger and old address of a session right', async () => {
    using own = publication();
    expect(own.call('record', '--reason', 'First.', '--date', '2026-05-01').status).toBe(0);
    const { status, stdout } = own.call('rename', 'session', 'a', 'vennick-24');
    expect([status, stdout]).toEqual([0, expect.stringContaining('  data/sessions/a.csv: removed\n')]);
    expect(own.has('data/sessions/a.md') || own.has('data/sessions/a.csv')).toBe(false);
    expect(own.read('data/sessions/vennick-24.csv')).toBe(VALID_FILES['data/sessions/a.csv']);
    expect(own.read('content/reports/first.mdx')).toContain(
      '<Figure id="total/vennick-24" />, as [this](../../sessions/vennick-24/) shows.',
    );
    expect(own.call('record', '--reason', 'Renamed.', '--date', '2026-05-02').status).toBe(0);
    expect(movedPages(await compileSite(foldersOf(own.root)))).toMatchObject([
      { from: '/sessions/a/', to: '/sessions/vennick-24/' },
    ]);
  });

  it('changes nothing where it is only tried', async () => {
    using own = publication();
    const before = await own.all();
    expect(own.call('rename', 'body', 'vennick', 'fenn', '--dry').stdout).toContain(
      'Nothing was changed, as --dry says. Without it:\n',
    );
    expect(await own.all()).toEqual(before);
  });

  it.each([
    ['a kind that is none', ['lens', 'a', 'b'], /^Say first of which kind it is: session, body, rig, report\./],
    ['an id that is none', ['session', 'x', 'b'], /^There is no session 'x'/],
    ['an id that cannot be one', ['session', 'a', 'B 2'], /^'B 2' cannot be an id/],
    [
      'an id that is taken',
      ['session', 'a', 'b'],
      /^data\/sessions\/b\.md is there already; choose another id\. Nothing was changed\./,
    ],
  ])('refuses %s', (_what, words, message) => {
    using own = publication(SECOND);
    const { status, stderr } = own.call('rename', ...words);
    expect([status, stderr]).toEqual([2, expect.stringMatching(message)]);
  });
});

describe('npm run remove', () => {
  it('leads from the old address of what is gone, renamed before or not, to where readers are told why', async () => {
    using own = publication(SECOND);
    expect(own.call('rename', 'session', 'b', 'c').status).toBe(0);
    const record = (reason: string, day: number) =>
      expect(own.call('record', '--reason', reason, '--date', `2026-05-0${day}`).status).toBe(0);
    record('First.', 1);
    expect(own.call('rename', 'session', 'c', 'd').status).toBe(0);
    record('Renamed.', 2);
    expect(own.call('remove', 'session', 'd').status).toBe(0);
    record('Taken on the wrong lens.', 3);
    expect(movedPages(await compileSite(foldersOf(own.root)))).toMatchObject(
      ['d', 'c'].map((id) => ({
        from: `/sessions/${id}/`,
        to: expect.stringMatching(/^\/corrections\/#2026-05-03-taken-on-the-wrong-lens-/) as string,
        isGone: true,
      })),
    );
  });

  it('removes a session that nothing asks for, and refuses one that a report asks for, with the place', async () => {
    using own = publication(SECOND);
    const before = await own.all();
    const refused = own.call('remove', 'session', 'a');
    expect([refused.status, refused.stderr]).toEqual([1, expect.stringContaining('content/reports/first.mdx:')]);
    expect(await own.all()).toEqual(before);
    expect(own.call('remove', 'session', 'b').stdout).toBe(
      '  data/sessions/b.md: removed\n  data/sessions/b.csv: removed\n',
    );
    expect(own.has('data/sessions/b.md') || own.has('data/sessions/b.csv')).toBe(false);
  });

  it('removes a body with its sessions only if that is said', () => {
    const other = { 'data/bodies/fenn.md': VALID_FILES['data/bodies/vennick.md'] };
    const ofOther = VALID_FILES['data/sessions/a.md'].replace('vennick', 'fenn');
    using own = publication({ ...SECOND, ...other, 'data/sessions/b.md': ofOther });
    const refused = own.call('remove', 'body', 'fenn');
    expect([refused.status, refused.stderr]).toEqual([2, expect.stringMatching(/^1 session is of body fenn: b\. /)]);
    expect(own.call('remove', 'body', 'fenn', '--with-sessions').status).toBe(0);
    expect(own.has('data/bodies/fenn.md') || own.has('data/sessions/b.md')).toBe(false);
    expect(own.has('data/sessions/a.md')).toBe(true);
  });
});

describe('npm run bring-over', () => {
  const PLANS: Files = {
    'data/sessions/a.md': VALID_FILES['data/sessions/a.md'].replace(
      'A quiet morning.',
      'Session 1 of 2, in an order drawn at random. Plan: 4 clips of 5 readings.\nLet the body warm up for 15 min with these settings before the first reading. If it shows a temperature warning, stop, switch it off and let it cool.\n\nA quiet morning.',
    ),
  };

  it('is what a build asks for, once, and writes all that needs it', async () => {
    using own = publication(PLANS);
    const refused = own.call('figures');
    expect([refused.status, refused.stderr]).toEqual([
      1,
      expect.stringContaining(
        'data/sessions/a.md:12  words of the planner stand in the notes, where they would be published; they belong into comments (since format 2). npm run bring-over writes it anew',
      ),
    ]);
    const before = await own.all();
    const dry = own.call('bring-over', '--dry');
    expect([dry.status, dry.stdout]).toEqual([0, expect.stringContaining('Nothing was changed, as --dry says.')]);
    expect(await own.all()).toEqual(before);
    expect(own.call('bring-over').stdout).toContain(
      'From format 1 to 2:\n  data/sessions/a.md:12  words of the planner',
    );
    expect(own.read('data/sessions/a.md').split('---')[2]?.trim()).toBe('A quiet morning.');
    expect(own.read('content/site.md')).toMatch(/^format: 2$/m);
    expect(own.call('figures').status).toBe(0);
    expect(own.call('bring-over').stdout).toBe('Every file is of format 2, the present one. Nothing was changed.\n');
  });

  it('changes nothing of a publication that a build would refuse afterwards, or that is newer than the tool', async () => {
    using faulty = publication({ ...PLANS, 'data/bodies/vennick.md': 'No front matter.\n' });
    const before = await faulty.all();
    expect(faulty.call('bring-over').status).toBe(1);
    expect(await faulty.all()).toEqual(before);
    using newer = publication({
      'content/site.md': VALID_FILES['content/site.md'].replace('publisher', 'format: 99\npublisher'),
    });
    expect(newer.call('bring-over')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('Update the tool.') as string,
    });
  });
});
