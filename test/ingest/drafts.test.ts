import { expect, it } from 'vitest';
import { readBench, type BenchFolders } from '../../src/ingest/read-bench.ts';
import { compileSite } from '../../src/site/compile.ts';
import { foldersOf } from '../../src/site/publication.ts';
import { VALID_FILES, writeBenchFolder, type Files } from '../support/bench-folder.ts';

const REPORT = VALID_FILES['content/reports/first.mdx'];
/** Its text is not MDX yet. */
const DRAFT = `${REPORT.replace('author:', 'draft: true\nauthor:')}\n<Figure id="total/x\n`;

async function reading(more: Partial<BenchFolders>, files: Files = {}) {
  using folder = writeBenchFolder({ 'content/reports/next.mdx': DRAFT, ...files });
  return await readBench({ ...foldersOf(folder.root), ...more });
}

it('a draft is counted in a build, and its text is not read', async () => {
  const { reports, drafts } = await reading({});
  expect([reports.map(({ id }) => id), drafts]).toEqual([['first'], ['next']]);
});

it('a draft is a report like any other while it is written', async () => {
  await expect(reading({ drafts: true })).rejects.toThrow(/content\/reports\/next\.mdx:\d+/);
  const sound = DRAFT.replace('<Figure id="total/x', '');
  const { reports, drafts } = await reading({ drafts: true }, { 'content/reports/next.mdx': sound });
  expect([reports.map(({ id, draft }) => [id, draft]), drafts]).toEqual([
    [
      ['first', undefined],
      ['next', true],
    ],
    undefined,
  ]);
});

it('what says that it is no draft is published, and what is neither is refused', async () => {
  const files = (says: string) => ({
    'content/reports/next.mdx': REPORT.replace('author:', `draft: ${says}\nauthor:`),
  });
  expect((await reading({}, files('false'))).reports).toHaveLength(2);
  await expect(reading({}, files('perhaps'))).rejects.toThrow('content/reports/next.mdx:5:8  draft  ');
});

it('a link to a draft is refused in a build, with its place', async () => {
  using folder = writeBenchFolder({
    'content/reports/next.mdx': DRAFT,
    'content/reports/first.mdx': `${REPORT}\n[More](/reports/next/).\n`,
  });
  await expect(compileSite(foldersOf(folder.root))).rejects.toThrow(/content\/reports\/first\.mdx:10:1 /);
});
