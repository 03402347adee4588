/** What each page is about, as schema.org has it: data for search engines, in JSON-LD. */
import type { CreativeWork, Dataset, Observation, Organization, Report, Thing, WithContext } from 'schema-dts';
import { entryGroups } from '../register/entry-groups.ts';
import { sessionTitle } from '../register/labels.ts';
import { PATHS } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { describeCiteSubject } from '../views/cite-line.ts';
import { absolute } from './absolute.ts';
import type { PageDescription } from './describe-page.ts';
import { lastDay } from './record-state.ts';

type Site = Pick<Published, 'bench' | 'register' | 'find' | 'figure' | 'figuresOf'>;

/** UN/CEFACT Recommendation 20: C26 is the millisecond, C62 is one. Nobody has a code for a frame. */
const UNIT_CODES: Readonly<Record<string, string>> = { ms: 'C26', '1': 'C62' };

/** Undefined for a page that is no work of its own, and where nobody said where the site stands. */
export function structuredData(site: Site, path: string, description: PageDescription): WithContext<Thing> | undefined {
  const url = absolute(site.bench.site, path);
  if (url === undefined) return undefined;
  const own = { '@id': url, url, description: description.text, ...common(site) };
  const [, start = '', id = ''] = /^(\/[^/]+\/)(.+)\/$/.exec(path) ?? [];
  if (path === PATHS.home || path === PATHS.data) return { '@context': 'https://schema.org', ...wholeDataset(site) };
  if (start === PATHS.reports) return inContext(reportOf(site, id, own));
  if (start === PATHS.bodies) return inContext(bodyOf(site, id, own));
  if (start === PATHS.sessions) return inContext(sessionOf(site, id, own));
  if (start === '/figures/') return inContext(groupOf(site, id, own));
  return undefined;
}

type Own = ReturnType<typeof common> & {
  readonly '@id': string;
  readonly url: string;
  readonly description: string;
};

function inContext<T extends Report | Dataset>(thing: T | undefined): WithContext<Thing> | undefined {
  return thing && ({ '@context': 'https://schema.org', ...(thing as object) } as WithContext<Thing>);
}

function common({ bench }: Site) {
  const { licence, language, publisher, title } = bench.site;
  const organization: Organization = { '@type': 'Organization', name: publisher.trim() || title };
  return {
    publisher: organization,
    ...(licence === undefined ? {} : { license: `https://spdx.org/licenses/${licence}.html` }),
    ...(language === undefined ? {} : { inLanguage: language }),
  } satisfies Partial<Record<keyof CreativeWork, unknown>>;
}

function wholeDataset(site: Site): Dataset {
  const { bench } = site;
  const { title, tagline, identifier } = bench.site;
  const [url, register, day] = [absolute(bench.site, PATHS.home), absolute(bench.site, PATHS.register), lastDay(bench)];
  return {
    '@type': 'Dataset',
    ...(url === undefined ? {} : { '@id': `${url}#data`, url }),
    name: title,
    description: `${tagline.trim() || title}. Raw readings of picture latency and every figure computed from them, with uncertainties.`,
    ...common(site),
    creator: common(site).publisher,
    ...(identifier === undefined ? {} : { identifier }),
    ...(day === undefined ? {} : { dateModified: day }),
    variableMeasured: [{ '@type': 'PropertyValue', name: 'Total latency', unitCode: 'C26', unitText: 'ms' }],
    isAccessibleForFree: true,
    ...(register === undefined
      ? {}
      : {
          distribution: { '@type': 'DataDownload', encodingFormat: 'application/json', contentUrl: register },
        }),
  };
}

function partOfWhole({ bench }: Site): Dataset {
  return { '@type': 'Dataset', '@id': `${absolute(bench.site, PATHS.home) ?? ''}#data`, name: bench.site.title };
}

function reportOf(site: Site, id: string, own: Own): Report | undefined {
  const report = site.bench.reports.find((each) => each.id === id);
  if (report === undefined) return undefined;
  const { title, summary, date, author } = report;
  return {
    '@type': 'Report',
    ...own,
    name: title,
    headline: title,
    abstract: summary,
    datePublished: date,
    author: author === undefined ? own.publisher : { '@type': 'Person', name: author },
    isBasedOn: partOfWhole(site),
  };
}

