import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { withPageCache } from '../../src/commands/page-cache.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pages-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const V1 = { version: 'one' };
/** A build that adds a page to those that it finds, and says which these were. */
const adding = (name: string) => async (pages: string) => {
  const found = readdirSync(pages);
  writeFileSync(join(pages, name), `page ${name}`);
  return found;
};
const found = (options = V1): Promise<readonly string[]> =>
  withPageCache(folder, options, async (pages) => readdirSync(pages));

it('hands what one build left to the next', async () => {
  expect(await withPageCache(folder, V1, adding('a'))).toEqual([]);
  expect(await withPageCache(folder, V1, adding('b'))).toEqual(['a']);
  expect(await found()).toEqual(['a', 'b']);
  expect(readdirSync(folder)).toEqual(['pages']);
});

it('hands on nothing of other code, nor to a build from nothing', async () => {
  await withPageCache(folder, V1, adding('a'));
  expect(await found({ version: 'two' })).toEqual([]);
  await withPageCache(folder, V1, adding('a'));
  expect(await withPageCache(folder, { ...V1, fresh: true }, adding('b'))).toEqual([]);
  expect(await found()).toEqual(['b']);
});

it('leaves nothing of a build that failed, since its pages are of two states', async () => {
  await withPageCache(folder, V1, adding('a'));
  const failing = withPageCache(folder, V1, async (pages) => {
    writeFileSync(join(pages, 'a'), 'another text');
    throw new Error('no disk');
  });
  await expect(failing).rejects.toThrow('no disk');
  expect(readdirSync(folder)).toEqual([]);
  expect(await found()).toEqual([]);
});

it('leaves nothing of a build that was killed', async () => {
  await withPageCache(folder, V1, adding('a'));
  const gone = spawnSync(process.execPath, ['-e', '']).pid;
  mkdirSync(join(folder, `at-work-${gone}-00`));
  writeFileSync(join(folder, `at-work-${gone}-00`, 'a'), 'half');
  expect(await found()).toEqual(['a']);
  expect(readdirSync(folder)).toEqual(['pages']);
});

it.each([
  ['a page is changed', () => writeFileSync(join(folder, 'pages', 'a'), 'page A')],
  ['a page is missing', () => rmSync(join(folder, 'pages', 'a'))],
  ['a page came from elsewhere', () => writeFileSync(join(folder, 'pages', 'c'), 'page c')],
  ['the seal is missing', () => rmSync(join(folder, 'pages', 'seal.json'))],
  [
    'the seal is cut short',
    () =>
      writeFileSync(
        join(folder, 'pages', 'seal.json'),
        readFileSync(join(folder, 'pages', 'seal.json')).subarray(0, 20),
      ),
  ],
])('trusts nothing where %s', async (_what, damage) => {
  await withPageCache(folder, V1, adding('a'));
  damage();
  expect(await found()).toEqual([]);
});

it('lets two builds at a time work apart, and keeps the pages of one of them, whole', async () => {
  await withPageCache(folder, V1, adding('a'));
  const inner = await withPageCache(folder, V1, async (outer) => {
    const seen = await withPageCache(folder, V1, adding('b'));
    writeFileSync(join(outer, 'c'), 'page c');
    return seen;
  });
  expect(inner).toEqual([]);
  expect(await found()).toEqual(['b']);
  expect(readdirSync(folder)).toEqual(['pages']);
});
