/** When a build may leave the last site as it stands: only where it would read the same, and every file is as it was left. */
import { cpSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { keepBuild, lastBuild, nameOfBuild } from '../../src/commands/last-build.ts';
import { markSite } from '../../src/commands/site-mark.ts';
import { keepResultsIn } from '../../src/memory/memory.ts';

const STANDING = { report: { title: 'One', counts: [['pages', '2']] as const, paragraphs: [] }, isStrict: true };
let root: string;
let folders: readonly string[];
let site: string;
const write = (path: string, text: string): void => writeFileSync(join(root, path), text);
const name = (): Promise<string> => nameOfBuild(folders);

beforeEach(async () => {
  root = mkdtempSync(join(tmpdir(), 'last-'));
  folders = [join(root, 'data'), join(root, 'content')];
  site = join(root, 'dist');
  for (const folder of ['data/sessions', 'content', 'dist/a']) mkdirSync(join(root, folder), { recursive: true });
  write('data/sessions/one.csv', 'run,source,shown\n1,0.100,0.050\n');
  write('content/site.md', 'title: One\n');
  write('dist/index.html', '<p>One</p>');
  write('dist/a/index.html', '<p>A</p>');
  await markSite(site);
  keepResultsIn(join(root, 'kept'));
  await keepBuild(await name(), site, STANDING);
});

afterEach(() => {
  keepResultsIn(undefined);
  rmSync(root, { recursive: true });
});

it('it may where nothing was touched', async () => {
  expect(await lastBuild(await name(), site)).toMatchObject(STANDING);
});

it.each<readonly [string, () => void]>([
  ['a digit is corrected', () => write('data/sessions/one.csv', 'run,source,shown\n1,0.100,0.051\n')],
  ['a file is added', () => write('content/two.md', '')],
  ['a file is removed', () => rmSync(join(root, 'content/site.md'))],
  ['a file is renamed', () => renameSync(join(root, 'data/sessions/one.csv'), join(root, 'data/sessions/two.csv'))],
  ['a file moves to the other folder', () => renameSync(join(root, 'content/site.md'), join(root, 'data/site.md'))],
])('it may not where %s', async (_what, change) => {
  const before = await name();
  change();
  expect(await name()).not.toBe(before);
  expect(await lastBuild(await name(), site)).toBeUndefined();
});

it.each<readonly [string, () => void]>([
  ['a page was changed', () => write('dist/a/index.html', '<p>B</p>')],
  ['a page is gone', () => rmSync(join(root, 'dist/a'), { recursive: true })],
  ['a file was put there', () => write('dist/more.html', '')],
  ['the mark is gone', () => rmSync(join(root, 'dist/lagfolio.sha256'))],
  ['the site is gone', () => rmSync(join(root, 'dist'), { recursive: true })],
])('it may not where %s', async (_what, change) => {
  change();
  expect(await lastBuild(await name(), site)).toBeUndefined();
});

it('it may not where another build wrote the site since', async () => {
  write('dist/index.html', '<p>Two</p>');
  await markSite(site);
  expect(await lastBuild(await name(), site)).toBeUndefined();
});

it('it may not where a build from nothing is asked for', async () => {
  keepResultsIn(join(root, 'kept'), { fresh: true });
  expect(await lastBuild(await name(), site)).toBeUndefined();
});

it('the same site may stand in another folder', async () => {
  cpSync(site, join(root, 'elsewhere'), { recursive: true });
  expect(await lastBuild(await name(), join(root, 'elsewhere'))).toMatchObject(STANDING);
});
