import type { Bench } from '../model/bench.ts';
import type { PackageFacts } from './frictionless.ts';

/** What the package says of itself, from what the publication says of itself. */
export function packageFacts({ site }: Bench, analysis: string): PackageFacts {
  const slug = site.title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return {
    name: slug === '' ? 'latency' : slug,
    title: site.title,
    description: site.tagline,
    publisher: site.publisher,
    version: analysis,
  };
}

/** The latest day that anything in it is of: nothing here reads a clock. */
export function latestDay({ sessions, reports, methods, ledger }: Bench): string {
  const days = [...sessions, ...reports, ...methods, ...(ledger?.told ?? []), ...(ledger?.chain ?? [])].map(
    ({ date }) => date,
  );
  return days.sort().at(-1) ?? '1980-01-01';
}
