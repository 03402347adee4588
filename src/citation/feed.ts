/** The feed of reports and corrections: Atom, RFC 4287. */
import { entriesOf } from '../ledger/history.ts';
import type { Bench } from '../model/bench.ts';
import { PATHS, reportPath } from '../register/paths.ts';
import { describeDay } from '../views/day.ts';
import { absolute } from './absolute.ts';
import { renderXml } from './xml.ts';

export const FEED = '/feed.xml';

export interface FeedEntry {
  readonly path: string;
  readonly title: string;
  /** ISO 8601 calendar date. */
  readonly date: string;
  readonly summary: string;
  readonly author: string | undefined;
}

/** Newest first: every report, and every record by which something moved or went. */
export function feedEntries({ reports, ledger }: Bench): readonly FeedEntry[] {
  const corrections = entriesOf(ledger)
    .filter(({ moved, gone }) => moved.length + gone.length > 0)
    .map(({ id, date, reason, causes }) => ({
      path: `${PATHS.corrections}#${id}`,
      title: `Correction of ${describeDay(date)}`,
      date,
      summary: [reason, causes.join('; ')].filter(Boolean).join(' '),
      author: undefined,
    }));
  return [
    ...corrections,
    ...reports.map(({ id, title, date, summary, author }) => ({ path: reportPath(id), title, date, summary, author })),
  ].sort((a, b) => (a.date === b.date ? 0 : a.date < b.date ? 1 : -1));
}

/** Undefined without an address or anything to tell. */
export function renderFeed(bench: Bench): string | undefined {
  const { site } = bench;
  const entries = feedEntries(bench);
  const [home, self, latest] = [absolute(site, PATHS.home), absolute(site, FEED), entries[0]];
  if (home === undefined || self === undefined || latest === undefined) return undefined;
  return renderXml({
    feed: {
      '@xmlns': 'http://www.w3.org/2005/Atom',
      ...(site.language === undefined ? {} : { '@xml:lang': site.language }),
      id: home,
      title: site.title,
      ...(site.tagline.trim() === '' ? {} : { subtitle: site.tagline }),
      updated: midnight(latest.date),
      author: { name: site.publisher.trim() || site.title },
      ...(site.licence === undefined ? {} : { rights: site.licence }),
      link: [
        { '@rel': 'self', '@type': 'application/atom+xml', '@href': self },
        { '@rel': 'alternate', '@type': 'text/html', '@href': home },
      ],
      entry: entries.map(({ path, title, date, summary, author }) => {
        const address = absolute(site, path);
        return {
          id: address,
          title,
          updated: midnight(date),
          ...(author === undefined ? {} : { author: { name: author } }),
          link: { '@rel': 'alternate', '@type': 'text/html', '@href': address },
          summary,
        };
      }),
    },
  });
}

/** RFC 4287, 3.3, asks for a time; of a day, its first moment. */
function midnight(date: string): string {
  return `${date}T00:00:00Z`;
}
