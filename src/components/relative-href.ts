import { posix } from 'node:path';

/** The page for addresses that lead nowhere goes by this path, and is the file `404.html` beside the home page. */
const NOT_FOUND = '/404/';

/**
 * The link from one page to another, relative, so that the site can be served from any path prefix.
 *
 * Both are site paths that begin with a slash: `relativeHref('/sessions/a/', '/method/#budget')` is
 * `../../method/#budget`. Anything else (`https:`, `mailto:`, `#here`) is returned as it is.
 */
export function relativeHref(from: string, to: string): string {
  if (!to.startsWith('/') || to.startsWith('//')) return to;
  const [, path = '/', rest = ''] = /^([^?#]*)(.*)$/.exec(to) ?? [];
  const folder = from.endsWith('/') && from !== NOT_FOUND ? from : posix.dirname(from);
  if (path === from && rest.startsWith('#')) return rest;
  const bare = posix.relative(folder, path);
  if (bare === '') return `./${rest}`;
  return `${bare}${path.endsWith('/') && !bare.endsWith('/') ? '/' : ''}${rest}`;
}
