/** That what built write-ups print is what their parts say they show, and so what the ledger goes by. */
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readBench } from '../../src/ingest/read-bench.ts';
import { compileBench } from '../../src/site/compile.ts';
import { answeringAll } from '../../src/write-ups/answering.ts';
import { figuresShown, statementsShown } from '../../src/write-ups/statements-shown.ts';
import { attributeOf, elementsOf, type Element } from '../../src/verify/html.ts';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { PROJECT } from '../support/project-files.ts';

const site = demonstrationSite();

let all: ReturnType<typeof answeringAll>;
beforeAll(async () => {
  const folders = { root: PROJECT, dataDir: join(PROJECT, 'data'), contentDir: join(PROJECT, 'content') };
  all = answeringAll(compileBench(await readBench(folders)));
}, 120_000);

const MARKS: readonly string[] = ['data-figure', 'data-claim', 'data-drawn'];

/** Ids of figures whose text stands on a page, that are drawn there, or to which its words lead; sorted. */
function printedOn(path: string, marks = MARKS): readonly string[] {
  const { elements } = site.page(path);
  const articles = elements.filter(({ tagName }) => tagName === 'article');
  const recorded = new Set(
    articles.flatMap((article) =>
      elementsOf(article, (each) => attributeOf(each, 'aria-labelledby') === 'what-changed').flatMap((section) =>
        elementsOf(section),
      ),
    ),
  );
  const idOf = (element: Element): readonly string[] => marks.flatMap((name) => attributeOf(element, name) ?? []);
  const shown = articles.flatMap((article) => elementsOf(article, (each) => !recorded.has(each)).flatMap(idOf));
  return [...new Set(shown)].sort();
}

const PATHS = ['reports', 'method'].flatMap((folder) =>
  site.pages.map(({ path }) => path).filter((path) => new RegExp(`^/${folder}/[^/]+/$`).test(path)),
);

describe('what is printed on', () => {
  it('every write-up is looked at', () => {
    expect(PATHS.toSorted()).toEqual(all.map(({ answering }) => answering.path).sort());
    expect(PATHS.length).toBeGreaterThan(4);
    expect(printedOn('/reports/stage-screen/').length).toBeGreaterThan(100);
  });

  it.each(PATHS)('%s is what its parts say, and what the ledger goes by', (path) => {
    const { writeUp, answering } = all.find((each) => each.answering.path === path) ?? {};
    if (writeUp === undefined || answering === undefined) throw new Error(`no write-up at ${path}`);
    const said = new Set(figuresShown(writeUp, answering).map(({ id }) => id));
    expect([...said].sort()).toEqual(printedOn(path));
    const isFigure = new Set(answering.site.register.figures.map(({ id }) => id));
    const stated = [...statementsShown(writeUp, answering)].filter((id) => isFigure.has(id));
    // words that lead to a figure do not print it
    expect(stated.sort()).toEqual(printedOn(path, ['data-figure', 'data-drawn']));
  });
});
