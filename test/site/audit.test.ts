/** That every number with a unit on the built demonstration is accounted for, and that the audit of it can fail. */
import { join } from 'node:path';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { auditPage, type PageAudit } from '../../src/audit/audit-page.ts';
import { siteFacts, type Site } from '../../src/audit/site-facts.ts';
import { precisionOfRig } from '../../src/planning/precision-of-rig.ts';
import { compileSite } from '../../src/site/compile.ts';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { copyProject } from '../support/project-copy.ts';
import { PROJECT } from '../support/project-files.ts';

const built = demonstrationSite();
let site: Site;
beforeAll(async () => {
  const published = await compileSite({
    root: PROJECT,
    dataDir: join(PROJECT, 'data'),
    contentDir: join(PROJECT, 'content'),
  });
  const { bench, find } = published;
  const precision = bench.rigs.flatMap((rig) => {
    const found = precisionOfRig(bench, rig, find);
    return found === undefined ? [] : [[rig.id, found] as const];
  });
  site = siteFacts(published, new Map(precision));
}, 240_000);

const audit = (path: string, change: (html: string) => string = (html) => html): PageAudit => {
  const { html } = built.page(path);
  const changed = change(html);
  return auditPage(path, changed, site);
};

it('every number with a unit on every page is accounted for', () => {
  const audits = built.pages.map(({ path }) => audit(path));
  expect(audits.flatMap(({ unaccounted }) => unaccounted)).toEqual([]);
  expect(audits.length).toBeGreaterThan(60);
  expect(audits.reduce((sum, { read }) => sum + read, 0)).toBeGreaterThan(8000);
});

/**
 * The first number with a unit, or that ends a cell, within what the pattern finds becomes one that nothing on the site
 * is.
 */
const another = (where: RegExp) => (html: string) =>
  html.replace(where, (found) =>
    found.replace(/\d+(?:\.\d+)?(?=\s*(?:ms|%|frames|s\b|Hz|°C|±|<))/u, (number) =>
      number.includes('.') ? '987.6' : '987',
    ),
  );

describe('it fails on a page where one number is another', () => {
  it.each([
    ['a figure', '/reports/stage-screen/', /<a class="figure[^>]*>[^<]*<\/a>/],
    ['an entry', '/sessions/vennick-uhd25-a/', /<span data-entry="total\/[^>]*>(?:<span class="whole">)?[^<]*/],
    ['the interval of an entry', '/sessions/vennick-uhd25-a/', /standard uncertainty \d+\.\d+\sms/],
    ['a share in a budget', '/sessions/vennick-uhd25-a/', /<td class="number"[^>]*>(?:<span class="whole">)?\d+ %/],
    ['a finding', '/sessions/vennick-hd60-a/', /beat every \d+\.\d s/],
    [
      'the precision of a rig',
      '/rigs/balcony/',
      /(?<=<td class="number"[^>]*>(?:<span class="whole">)?)± \d+(?:\.\d+)? ms/,
    ],
    ['a fact of a rig', '/rigs/balcony/', /exposure \d+ ms/],
    ['a condition of a session', '/sessions/vennick-uhd25-a/', /\d+\.\d °C/],
    ['the label of a chart', '/comparison/', /<text[^>]*>\d+(?:\.\d+)? ± \d+(?:\.\d+)? ms/],
    ['the description of a chart', '/comparison/', /<desc[^>]*>[^<]*at \d+(?:\.\d+)? ±[^<]*/],
    [
      'a raw reading',
      '/sessions/vennick-uhd25-a/',
      /(?<=<table class="readings"[\s\S]*)<td class="number"[^>]*>\d{3}</,
    ],
    ['the coverage of intervals', '/coverage/', /<td class="number"[^>]*>(?:<span class="whole">)?\d+\.\d %/],
  ])('%s', (_what, path, where) => {
    const { html } = built.page(path);
    const changed = another(where)(html);
    expect(changed).not.toBe(html);
    expect(audit(path, () => changed).unaccounted.length).toBeGreaterThan(0);
  });

  it('a caution that names a latency', () => {
    const page = audit('/rigs/balcony/', (html) => html.replace('Before you repeat this', 'Before you repeat 300 ms'));
    expect(page.unaccounted.map(({ number }) => number)).toEqual(['300 ms']);
  });
});

describe('a strict build', () => {
  it('refuses quantities typed by hand, and after it numbers that only the finished page shows', () => {
    using copy = copyProject({ builtAs: inject('builtProject') });
    const report = (text: string): void =>
      copy.write('content/reports/x.mdx', `---\ntitle: X\nsummary: X\ndate: 2026-04-21\n---\n\n${text}\n`);
    report('It takes three hundred milliseconds.');
    const typed = copy.run('build', ['--strict']);
    expect(typed).toMatchObject({ code: 1 });
    expect(typed.stderr).toContain('content/reports/x.mdx:7  "three hundred milliseconds" was typed by hand');
    // Code can say what no reading of its text would find.
    copy.edit('content/site.md', (text) => text.replace('---\n', '---\nwrite-ups-run-code: true\n'));
    report('export const Lag = () => <em>{100 + 200} ms</em>\n\nIt takes <Lag />.');
    const said = copy.run('build', ['--strict']);
    expect(said).toMatchObject({ code: 1 });
    expect(said.stderr).toContain(
      '/reports/x/  this page says "300 ms" and nothing accounts for it, in “It takes 300 ms.”',
    );
    const loose = copy.run('build');
    expect(loose).toMatchObject({ code: 0 });
    expect(loose.stdout).toContain('/reports/x/  300 ms, in “It takes 300 ms.”');
  }, 400_000);
});
