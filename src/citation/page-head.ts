/** What the head of a page says to machines: what it is, where it stands, and how it is cited. */
import type { Bench, WriteUp } from '../model/bench.ts';
import { CARD_FILE, hasCard, reportPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { PageFrame } from '../views/page-frame.ts';
import { absolute } from './absolute.ts';
import { describePage, type PageDescription } from './describe-page.ts';
import { FEED, feedEntries } from './feed.ts';
import { structuredData } from './structured-data.ts';

export interface HeadTag {
  /** `name` of HTML, or `property` of Open Graph. */
  readonly attribute: 'name' | 'property';
  readonly key: string;
  readonly content: string;
}

export interface PageHead {
  /** Tag of BCP 47. */
  readonly language: string;
  readonly description: PageDescription | undefined;
  /** Absolute; undefined without a base address. */
  readonly canonical: string | undefined;
  /** Site path of the feed. */
  readonly feed: string | undefined;
  readonly tags: readonly HeadTag[];
  /** JSON-LD, fit to stand between script tags. */
  readonly structured: string | undefined;
}

/** What stands around the content of one page, its head included. */
export interface PlacedFrame extends PageFrame {
  readonly head: PageHead;
}

/** Where nobody has said otherwise: the language of the words that pages say by themselves. */
const LANGUAGE = 'en-GB';

/** @param path undefined for a page that only leads on, or says that there is none */
export function pageHead(site: Published, path: string | undefined): PageHead {
  const { bench } = site;
  const description = path === undefined ? undefined : describePage(site, path);
  const canonical = path === undefined ? undefined : absolute(bench.site, path);
  const data = path === undefined || description === undefined ? undefined : structuredData(site, path, description);
  return {
    language: bench.site.language ?? LANGUAGE,
    description,
    canonical,
    feed: bench.site.address !== undefined && feedEntries(bench).length > 0 ? FEED : undefined,
    tags: [
      ...(path === undefined ? [] : citationTags(bench, path)),
      ...(canonical === undefined || description === undefined
        ? []
        : previewTags(bench, path ?? '', description.text, canonical)),
    ],
    structured: data && JSON.stringify(data).replaceAll('<', '\\u003c'),
  };
}

/** Of a report, as indexes of literature read them (Highwire Press; common practice, no source). */
function citationTags({ site, reports }: Bench, path: string): readonly HeadTag[] {
  const report = reports.find(({ id }) => reportPath(id) === path);
  if (report === undefined) return [];
  return Object.entries(citationOf(site, report)).flatMap(([key, content]) =>
    content === undefined ? [] : [{ attribute: 'name' as const, key: `citation_${key}`, content }],
  );
}

function citationOf(
  { publisher, title: publication, language, identifier, address }: Bench['site'],
  { id, title, author, date }: WriteUp,
): Readonly<Record<string, string | undefined>> {
  return {
    title,
    author: author ?? (publisher.trim() || publication),
    publication_date: date.replaceAll('-', '/'),
    technical_report_institution: publisher.trim() || undefined,
    language,
    doi: identifier?.startsWith('10.') === true ? identifier : undefined,
    abstract_html_url: absolute({ ...(address === undefined ? {} : { address }) }, reportPath(id)),
  };
}

/** Open Graph, as previews of links read it; the title is the page's own. */
function previewTags({ site, reports }: Bench, path: string, description: string, url: string): readonly HeadTag[] {
  const isReport = reports.some(({ id }) => path === reportPath(id));
  const property = (key: string, content: string): HeadTag => ({ attribute: 'property', key: `og:${key}`, content });
  return [
    property('type', isReport ? 'article' : 'website'),
    property('site_name', site.title),
    property('description', description),
    property('url', url),
    ...(hasCard(path)
      ? [
          property('image', new URL(CARD_FILE, url).href),
          property('image:width', '1200'),
          property('image:height', '630'),
          property('image:alt', description),
          { attribute: 'name' as const, key: 'twitter:card', content: 'summary_large_image' },
        ]
      : []),
  ];
}
