/**
 * That every link leads somewhere, from whatever folder of whatever host the site is served, and nothing asks another
 * host.
 */
import type { BuiltSite, Page } from './built-site.ts';
import type { Checked } from './checked.ts';
import { attributeOf } from './html.ts';

/** Any prefix will do: a link that leaves it leaves the site. */
const HOME = 'https://site.invalid/some/prefix/';
const ADDRESSES = ['href', 'src', 'srcset', 'action', 'poster', 'data'];

export interface Address {
  readonly from: string;
  readonly tag: string;
  /** Of a link in the head. */
  readonly rel?: string;
  readonly to: string;
}

/** Every address on every page; of a list of them, as pictures have for several sizes, each. */
export function addressesOf({ pages }: BuiltSite): readonly Address[] {
  return pages.flatMap(({ path, elements }) =>
    elements.flatMap((element) =>
      ADDRESSES.flatMap((name) => {
        const value = attributeOf(element, name);
        if (value === undefined) return [];
        const each = name === 'srcset' ? value.split(',').map((one) => one.trim().split(/\s+/)[0] ?? '') : [value];
        const rel = attributeOf(element, 'rel');
        return each.map((to) => ({ from: path, tag: element.tagName, to, ...(rel === undefined ? {} : { rel }) }));
      }),
    ),
  );
}

export const isInternal = ({ to }: Address): boolean => !/^[a-z][a-z0-9+.-]*:|^\/\//i.test(to);

/** Internal addresses: relative, to a file of the site, and to an id of it where they name one. */
export function checkLinks(site: BuiltSite): Checked {
  const files = new Set(site.files);
  const internal = addressesOf(site).filter(isInternal);
  const whyBroken = ({ from, to }: Address): string | undefined => {
    if (to.startsWith('/')) return 'is absolute, so the site would work from one folder only';
    const { href, hash } = new URL(to, HOME + from.slice(1));
    if (!href.startsWith(HOME)) return 'leaves the site';
    const path = decodeURIComponent(href.slice(HOME.length).replace(/[?#].*$/, ''));
    if (!files.has(path === '' || path.endsWith('/') ? `${path}index.html` : path))
      return 'leads to no file of the site';
    if (hash === '') return undefined;
    const id = decodeURIComponent(hash.slice(1));
    return site.page(`/${path}`).byId.has(id) ? undefined : `leads to #${id}, which that page does not have`;
  };
  const faults = internal.flatMap((address) => {
    const why = whyBroken(address);
    return why === undefined ? [] : [`${address.from}: the address "${address.to}" of <${address.tag}> ${why}`];
  });
  return { looked: internal.length, faults };
}

/** External addresses: links may lead to the web or to mail, and nothing is loaded from there. */
export function checkHosts(site: BuiltSite): Checked {
  const external = addressesOf(site).filter((address) => !isInternal(address));
  const faults = external
    .filter(({ tag, rel, to }) =>
      tag === 'a' || rel === 'canonical' ? !/^(?:https?|mailto):/.test(to) : to !== 'data:,',
    )
    .map(({ from, tag, to }) => `${from}: <${tag}> asks another host or runs something: ${to}`);
  const css = site.bytes('site.css').toString('utf8');
  const urls = [...css.matchAll(/url\(\s*["']?([^"')]+)["']?\s*\)/g)].map(([, url = '']) => url);
  const files = new Set(site.files);
  return {
    looked: external.length + urls.length,
    faults: [
      ...faults,
      ...urls.filter((url) => !files.has(url)).map((url) => `/site.css: ${url} is no file of the site`),
      ...(/@import|https?:/.test(css) ? ['/site.css: asks another host'] : []),
    ],
  };
}

/** Every page can be reached by links from the home page, but what leads on from an old address or answers for none. */
export function checkReach(site: BuiltSite): Checked {
  const links = Map.groupBy(
    addressesOf(site).filter((address) => address.tag === 'a' && isInternal(address)),
    ({ from }) => from,
  );
  const reached = new Set<string>();
  const queue = ['/'];
  for (let path = queue.pop(); path !== undefined; path = queue.pop()) {
    if (reached.has(path)) continue;
    reached.add(path);
    for (const { to } of links.get(path) ?? []) {
      const target = `/${new URL(to, HOME + path.slice(1)).href.slice(HOME.length).replace(/[?#].*$/, '')}`;
      if (target.endsWith('/')) queue.push(target);
    }
  }
  return {
    looked: site.pages.length,
    faults: site.pages
      .filter((page) => !reached.has(page.path) && page.path !== NOT_FOUND && !leadsOn(page))
      .map(({ path }) => `${path}: no page leads to it`),
  };
}

/** What a server shows for an address that leads nowhere. */
const NOT_FOUND = '/404.html';

/** Whether a page only leads on, from an address that something has left. */
export function leadsOn({ elements }: Page): boolean {
  return elements.some(({ tagName, attrs }) => tagName === 'meta' && attrs.some(({ value }) => value === 'refresh'));
}
