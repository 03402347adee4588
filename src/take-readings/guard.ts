/**
 * Who may use the server part: pages that it served itself, on this machine.
 *
 *     another machine               the address that the connection comes from
 *     another name for this one     the Host header (DNS rebinding: a site whose name leads here)
 *     another site in the browser   the Origin and Sec-Fetch-Site headers, and a token that only the page has
 */

export interface Asked {
  readonly method: string;
  /** Below the page's own path: `/`, `/session`. */
  readonly path: string;
  readonly query: URLSearchParams;
  /** By name in lower case. */
  readonly headers: Readonly<Record<string, string | undefined>>;
  /** Address of whoever connected. */
  readonly from: string | undefined;
  readonly body: string;
}

/** Carries the token of the page. */
export const TOKEN_HEADER = 'x-take-readings';

const LOOPBACK = /^(?:127\.\d{1,3}\.\d{1,3}\.\d{1,3}|::1|::ffff:127\.\d{1,3}\.\d{1,3}\.\d{1,3})$/;
const OWN_NAME = /^(?:localhost|127\.\d{1,3}\.\d{1,3}\.\d{1,3}|\[::1\])(?::\d{1,5})?$/;

/** Why a request is refused, in a sentence; undefined where it is not. */
export function refusalOf({ method, path, headers, from }: Asked, token: string): string | undefined {
  const { host = '', origin } = headers;
  if (from === undefined || !LOOPBACK.test(from))
    return 'Readings are taken on the machine that serves this page, and on no other.';
  if (!OWN_NAME.test(host)) return 'Open this page as localhost: by another name its server part answers nothing.';
  if (origin !== undefined && origin !== `http://${host}`) return 'Another site may not ask this.';
  const site = headers['sec-fetch-site'] ?? 'same-origin';
  if (path === '/') {
    const isOpened = headers['sec-fetch-mode'] === 'navigate' && headers['sec-fetch-dest'] !== 'iframe';
    return method !== 'GET' || !(isOpened || site === 'same-origin' || site === 'none')
      ? 'Another site may not ask this.'
      : undefined;
  }
  if (site !== 'same-origin') return 'Another site may not ask this.';
  if (headers[TOKEN_HEADER] !== token)
    return 'This page is from before the server was started again: reload it. What is typed is kept.';
  if (method !== 'POST') return undefined;
  if (origin === undefined) return 'A request that writes has to say where it comes from.';
  return /^application\/json(?:;|$)/.test(headers['content-type'] ?? '') ? undefined : 'Only JSON is taken.';
}
