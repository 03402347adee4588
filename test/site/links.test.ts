/** That every link leads somewhere, from whatever folder of whatever host the site is served. */
import { expect, inject, it } from 'vitest';
import { readBuiltSite } from '../support/built-site.ts';
import { attributeOf } from '../support/html.ts';
import { openCopy } from '../support/project-copy.ts';

const site = readBuiltSite(openCopy(inject('builtProject')).dist);
const files = new Set(site.files);

/** Any prefix will do: a link that leaves it leaves the site. */
const HOME = 'https://site.invalid/some/prefix/';
const ADDRESSES = ['href', 'src', 'srcset', 'action', 'poster', 'data'];

interface Address {
  readonly from: string;
  readonly tag: string;
  readonly to: string;
}

const addresses: readonly Address[] = site.pages.flatMap(({ path, elements }) =>
  elements.flatMap((element) =>
    ADDRESSES.flatMap((name) => {
      const to = attributeOf(element, name);
      return to === undefined ? [] : [{ from: path, tag: element.tagName, to }];
    }),
  ),
);
const isInternal = ({ to }: Address): boolean => !/^[a-z][a-z0-9+.-]*:/i.test(to);
const tell = ({ from, tag, to }: Address): string => `${from} <${tag}> ${to}`;

/** What is wrong with an internal address; undefined when it leads to a file, and to an id of it where it names one. */
function whyBroken({ from, to }: Address): string | undefined {
  const { href, hash } = new URL(to, HOME + from.slice(1));
  if (!href.startsWith(HOME)) return 'leaves the site';
  const path = decodeURIComponent(href.slice(HOME.length).replace(/[?#].*$/, ''));
  const file = path === '' || path.endsWith('/') ? `${path}index.html` : path;
  if (!files.has(file)) return 'no such file';
  if (hash === '') return undefined;
  return site.page(`/${path}`).byId.has(decodeURIComponent(hash.slice(1))) ? undefined : 'no such id on that page';
}

it('every internal link and fragment resolves', () => {
  const internal = addresses.filter(isInternal);
  expect(internal.length).toBeGreaterThan(1000);
  expect(internal.filter(({ to }) => to.includes('#')).length).toBeGreaterThan(300);
  expect(
    internal.flatMap((address) =>
      whyBroken(address) === undefined ? [] : [`${tell(address)}: ${whyBroken(address)}`],
    ),
  ).toEqual([]);
});

it('no link is absolute, so the site works from any path prefix', () => {
  expect(addresses.filter(({ to }) => to.startsWith('/')).map(tell)).toEqual([]);
});

it('nothing that a page loads comes from another host, and links lead to the web or to mail only', () => {
  const external = addresses.filter((address) => !isInternal(address));
  expect(
    external.filter(({ tag, to }) => (tag === 'a' ? !/^(?:https?|mailto):/.test(to) : to !== 'data:,')).map(tell),
  ).toEqual([]);
});

it('every address in the stylesheet is a file of the site', () => {
  const css = site.bytes('site.css').toString('utf8');
  const urls = [...css.matchAll(/url\(\s*["']?([^"')]+)["']?\s*\)/g)].map(([, url = '']) => url);
  expect(urls.length).toBeGreaterThanOrEqual(3);
  expect(urls.filter((url) => !files.has(url))).toEqual([]);
  expect(css).not.toMatch(/@import|https?:/);
});

it('every page can be reached from the home page', () => {
  const reached = new Set<string>();
  const queue = ['/'];
  for (let path = queue.pop(); path !== undefined; path = queue.pop()) {
    if (reached.has(path)) continue;
    reached.add(path);
    const targets = addresses.filter((address) => address.from === path && address.tag === 'a' && isInternal(address));
    queue.push(
      ...targets
        .map(({ to }) => `/${new URL(to, HOME + path!.slice(1)).href.slice(HOME.length).replace(/[?#].*$/, '')}`)
        .filter((to) => to.endsWith('/')),
    );
  }
  expect([...reached].sort()).toEqual(site.pages.map(({ path }) => path).sort());
});

it('every font goes with its licence', () => {
  const fonts = site.files.filter((path) => path.endsWith('.woff2'));
  expect(fonts.length).toBeGreaterThan(2);
  for (const font of fonts)
    expect(site.bytes(`${font.replace(/-latin-.*$/, '')}-licence.txt`).toString()).toContain(
      'SIL OPEN FONT LICENSE Version 1.1',
    );
});
