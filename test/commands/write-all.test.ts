import { spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/analysis/random.ts';
import { finishWriting, whileWriting } from '../../src/commands/write-all.ts';
import { ProblemsError } from '../../src/model/problem.ts';
import { PROJECT } from '../support/project-files.ts';

function publication() {
  const root = mkdtempSync(join(tmpdir(), 'publication-'));
  const sessions = join(root, 'data/sessions');
  mkdirSync(sessions, { recursive: true });
  return {
    root,
    sessions: () => readdirSync(sessions).sort(),
    text: (name: string) => readFileSync(join(sessions, name), 'utf8'),
    put: (path: string, text: string) => {
      mkdirSync(join(root, path, '..'), { recursive: true });
      writeFileSync(join(root, path), text);
    },
    [Symbol.dispose]: () => rmSync(root, { recursive: true, force: true }),
  };
}

const LISTED = ['data/sessions/a.md', 'data/sessions/b.md'];

async function problemOf(act: Promise<unknown>): Promise<string | undefined> {
  try {
    await act;
    return undefined;
  } catch (error) {
    if (error instanceof ProblemsError) return error.message.split('\n').at(-1);
    throw error;
  }
}

describe('files written together', () => {
  it('are all there, and nothing is left over', async () => {
    using folder = publication();
    await whileWriting(folder.root, (write) => write(LISTED.map((path) => ({ path, text: path }))));
    expect(folder.sessions()).toEqual(['a.md', 'b.md']);
    expect(folder.text('b.md')).toBe('data/sessions/b.md');
    expect(readdirSync(join(folder.root, '.writing'))).toEqual(['files.owner']);
  });

  it.each([
    ['a file', (path: string) => writeFileSync(path, 'mine')],
    ['a link to nowhere', (path: string) => symlinkSync('nowhere', path)],
  ])('are none of them there where one is in the way of %s', async (_what, block) => {
    using folder = publication();
    block(join(folder.root, 'data/sessions/b.md'));
    const writing = whileWriting(folder.root, (write) => write(LISTED.map((path) => ({ path, text: path }))));
    expect(await problemOf(writing)).toBe(
      'data/sessions/b.md  is there already, and nothing was written. Choose another id, or move it away.',
    );
    expect(folder.sessions()).toEqual(['b.md']);
  });

  it('are moved by the next command where one was killed after the list, and not before', async () => {
    using folder = publication();
    folder.put('.writing/stage/0', 'A');
    folder.put('.writing/stage/1', 'B');
    expect(await finishWriting(folder.root)).toEqual([]);
    expect(folder.sessions()).toEqual([]);
    folder.put('.writing/list.json', JSON.stringify(LISTED));
    // an author has begun on one of them, which had been moved
    rmSync(join(folder.root, '.writing/stage/0'));
    folder.put('data/sessions/a.md', 'A, and more');
    expect(await finishWriting(folder.root)).toEqual(LISTED);
    expect([folder.text('a.md'), folder.text('b.md')]).toEqual(['A, and more', 'B']);
    expect(existsSync(join(folder.root, '.writing/list.json'))).toBe(false);
  });

  it.each([
    ['a path that leads out', '["data/../../x.md"]'],
    ['an absolute path', '["/x.md"]'],
    ['a hidden file', '["data/.x.md"]'],
    ['no list', '{}'],
    ['no JSON', 'x'],
  ])('are not written by a list that no command wrote: %s', async (_what, list) => {
    using folder = publication();
    folder.put('.writing/stage/0', 'A');
    folder.put('.writing/list.json', list);
    expect(await problemOf(finishWriting(folder.root))).toBe(
      '.writing/list.json  is not what a command of this project writes, and nothing was done with it. Remove it.',
    );
    expect(folder.sessions()).toEqual([]);
  });

  it('are all there or none after kills at thirty seeded moments', async () => {
    using folder = publication();
    const random = seededRandom(20_260_512);
    const outcomes = new Set<string>();
    for (let turn = 0; turn < 30; turn += 1) {
      const set = String(turn);
      const writer = spawn(process.execPath, [join(PROJECT, 'test/support/write-files.ts'), folder.root, set]);
      const gone = once(writer, 'exit');
      await once(writer.stdout, 'data');
      await setTimeout(random.between(0, 40));
      writer.kill('SIGKILL');
      await gone;
      // how long one left over is waited for is another matter
      rmSync(join(folder.root, '.writing/files.lock'), { recursive: true, force: true });
      await finishWriting(folder.root);
      const there = folder.sessions().filter((name) => name.endsWith(`-${set}.md`));
      expect([0, 3]).toContain(there.length);
      for (const name of there) expect(folder.text(name)).toBe(set.repeat(100_000));
      outcomes.add(there.length === 0 ? 'none' : 'all');
    }
    expect(outcomes.size).toBeGreaterThan(0);
  });
});
