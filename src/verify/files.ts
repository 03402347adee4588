/** That the files which figures rest on are published as they are, with the checksums that pages print. */
import type { Register } from '../register/register.ts';
import { hash } from 'node:crypto';
import type { BuiltSite, Page } from './built-site.ts';
import type { Checked } from './checked.ts';
import { attributeOf, elementsOf, hasClass, textOf, type Element } from './html.ts';

export function checkFiles(site: BuiltSite, register: Register): Checked {
  const files = new Set(site.files);
  const sources = new Map(
    register.figures.flatMap((figure) => figure.sources).map((source) => [`${source.file} ${source.sha256}`, source]),
  );
  const strayed = [...sources.values()].flatMap(({ file, sha256: stated }) => {
    if (!files.has(file)) return [`/${file}: figures rest on it, and it is not published`];
    return hash('sha256', site.bytes(file)) === stated ? [] : [`/${file}: is not the file that figures rest on`];
  });
  const rows = site.pages.flatMap((page) =>
    page.elements
      .filter((element) => element.tagName === 'table' && hasClass(element, 'files'))
      .flatMap((table) => elementsOf(table, ({ tagName }) => tagName === 'tr').slice(1))
      .map((row) => [page, row] as const),
  );
  return {
    looked: sources.size + rows.length,
    faults: [...strayed, ...rows.flatMap(([page, row]) => misstated(site, page, row))],
  };
}

/** A row of a table of files: its name, checksum and size. */
function misstated(site: BuiltSite, page: Page, row: Element): readonly string[] {
  const [link] = elementsOf(row, ({ tagName }) => tagName === 'a');
  const [digest] = elementsOf(row, (one) => hasClass(one, 'mono'));
  const [size] = elementsOf(row, ({ tagName }) => tagName === 'td');
  if (!link || !digest || !size) return [`${page.path}: lists a file without its name, checksum and size`];
  const path = new URL(attributeOf(link, 'href') ?? '', `https://site.invalid${page.path}`).pathname.slice(1);
  if (!site.files.includes(path)) return [`${page.path}: lists ${textOf(link)}, which is not published`];
  const bytes = site.bytes(path);
  const isRight =
    textOf(link) === path &&
    textOf(digest) === hash('sha256', bytes) &&
    textOf(size).replace(/\D/g, '') === String(bytes.length);
  return isRight ? [] : [`${page.path}: states another name, checksum or size of ${path} than it has`];
}
