import { parseFragment, type DefaultTreeAdapterTypes } from 'parse5';
import { expect, it } from 'vitest';
import { renderMarkdown } from '../../src/components/render-markdown.ts';

function render(text: string, from = '/'): string {
  return renderMarkdown({ text, illustrations: [] }, from);
}

function elements(html: string): DefaultTreeAdapterTypes.Element[] {
  const found: DefaultTreeAdapterTypes.Element[] = [];
  const walk = (node: DefaultTreeAdapterTypes.Node): void => {
    if ('tagName' in node) found.push(node);
    if ('childNodes' in node) node.childNodes.forEach(walk);
  };
  walk(parseFragment(html));
  return found;
}

it('keeps emphasis, lists, tables and links', () => {
  const html = render('A *short* [note](/method/).\n\n- one\n\n| a | b |\n|--:|---|\n| 1 | 2 |', '/sessions/a/');
  expect(elements(html).map(({ tagName }) => tagName)).toEqual(
    expect.arrayContaining(['em', 'a', 'li', 'table', 'td']),
  );
  expect(html).toContain('href="../../method/"');
  expect(html).toContain('class="align-right"');
  expect(html).not.toContain('style=');
});

it.each([
  '<script>alert(1)</script>',
  'a <img src=x onerror=alert(1)> b',
  '<div onclick="x()">\n\nblock\n\n</div>',
  '<!-- hidden -->',
  '<svg/onload=alert(1)>',
  '<a href="javascript:alert(1)">x</a>',
])('shows markup as text: %s', (markup) => {
  const html = render(markup);
  expect(
    elements(html)
      .map(({ tagName }) => tagName)
      .filter((tag) => tag !== 'p'),
  ).toEqual([]);
  expect(html).toContain('&lt;');
});

it.each([
  '[x](javascript:alert(1))',
  '[x](JaVaScRiPt:alert(1))',
  '[x](data:text/html,hi)',
  '[x](//other.example/)',
  '[x](vbscript:x)',
  '<javascript:alert(1)>',
  '[x][r]\n\n[r]: javascript:alert(1)',
])('a link with an unsafe address leads nowhere: %s', (markdown) => {
  for (const { attrs } of elements(render(markdown))) {
    for (const { name, value } of attrs) if (name === 'href') expect(value).toBe('#');
  }
  expect(render(markdown)).not.toMatch(/href="(?:javascript|data|vbscript|\/\/)/i);
});

it('asks no other host for a picture', () => {
  const html = render('![the rig](https://other.example/rig.png) and ![r][p]\n\n[p]: https://other.example/p.png');
  expect(elements(html).some(({ tagName }) => tagName === 'img')).toBe(false);
  expect(html).toContain('the rig');
});

it('prints the two marks of a note as the parts of write-ups print theirs', () => {
  const html = render('At <Setting>**2** ms</Setting>, <Quoted from="A & B">3 ms</Quoted>.');
  expect(
    elements(html).map(({ tagName, attrs }) => [tagName, ...attrs.map(({ name, value }) => `${name}=${value}`)]),
  ).toEqual([
    ['p'],
    ['span', 'data-setting='],
    ['strong'],
    ['span', 'class=quoted', 'data-quoted=A & B', 'title=From A & B'],
  ]);
});