function bodyOf(site: Site, id: string, own: Own): Dataset | undefined {
  const body = site.bench.bodies.find((each) => each.id === id);
  if (body === undefined) return undefined;
  const totals = site.bench.sessions.filter((session) => session.body === id).map((each) => `total/${each.id}`);
  return dataset(site, own, `Total latency of ${body.name}`, totals, {
    about: {
      '@type': 'Product',
      name: body.name,
      model: body.model,
      manufacturer: { '@type': 'Organization', name: body.maker },
    },
  });
}

function sessionOf(site: Site, id: string, own: Own): Dataset | undefined {
  const session = site.bench.sessions.find((each) => each.id === id);
  if (session === undefined) return undefined;
  const ids = site.figuresOf(id).map((figure) => figure.id);
  const file = absolute(site.bench.site, `/${session.readingsFile.path}`);
  const name = `${sessionTitle(site.bench, session)} (${id})`;
  return dataset(site, own, name, ids, {
    temporalCoverage: session.date,
    measurementTechnique: site.bench.methods.find((method) => method.id === session.method)?.title ?? session.method,
    ...(file === undefined
      ? {}
      : { distribution: { '@type': 'DataDownload', encodingFormat: 'text/csv', contentUrl: file } }),
  });
}

function groupOf(site: Site, id: string, own: Own): Dataset | undefined {
  const group = entryGroups(site.register.figures).get(id);
  return (
    group &&
    dataset(
      site,
      own,
      group.title,
      group.figures.map((figure) => figure.id),
      {},
    )
  );
}

/** A page of figures, each as an observation. */
function dataset(
  site: Site,
  own: Own,
  name: string,
  ids: readonly string[],
  more: Partial<Extract<Dataset, object>>,
): Dataset {
  const observations = ids.flatMap((id) => {
    const figure = site.figure(id);
    return figure === undefined ? [] : [observationOf(site, figure)];
  });
  return {
    '@type': 'Dataset',
    ...own,
    name,
    isPartOf: partOfWhole(site),
    ...(observations.length === 0 ? {} : { hasPart: observations as unknown as CreativeWork[] }),
    ...(more as object),
  };
}

/** A figure with its unit, its interval and its standard uncertainty. */
function observationOf(site: Site, figure: Figure): Observation {
  const { id, kind, of, label, unit, value, text, interval, standardUncertainty, entry } = figure;
  const unitOf = { ...(UNIT_CODES[unit] === undefined ? {} : { unitCode: UNIT_CODES[unit] }), unitText: unit };
  const session = site.bench.sessions.find((each) => each.id === of['session']);
  const address = absolute(site.bench.site, entry);
  return {
    '@type': 'Observation',
    ...(address === undefined ? {} : { '@id': address, url: address }),
    identifier: id,
    name: label,
    description: [describeCiteSubject(site, figure), text].filter(Boolean).join(': '),
    measuredProperty: { '@type': 'Property', name: label },
    value,
    ...unitOf,
    ...(interval === undefined
      ? {}
      : {
          minValue: interval.low,
          maxValue: interval.high,
          marginOfError: { '@type': 'QuantitativeValue', value: (interval.high - interval.low) / 2, ...unitOf },
        }),
    ...(session === undefined || of['than'] !== undefined ? {} : { observationDate: session.date }),
    additionalProperty: [
      ...(standardUncertainty === undefined
        ? []
        : [{ '@type': 'PropertyValue' as const, name: 'standard uncertainty', value: standardUncertainty, ...unitOf }]),
      ...(interval === undefined
        ? []
        : [{ '@type': 'PropertyValue' as const, name: 'level of the interval', value: interval.level }]),
      { '@type': 'PropertyValue' as const, name: 'kind', value: kind },
      { '@type': 'PropertyValue' as const, name: 'readings', value: figure.readings, unitCode: 'C62' },
    ],
  };
}
