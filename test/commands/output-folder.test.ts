import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/analysis/random.ts';
import { fileSystemProblem } from '../../src/commands/file-system-faults.ts';
import { checkOutput, outputFolder, replaceSite, restoreSite } from '../../src/commands/output-folder.ts';
import { ProblemsError } from '../../src/model/problem.ts';
import { PROJECT } from '../support/project-files.ts';

/** A folder to build in, with `dist` in it. */
function place() {
  const root = mkdtempSync(join(tmpdir(), 'output-'));
  const dist = join(root, 'dist');
  return {
    root,
    dist,
    write: (path: string, text: string) => {
      mkdirSync(join(root, path, '..'), { recursive: true });
      writeFileSync(join(root, path), text);
    },
    build: async (words: string) =>
      replaceSite(await outputFolder(root, undefined), async (fresh) =>
        writeFileSync(join(fresh, 'index.html'), words),
      ),
    check: async () => checkOutput(await outputFolder(root, undefined), [join(root, 'data'), join(root, 'content')]),
    /** The words of every page; one, where the site is whole. */
    site: () =>
      existsSync(dist)
        ? readdirSync(dist).flatMap((name) => (name.endsWith('.html') ? [readFileSync(join(dist, name), 'utf8')] : []))
        : [],
    writer: (files: number, pauseMs = 0) =>
      spawn(process.execPath, [join(PROJECT, 'test/support/write-site.ts'), dist, `${files}`, `${pauseMs}`]),
    [Symbol.dispose]: () => rmSync(root, { recursive: true, force: true }),
  };
}

async function problemOf(act: Promise<unknown>): Promise<string> {
  const error: unknown = await act.then(
    () => undefined,
    (thrown: unknown) => thrown,
  );
  if (error instanceof ProblemsError) return error.message.split('\n').slice(2).join('\n');
  if (error !== undefined) throw error;
  return 'no problem';
}

async function begun(writer: ChildProcess): Promise<void> {
  if (writer.stdout !== null) await once(writer.stdout, 'data');
}

async function kill(writer: ChildProcess): Promise<void> {
  const gone = once(writer, 'exit');
  writer.kill('SIGKILL');
  await gone;
}

const ELSEWHERE = 'or build into another folder: npm run build -- --output DIR.';

describe('a folder for the site', () => {
  it('may be missing, empty, or what a build wrote', async () => {
    using folder = place();
    expect(await problemOf(folder.check())).toBe('no problem');
    mkdirSync(folder.dist);
    expect(await problemOf(folder.check())).toBe('no problem');
    await folder.build('first');
    expect(await problemOf(folder.check())).toBe('no problem');
    expect(folder.site()).toEqual(['first']);
  });

  it('is told about, and left alone, where it is a link', async () => {
    using folder = place();
    folder.write('elsewhere/notes.txt', 'mine');
    symlinkSync('elsewhere', folder.dist);
    expect(await problemOf(folder.check())).toBe(
      `dist  is a link to "elsewhere", and a build would put a folder in its place. Remove the link, ${ELSEWHERE}`,
    );
  });

  it('is told about where it is a file', async () => {
    using folder = place();
    folder.write('dist', 'mine');
    expect(await problemOf(folder.check())).toBe(`dist  is a file, and a site is a folder. Move it away, ${ELSEWHERE}`);
  });

  it.each([
    ['all of it is', ['a.txt', 'b/c.txt'], 'a.txt, b/c.txt'],
    ['there is much of it', ['1', '2', '3', '4', '5'], '1, 2, 3, 2 more'],
    ['a name would steer the terminal', ['\u001b[2J\u202e'], '\\u{1b}[2J\\u{202e}'],
  ])('is told about where it holds what no build wrote, and %s', async (_what, names, listed) => {
    using folder = place();
    for (const name of names) folder.write(`dist/${name}`, 'mine');
    expect(await problemOf(folder.check())).toBe(
      `dist  holds what no build wrote (${listed}), and a build replaces the whole folder. Move it away, ${ELSEWHERE}`,
    );
  });

  it('is told about where something was put beside what a build wrote', async () => {
    using folder = place();
    await folder.build('first');
    symlinkSync('index.html', join(folder.dist, 'link.html'));
    folder.write('dist/own/CNAME', 'mine');
    expect(await problemOf(folder.check())).toContain('(link.html, own/CNAME)');
  });

  it.each(['data/site', 'content', '.'])(
    'is refused where it would take the files of authors with it: %s',
    async (said) => {
      using folder = place();
      folder.write('data/settings.yaml', 'mine');
      const output = await outputFolder(folder.root, join(folder.root, said));
      const problem = await problemOf(checkOutput(output, [join(folder.root, 'data'), join(folder.root, 'content')]));
      expect(problem).toMatch(/lies in (?:data|content)\/ or holds it, and a build replaces the whole folder\./);
    },
  );

  it.runIf(process.getuid?.() === 0)('is told about where it is a mount point', () => {
    using folder = place();
    mkdirSync(folder.dist);
    const check = `import { checkOutput, outputFolder } from '${PROJECT}/src/commands/output-folder.ts';
      checkOutput(await outputFolder('${folder.root}', undefined), []).catch((error) => console.log(error.message));`;
    const mount = ['tmpfs -t tmpfs', `--bind ${folder.root}`].map((what) => {
      const words = `mount ${what} ${folder.dist} && ${process.execPath} --input-type=module-typescript -e "$CHECK"`;
      return spawnSync('unshare', ['-m', 'sh', '-c', words], {
        env: { ...process.env, CHECK: check },
        encoding: 'utf8',
      });
    });
    for (const { stdout } of mount)
      expect(stdout).toContain(
        'dist  is a mount point, which no build can replace. Build into a folder inside it: npm run build -- --output DIR.',
      );
  });
});

