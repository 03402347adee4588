/**
 * That each check of a built site finds what it is for: a small site that holds, and the same with one thing broken.
 */
import { hash } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readBuiltSite } from '../../src/verify/built-site.ts';
import { verifySite } from '../../src/verify/verify-site.ts';

const CSV = 'run,latency\n1,12\n';
const DIGEST = hash('sha256', Buffer.from(CSV));
const FIGURE = {
  id: 'readings/a',
  kind: 'readings',
  of: { session: 'a' },
  unit: '1',
  value: 1,
  label: 'Readings of A',
  text: '1 reading',
  entry: '/a/#readings',
  readings: 1,
  runs: 1,
  excluded: 0,
  sources: [{ file: 'data/a.csv', sha256: DIGEST }],
};
const POLICY = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'">`;

function page(title: string, up: string, body: string): string {
  return `<!doctype html><html lang="en"><head>${POLICY}<title>${title}</title><link rel="stylesheet" href="${up}site.css"></head><body><main id="top"><h1>${title}</h1>${body}</main></body></html>`;
}

const HOME =
  '<p>See <a href="a/">A</a>, <a class="figure" data-figure="readings/a" href="a/#readings">1 reading</a>, <span data-setting>12 ms</span>.</p>';
const ENTRY = `<p id="readings">Readings of A <b data-entry="readings/a">1 reading</b> npm run figures -- readings/a</p>
<p>Analysis version 9. How many readings count: those that are not excluded. 1 reading in 1 run. Number of readings that count.</p>
<table class="files"><tr><th>File</th><th>Bytes</th></tr><tr><th><a href="../data/a.csv">data/a.csv</a><span class="mono">${DIGEST}</span></th><td>${CSV.length}</td></tr></table>
<p><a href="../">Home</a> <a href="https://example.org/">elsewhere</a></p>`;

type Files = Readonly<Record<string, string>>;
const FILES: Files = {
  'index.html': page('Home', '', HOME),
  'a/index.html': page('A', '../', ENTRY),
  'site.css': 'body { margin: 0 }',
  'data/a.csv': CSV,
  'figures.json': JSON.stringify({ analysis: '9', figures: [FIGURE], findings: [] }),
};

/**
 * What is wrong with the site, with these changes; the words of an entry are the business of the built demonstration.
 */
function faultsOf(changes: Files = {}): readonly string[] {
  const root = mkdtempSync(join(tmpdir(), 'site-'));
  try {
    for (const [path, text] of Object.entries({ ...FILES, ...changes })) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      writeFileSync(join(root, path), text);
    }
    return verifySite(readBuiltSite(root), { writeUpsRunCode: false })
      .flatMap(({ faults }) => faults)
      .filter((fault) => !/lacks (?:the formula in words|how many readings and runs)$/.test(fault));
  } finally {
    rmSync(root, { recursive: true });
  }
}

const home = (change: (html: string) => string): Files => {
  const html = change(FILES['index.html'] ?? '');
  if (html === FILES['index.html']) throw new Error('the change changes nothing');
  return { 'index.html': html };
};
const more = (markup: string): Files => home((html) => html.replace('</main>', `${markup}</main>`));

it('nothing is wrong with a site that holds', () => expect(faultsOf()).toEqual([]));

it('a page may hold data for search engines, and say where it stands', () => {
  const data = '<script type="application/ld+json">{"@type":"Report"}</script>';
  expect(faultsOf(more(`${data}<link rel="canonical" href="https://example.org/">`))).toEqual([]);
});

