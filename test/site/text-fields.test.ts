/** That markup in any text field of any file comes out as the text it is. */
import { parse as parseCsv } from 'csv-parse/sync';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { isMap, isScalar, parseDocument, visit } from 'yaml';
import { readBuiltSite, type BuiltSite } from '../../src/verify/built-site.ts';
import { attributeOf, nodesOf, parsePage, textOf, type Node } from '../../src/verify/html.ts';
import { copyProject, type ProjectCopy } from '../support/project-copy.ts';
import { projectFiles } from '../support/project-files.ts';

const MARKUP = `<script>alert(1)</script><b>x</b>&"'`;

/** The keys whose value is free text; every other value is an id, a number, a rate, a date or a choice. */
const TEXT_KEYS = new Set([
  'name',
  'maker',
  'model',
  'label',
  'source',
  'title',
  'tagline',
  'publisher',
  'summary',
  'author',
  'room',
  'warm-up',
  'cut-short',
  'reason',
  'in-words',
]);

/** A session that no other shares rig, settings and method with. */
const ALONE = 'data/sessions/vennick-flash-uhd60.md';

interface Field {
  readonly where: string;
  /** What stands there, unlike anywhere else: `§12§<script>…`. */
  readonly text: string;
}

const fields: Field[] = [];
function mark(where: string): string {
  const text = `§${fields.length}§${MARKUP}`;
  fields.push({ where, text });
  return text;
}

/** Every text in front matter or YAML, replaced. */
function markYaml(yaml: string, path: string, isText: (key: string) => boolean = (key) => TEXT_KEYS.has(key)): string {
  const document = parseDocument(yaml, { version: '1.2' });
  visit(document, {
    Pair(_at, pair, parents) {
      const key = isScalar(pair.key) ? String(pair.key.value) : '';
      if (!isText(key) || !isScalar(pair.value)) return;
      const inside = parents.flatMap((parent) =>
        isMap(parent) ? [] : 'key' in parent && isScalar(parent.key) ? [String(parent.key.value)] : [],
      );
      pair.value = document.createNode(mark([path, ...inside, key].join(' ')));
    },
  });
  return document.toString({ lineWidth: 0 });
}

/** As a note has to write it: HTML there is refused. */
const escaped = (text: string): string => text.replaceAll('<', '\\<');

function markFrontMatter(text: string, path: string, withBody: boolean): string {
  const [, yaml = '', body = ''] = /^---\n([\s\S]*?)\n---\n?([\s\S]*)$/.exec(text) ?? [];
  // In prose a § of its own keeps the paragraph from beginning with a tag.
  const marked = withBody
    ? `\n${escaped(mark(`${path} (text)`))}\n\n- a list with ${escaped(mark(`${path} (list)`))}\n`
    : body.replace(/caption="[^"]*"/g, () => `caption={${JSON.stringify(mark(`${path} caption`))}}`);
  // Sessions of one firmware belong together, and figures are named for it: one that stands alone will do.
  const isFirmware = (key: string): boolean => key === 'firmware' && path === ALONE;
  return `---\n${markYaml(yaml, path, (key) => TEXT_KEYS.has(key) || isFirmware(key))}---\n${marked}`;
}

/** Of the YAML files of data; a level's name is part of ids, and the statement of variation holds no words. */
const TEXTS_OF: Readonly<Record<string, readonly string[]>> = {
  'data/settings.yaml': ['label'],
  'data/speeds.yaml': ['name', 'source'],
  'data/variation.yaml': [],
};

/** A remark on the first reading, and the last one left out with a reason. */
function markReadings(csv: string, path: string): string {
  const [header = [], ...rows] = parseCsv(csv) as string[][];
  const [exclude, note] = [header.indexOf('exclude'), header.indexOf('note')];
  rows[0]![note] = mark(`${path} note`);
  rows.at(-1)![exclude] = mark(`${path} exclude`);
  return [header, ...rows].map((row) => `${row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(',')}\n`).join('');
}

let copy: ProjectCopy;
let site: BuiltSite;
let documents: readonly (readonly [path: string, document: Node])[];

beforeAll(() => {
  copy = copyProject({ builtAs: inject('builtProject') });
  for (const path of projectFiles('data')) {
    if (path.endsWith('.csv')) copy.edit(path, (text) => markReadings(text, path));
    else if (path.endsWith('.yaml')) {
      const texts = TEXTS_OF[path];
      if (texts === undefined) throw new Error(`no one has said which keys of ${path} are texts`);
      if (texts.length > 0) copy.edit(path, (text) => markYaml(text, path, (key) => texts.includes(key)));
    } else copy.edit(path, (text) => markFrontMatter(text, path, true));
  }
  for (const path of projectFiles('content')) {
    if (path.endsWith('.yaml')) copy.edit(path, (text) => markYaml(text, path));
    // The rest of the ledger is written by a command: what it holds is checked where it is read.
    else if (/\.mdx?$/.test(path)) copy.edit(path, (text) => markFrontMatter(text, path, path.endsWith('.md')));
  }
  copy.build();
  site = readBuiltSite(copy.dist);
  documents = site.pages.map(({ path, html }) => [path, parsePage(html)] as const);
});

afterAll(() => copy?.[Symbol.dispose]());

describe('markup in every text field', () => {
  it('was written into every kind of file', () => {
    expect(fields.length).toBeGreaterThan(300);
    expect(new Set(fields.map(({ where }) => where.replace(/\/[^/ ]+\.(\w+)/, '/*.$1').replace(/ .*/, '')))).toEqual(
      new Set([
        'content/*.md',
        'content/ledger/entries/*.yaml',
        'content/methods/*.mdx',
        'content/reports/*.mdx',
        'content/reports/pictures/*.yaml',
        'data/bodies/*.md',
        'data/display-pairs/*.csv',
        'data/display-pairs/*.md',
        'data/displays/*.md',
        'data/links/*.md',
        'data/rigs/*.md',
        'data/sessions/*.csv',
        'data/sessions/*.md',
        'data/*.yaml',
      ]),
    );
  });

  // Data for search engines, which nothing runs; the scripts of two pages, and the facts that they read.
  const isOwn = (path: string, node: Node): boolean =>
    'tagName' in node &&
    node.tagName === 'script' &&
    (attributeOf(node, 'type') === 'application/ld+json' || ['/recompute/', '/search/'].includes(path)) &&
    textOf(node) !== 'alert(1)';

  it('makes no element on any page', () => {
    const made = documents.flatMap(([path, document]) =>
      nodesOf(document).flatMap((node) =>
        ['script', 'b'].includes(node.nodeName) && !isOwn(path, node) ? [`${path} <${node.nodeName}>`] : [],
      ),
    );
    expect(documents.length).toBeGreaterThan(50);
    expect(made).toEqual([]);
  });

  it('comes out as text, character for character, on some page for every field', () => {
    const texts = documents.flatMap(([, document]) =>
      nodesOf(document).flatMap((node) => [
        ...('value' in node ? [node.value] : []),
        ...('attrs' in node ? node.attrs.map(({ value }) => value) : []),
      ]),
    );
    const shown = texts.filter((text) => text.includes('§')).join('\n');
    expect(fields.filter(({ text }) => !shown.includes(text)).map(({ where }) => where)).toEqual([]);
  });

  it('is nowhere escaped twice', () => {
    const twice = documents.flatMap(([path, document]) =>
      nodesOf(document).flatMap((node) =>
        'value' in node && /&(?:lt|gt|amp|quot|#\d+);/.test(node.value) ? [`${path}: ${node.value}`] : [],
      ),
    );
    expect(twice).toEqual([]);
  });
});
