/** What a publication says of itself to be found and cited by. */
import spdxLicences from 'spdx-license-ids/index.json' with { type: 'json' };
import { parsed } from '../fields.ts';

const LICENCES = new Map(spdxLicences.map((id) => [id.toLowerCase(), id]));
/** ISO 26324: a prefix that begins with 10, a slash, and whatever the registrant chose. */
const DOI = /^(?:doi:|https?:\/\/(?:dx\.)?doi\.org\/)?(10\.\d{4,9}\/\S+)$/i;
/** RFC 8141. */
const URN = /^urn:[a-z0-9][a-z0-9-]{0,30}:\S+$/i;

/** An identifier of the SPDX licence list, in its own spelling. */
export const licence = parsed('bad-licence', (text) => LICENCES.get(text.trim().toLowerCase()));

/** Of the home page, with a slash at the end: every other address of the site begins with it. */
export const siteAddress = parsed('bad-address', (text) => {
  const url = webAddress(text);
  if (url === undefined || url.search !== '' || url.hash !== '' || /\.html?$/i.test(url.pathname)) return undefined;
  return url.href.endsWith('/') ? url.href : `${url.href}/`;
});

/** A tag of BCP 47, in its canonical spelling. */
export const languageTag = parsed('bad-language', (text) => {
  try {
    return Intl.getCanonicalLocales(text.trim())[0];
  } catch {
    return undefined;
  }
});

/** A DOI without what stands before it, a URN, or an address. */
export const publicationIdentifier = parsed('bad-identifier', (text) => {
  const written = text.trim();
  return DOI.exec(written)?.[1] ?? (URN.test(written) ? written : webAddress(written)?.href);
});

function webAddress(text: string): URL | undefined {
  if (!/^https?:\/\/\S+$/i.test(text.trim())) return undefined;
  const url = URL.canParse(text.trim()) ? new URL(text.trim()) : undefined;
  return url?.username === '' && url.password === '' ? url : undefined;
}