describe('a site is told of', () => {
  it.each<[string, Files, RegExp]>([
    ['a link to no page', more('<a href="b/">B</a>'), /^\/: the address "b\/" of <a> leads to no file/],
    ['a link to no place on a page', more('<a href="a/#none">A</a>'), /leads to #none, which that page does not have/],
    ['an absolute link', more('<a href="/a/">A</a>'), /is absolute/],
    ['a link out of the site', more('<a href="../x">X</a>'), /leaves the site/],
    ['a picture that is not there', more('<img src="p.jpg" alt="P">'), /"p\.jpg" of <img> leads to no file/],
    [
      'one of the sizes of a picture that is not there',
      more('<img srcset="a/ 1x, q.jpg 2x" alt="P">'),
      /"q\.jpg" of <img>/,
    ],
    ['a picture from another host', more('<img src="https://example.org/p.jpg" alt="P">'), /asks another host/],
    ['a picture from another host in its scheme', more('<img src="//example.org/p.jpg" alt="P">'), /asks another host/],
    ['a link that runs something', more('<a href="javascript:x()">A</a>'), /runs something/],
    [
      'a style from another host',
      { 'site.css': '@import "https://example.org/x.css"' },
      /^\/site\.css: asks another host/,
    ],
    ['a font that is not there', { 'site.css': 'a { src: url(x.woff2) }' }, /x\.woff2 is no file/],
    ['a page that nothing leads to', { 'b/index.html': page('B', '../', '') }, /^\/b\/: no page leads to it/],
    ['a picture without alternative text', more('<img src="site.css">'), /has no alternative text/],
    ['a script', more('<script>1</script>'), /holds a <script>/],
    ['a script of another type', more('<script type="application/json">1</script>'), /holds a <script>/],
    ['data from elsewhere', more('<script type="application/ld+json" src="x.json"></script>'), /holds a <script>/],
    ['a preload from another host', more('<link rel="preload" href="https://example.org/x">'), /asks another host/],
    ['a handler', more('<p onclick="x()">x</p>'), /holds the attribute onclick/],
    ['a style attribute', more('<p style="color: red">x</p>'), /holds the attribute style/],
    ['no content policy', home((html) => html.replace(POLICY, '')), /has no content policy/],
    [
      'a weak content policy',
      home((html) => html.replace("style-src 'self'", "style-src 'unsafe-inline'")),
      /lets through too much/,
    ],
    ['a failed computation', more('<p>NaN ms</p>'), /failed computation/],
    ['an empty heading', more('<h2> </h2>'), /has a <h2> without words/],
    ['an id twice', more('<p id="top">x</p>'), /has the id top twice/],
    ['a description that is not there', more('<p aria-describedby="none">x</p>'), /refers to the id none/],
    ['two main headings', more('<h1>x</h1>'), /has 2 main headings/],
    ['no language', home((html) => html.replace(' lang="en"', '')), /says no language/],
    ['two pages of one title', { 'a/index.html': page('Home', '../', ENTRY) }, /has the title of \/a\//],
    [
      'a figure with another text',
      home((html) => html.replace('>1 reading<', '>2 readings<')),
      /printed as “2 readings”, is not what the register says/,
    ],
    [
      'a figure that leads elsewhere',
      home((html) => html.replace('href="a/#readings"', 'href="a/"')),
      /does not lead to its entry/,
    ],
    [
      'an entry that is gone',
      { 'a/index.html': page('A', '../', ENTRY.replace('id="readings"', 'id="other"')) },
      /readings\/a has no entry there/,
    ],
    [
      'an entry without its checksum',
      { 'a/index.html': page('A', '../', ENTRY.replace(DIGEST, '0'.repeat(64))) },
      /lacks its files and their checksums/,
    ],
    [
      'a file that was changed',
      { 'data/a.csv': CSV.replace('12', '21') },
      /^\/data\/a\.csv: is not the file that figures rest on/,
    ],
    [
      'a size that is another',
      { 'a/index.html': page('A', '../', ENTRY.replace(`<td>${CSV.length}`, '<td>3')) },
      /states another name, checksum or size of data\/a\.csv/,
    ],
  ])('%s', (_what, changes, fault) => {
    const faults = faultsOf(changes);
    expect(faults).toContainEqual(expect.stringMatching(fault));
  });
});
