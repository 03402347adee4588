import fc from 'fast-check';
import { expect, it } from 'vitest';
import { relativeHref } from '../../src/components/relative-href.ts';

it.each([
  ['/', '/data/', 'data/'],
  ['/', '/', './'],
  ['/sessions/a/', '/', '../../'],
  ['/sessions/a/', '/sessions/b/', '../b/'],
  ['/sessions/a/', '/sessions/a/#total', '#total'],
  ['/sessions/a/', '/method/#budget', '../../method/#budget'],
  ['/data/', '/figures.json', '../figures.json'],
  ['/data/', '/data/sessions/a.csv', 'sessions/a.csv'],
  ['/404.html', '/data/', 'data/'],
  ['/404/', '/data/', 'data/'],
  ['/404/', '/', './'],
  ['/', 'https://example.org/', 'https://example.org/'],
  ['/', '//example.org/', '//example.org/'],
  ['/', '#here', '#here'],
])('from %s to %s is %s', (from, to, href) => expect(relativeHref(from, to)).toBe(href));

it('leads a browser to the page it names, under any prefix', () => {
  const path = fc
    .array(fc.constantFrom('a', 'b', 'sessions', 'x-1'), { maxLength: 4 })
    .map((parts) => (parts.length === 0 ? '/' : `/${parts.join('/')}/`));
  fc.assert(
    fc.property(path, path, fc.constantFrom('', '/blog', '/blog/lag'), (from, to, prefix) => {
      const base = `https://example.org${prefix}`;
      expect(new URL(relativeHref(from, to), base + from).href).toBe(base + to);
    }),
  );
});
