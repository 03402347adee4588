/** That every claim and every number leads to its entry, and that every entry says all that a reader needs to check it. */
import { describe, expect, inject, it } from 'vitest';
import { describeCoverageTable } from '../../src/views/coverage.ts';
import type { Register } from '../../src/register/register.ts';
import { readBuiltSite } from '../../src/verify/built-site.ts';
import { checkEntries, checkFigureLinks } from '../../src/verify/entries.ts';
import { attributeOf, bare, elementsOf, textOf } from '../../src/verify/html.ts';
import { openCopy } from '../support/project-copy.ts';

const project = openCopy(inject('builtProject'));
const site = readBuiltSite(project.dist);
const register = JSON.parse(site.bytes('figures.json').toString('utf8')) as Register;
it('every result of the coverage bench stands in its row', () => {
  const rows = site
    .page('/coverage/')
    .elements.filter(({ tagName }) => tagName === 'tbody')
    .flatMap((body) => elementsOf(body, ({ tagName }) => tagName === 'tr'));
  const printed = rows.map((row) =>
    elementsOf(row, ({ tagName }) => tagName === 'td').map((cell) => bare(textOf(cell))),
  );
  expect(printed).toEqual(
    describeCoverageTable().rows.map((row) => [
      row.coverage,
      `± ${row.halfWidth}`,
      row.textbookCoverage,
      `± ${row.textbookHalfWidth}`,
      row.differenceCoverage,
    ]),
  );
  expect(printed.length).toBeGreaterThan(5);
});

it('a figure or a claim in the text prints what the register says, and leads to the entry that it rests on', () => {
  const claims = site.pages.flatMap(({ elements }) =>
    elements.filter((element) => attributeOf(element, 'data-claim') !== undefined),
  );
  expect(claims.length).toBeGreaterThanOrEqual(5);
  const { looked, faults } = checkFigureLinks(site, register);
  expect(looked).toBeGreaterThan(200);
  expect(faults).toEqual([]);
});

describe('the entry of a figure', () => {
  it('says what it is of, its interval and n, formula, components, files, version, and how to recompute it', () => {
    expect(register.figures.length).toBeGreaterThan(600);
    expect(new Set(register.figures.map(({ kind }) => kind)).size).toBeGreaterThan(15);
    expect(checkEntries(site, register)).toEqual({ looked: register.figures.length, faults: [] });
  });

  it('can be recomputed with the command that it gives', () => {
    const byId = new Map(register.figures.map((figure) => [figure.id, figure]));
    const ids = ['total/vennick-uhd25-a', register.figures.find(({ kind }) => kind === 'difference')?.id ?? ''];
    for (const id of ids) {
      const { code, stdout } = project.run('figures', [id]);
      expect({ code, figures: (JSON.parse(stdout) as Register).figures }).toEqual({ code: 0, figures: [byId.get(id)] });
    }
  });
});