describe('the last good site', () => {
  it('stays where a build fails, whose folder goes', async () => {
    using folder = place();
    await folder.build('first');
    const output = await outputFolder(folder.root, undefined);
    await expect(
      replaceSite(output, async (fresh) => {
        writeFileSync(join(fresh, 'index.html'), 'half');
        throw new Error('on purpose');
      }),
    ).rejects.toThrow('on purpose');
    expect(folder.site()).toEqual(['first']);
    expect(readdirSync(join(folder.root, '.dist.building'))).toEqual(['build.owner']);
  });

  it('is put back where a build was killed between the two renames', async () => {
    using folder = place();
    await folder.build('first');
    renameSync(folder.dist, join(folder.root, '.dist.building/last'));
    restoreSite(folder.dist);
    expect(folder.site()).toEqual(['first']);
  });

  it('stands whole after builds killed at fifty seeded moments', async () => {
    using folder = place();
    await folder.build('site');
    const random = seededRandom(20_260_511);
    const lock = join(folder.root, '.dist.building/build.lock');
    const seen = new Set<string>();
    for (let turn = 0; turn < 50; turn += 1) {
      const writer = folder.writer(8);
      for (let site = 0; site <= turn % 3; site += 1) await begun(writer);
      await setTimeout(random.between(0, 15));
      await kill(writer);
      // how long one left over is waited for is another matter
      rmSync(lock, { recursive: true, force: true });
      restoreSite(folder.dist);
      const words = new Set(folder.site());
      expect([words.size, folder.site().length % 7]).toEqual([1, 1]);
      for (const word of words) seen.add(word);
    }
    // a writer that is at its third site has published two
    expect(seen).toContain('site 1');
  });
});

describe('two builds at once', () => {
  it('do not mix: the second is refused, and names the process of the first', async () => {
    using folder = place();
    const writer = folder.writer(8, 20_000);
    await begun(writer);
    expect(await problemOf(folder.build('second'))).toBe(
      `dist  another command is writing here (process ${writer.pid}). Wait until it is done, then run this again.`,
    );
    await kill(writer);
    await folder.build('third');
    expect(folder.site()).toEqual(['third']);
  });
});

describe('what the file system refuses', () => {
  const withCode = (code: string, path?: string) => Object.assign(new Error(`${code}: refused`), { code, path });

  it.each([
    ['itself', withCode('ENOSPC', '/a/b')],
    ['as the cause of another', new Error('cannot write', { cause: withCode('ENOSPC') })],
    ['in a list', new AggregateError([new Error('x'), withCode('EDQUOT')])],
    ['in words alone', new Error("[bundle] ENOSPC: no space left on device, write 'x.mjs'")],
  ])('is one plain message where the disk is full: %s', (_what, error) => {
    expect(fileSystemProblem(error, 'dist')?.message.split('\n').at(-1)).toBe(
      'dist  the disk is full, and what was there is as it was. Make room, then run this again.',
    );
  });

  it('names what cannot be written', () => {
    expect(fileSystemProblem(withCode('EROFS', 'data/sessions/a.md'), 'dist')?.message.split('\n').at(-1)).toBe(
      'data/sessions/a.md  cannot be written (EROFS). Check that its permissions let you write it.',
    );
  });

  it('is nothing else', () => {
    expect(fileSystemProblem(new Error('a fault of ours'), 'dist')).toBeUndefined();
    expect(fileSystemProblem(withCode('ENOENT'), 'dist')).toBeUndefined();
  });
});
