/**
 * Feed, site map, citation file and the head of a page, of a small bench, by the published rules and somebody else's
 * parser.
 */
import { XMLParser } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { memoryPages, validateXML } from 'xmllint-wasm';
import { parse } from 'yaml';
import { describePage } from '../../src/citation/describe-page.ts';
import { renderCitationFile } from '../../src/citation/citation-file.ts';
import { renderFeed } from '../../src/citation/feed.ts';
import { pageHead } from '../../src/citation/page-head.ts';
import { renderSitemap } from '../../src/citation/sitemap.ts';
import { compileBench } from '../../src/site/compile.ts';
import type { Bench, SiteInfo, WriteUp } from '../../src/model/bench.ts';
import { bench, session } from '../support/small-bench.ts';

const FILE = { path: 'content/reports/lag.mdx', sha256: '0'.repeat(64), bytes: 1 };
const REPORT: WriteUp = {
  id: 'lag',
  title: 'Lag & <sync>',
  summary: 'How late “it” is: A & B.',
  date: '2026-03-04',
  author: 'A. Nobody',
  parts: [],
  links: [],
  prose: [],
  ownNames: [],
  text: '',
  file: FILE,
};
const ADDRESS = 'https://bench.example/notes/';
const plain = bench([session('a', { rate: '24', resolution: 'hd' })], { reports: [REPORT] });
const withSite = (more: Partial<SiteInfo>): Bench => ({
  ...plain,
  site: { ...plain.site, tagline: 'Lag', publisher: 'Us', ...more },
});
const placed = withSite({ address: ADDRESS, licence: 'CC-BY-4.0', language: 'en-GB', identifier: '10.1234/abc' });

/** The schema of https://www.sitemaps.org/protocol.html 0.9, its required part: written from that page. */
const SITEMAP_XSD = `<?xml version="1.0"?>
<xsd:schema xmlns:xsd="http://www.w3.org/2001/XMLSchema" targetNamespace="http://www.sitemaps.org/schemas/sitemap/0.9"
  xmlns="http://www.sitemaps.org/schemas/sitemap/0.9" elementFormDefault="qualified">
  <xsd:element name="urlset"><xsd:complexType><xsd:sequence>
    <xsd:element name="url" minOccurs="1" maxOccurs="50000"><xsd:complexType><xsd:sequence>
      <xsd:element name="loc"><xsd:simpleType><xsd:restriction base="xsd:anyURI">
        <xsd:minLength value="12"/><xsd:maxLength value="2048"/></xsd:restriction></xsd:simpleType></xsd:element>
    </xsd:sequence></xsd:complexType></xsd:element>
  </xsd:sequence></xsd:complexType></xsd:element>
</xsd:schema>`;

/**
 * RFC 4287: what a feed and an entry must have, and once at most (4.1.1, 4.1.2), as XML Schema; order does not matter
 * there.
 */
const ATOM_XSD = `<?xml version="1.0"?>
<xsd:schema xmlns:xsd="http://www.w3.org/2001/XMLSchema" targetNamespace="http://www.w3.org/2005/Atom"
  xmlns:a="http://www.w3.org/2005/Atom" elementFormDefault="qualified">
  <xsd:import namespace="http://www.w3.org/XML/1998/namespace"/>
  <xsd:complexType name="person"><xsd:sequence><xsd:element name="name" type="xsd:string"/></xsd:sequence></xsd:complexType>
  <xsd:complexType name="link">
    <xsd:attribute name="rel" type="xsd:string"/><xsd:attribute name="type" type="xsd:string"/>
    <xsd:attribute name="href" type="xsd:anyURI" use="required"/></xsd:complexType>
  <xsd:element name="feed"><xsd:complexType><xsd:sequence>
    <xsd:element name="id" type="xsd:anyURI"/><xsd:element name="title" type="xsd:string"/>
    <xsd:element name="subtitle" type="xsd:string" minOccurs="0"/><xsd:element name="updated" type="xsd:dateTime"/>
    <xsd:element name="author" type="a:person"/><xsd:element name="rights" type="xsd:string" minOccurs="0"/>
    <xsd:element name="link" type="a:link" minOccurs="1" maxOccurs="unbounded"/>
    <xsd:element name="entry" minOccurs="0" maxOccurs="unbounded"><xsd:complexType><xsd:sequence>
      <xsd:element name="id" type="xsd:anyURI"/><xsd:element name="title" type="xsd:string"/>
      <xsd:element name="updated" type="xsd:dateTime"/><xsd:element name="author" type="a:person" minOccurs="0"/>
      <xsd:element name="link" type="a:link" minOccurs="1" maxOccurs="unbounded"/>
      <xsd:element name="summary" type="xsd:string"/>
    </xsd:sequence></xsd:complexType></xsd:element>
  </xsd:sequence><xsd:anyAttribute processContents="skip"/></xsd:complexType></xsd:element>
</xsd:schema>`;

async function faultsOf(contents: string, schema: string): Promise<readonly string[]> {
  const { errors } = await validateXML({
    xml: [{ fileName: 'document.xml', contents }],
    schema: [{ fileName: 'schema.xsd', contents: schema }],
    initialMemoryPages: 256,
    maxMemoryPages: 2 * memoryPages.GiB,
  });
  return errors.map(({ message }) => message);
}

describe('the site map', () => {
  const addresses = [`${ADDRESS}`, `${ADDRESS}a/?b=1&c=2`];

  it('is one by sitemaps.org 0.9, with every address', async () => {
    const text = renderSitemap(addresses);
    expect(await faultsOf(text, SITEMAP_XSD)).toEqual([]);
    const { urlset } = new XMLParser().parse(text) as { urlset: { url: readonly { loc: string }[] } };
    expect(urlset.url.map(({ loc }) => loc)).toEqual(addresses);
  });

  it('would be found out', async () => {
    expect(await faultsOf(renderSitemap(addresses).replaceAll('loc>', 'location>'), SITEMAP_XSD)).not.toEqual([]);
  });
});

describe('the feed', () => {
  it('is one by RFC 4287, with the report under its address', async () => {
    const text = renderFeed(placed) ?? '';
    expect(await faultsOf(text, ATOM_XSD)).toEqual([]);
    const { feed } = new XMLParser().parse(text) as { feed: { id: string; updated: string; entry: object } };
    expect(feed.id).toBe(ADDRESS);
    expect(feed.updated).toBe('2026-03-04T00:00:00Z');
    expect(feed.entry).toEqual({
      id: `${ADDRESS}reports/lag/`,
      title: REPORT.title,
      updated: '2026-03-04T00:00:00Z',
      author: { name: 'A. Nobody' },
      link: '',
      summary: REPORT.summary,
    });
  });

  it('is none without an address, or without anything to tell', () => {
    expect(renderFeed(plain)).toBeUndefined();
    expect(renderFeed({ ...placed, reports: [] })).toBeUndefined();
  });

  it('would be found out', async () => {
    const text = (renderFeed(placed) ?? '').replace(/<updated>.*?<\/updated>/, '');
    expect(await faultsOf(text, ATOM_XSD)).not.toEqual([]);
  });
});

describe('CITATION.cff', () => {
  it('has what the Citation File Format 1.2.0 requires, and what the site says of itself', () => {
    // Required by schema 1.2.0: authors, cff-version, message, title; date-released is a day, license one of SPDX.
    expect(parse(renderCitationFile(placed))).toEqual({
      'cff-version': '1.2.0',
      message: expect.stringMatching(/\S/) as string,
      type: 'dataset',
      title: 'Test',
      abstract: 'Lag',
      authors: [{ name: 'Us' }],
      'date-released': '2026-03-04',
      license: 'CC-BY-4.0',
      url: ADDRESS,
      doi: '10.1234/abc',
      keywords: ['latency', 'camera', 'display', 'measurement uncertainty'],
    });
  });

  it.each([
    ['urn:isbn:9780306406157', { type: 'other', value: 'urn:isbn:9780306406157' }],
    ['https://bench.example/x', { type: 'url', value: 'https://bench.example/x' }],
  ])('names what is no DOI by its type: %s', (identifier, expected) => {
    expect(parse(renderCitationFile(withSite({ identifier })))).toMatchObject({ identifiers: [expected] });
  });
});

describe('the head of a page', () => {
  const site = compileBench(placed);
  const total = site.figure('total/a');
  if (total?.interval === undefined) throw new Error('the small bench has a total with its interval');

  it('says where the page stands, and describes it with the figures that it names', () => {
    const head = pageHead(site, '/sessions/a/');
    expect(head.canonical).toBe(`${ADDRESS}sessions/a/`);
    expect(head.description?.text).toContain(total.text);
    expect(head.description?.figures).toEqual(['total/a']);
    expect(head.language).toBe('en-GB');
  });

  it('gives each figure of a session as an observation, in a unit by its code, with its interval', () => {
    const data = JSON.parse(pageHead(site, '/sessions/a/').structured ?? '') as {
      '@type': string;
      license: string;
      hasPart: readonly { identifier: string }[];
    };
    expect(data['@type']).toBe('Dataset');
    expect(data.license).toBe('https://spdx.org/licenses/CC-BY-4.0.html');
    expect(data.hasPart.find(({ identifier }) => identifier === 'total/a')).toMatchObject({
      '@type': 'Observation',
      url: `${ADDRESS}sessions/a/#total`,
      value: total.value,
      minValue: total.interval?.low,
      maxValue: total.interval?.high,
      // UN/CEFACT Recommendation 20: C26, millisecond
      unitCode: 'C26',
      unitText: 'ms',
      observationDate: '2026-01-02',
      additionalProperty: expect.arrayContaining([
        {
          '@type': 'PropertyValue',
          name: 'standard uncertainty',
          value: total.standardUncertainty,
          unitCode: 'C26',
          unitText: 'ms',
        },
      ]) as unknown,
    });
  });

  it('cites a report to indexes of literature, and keeps markup out of the script', () => {
    const { tags, structured } = pageHead(site, '/reports/lag/');
    expect(tags.filter(({ key }) => key.startsWith('citation_')).map(({ key, content }) => [key, content])).toEqual([
      ['citation_title', REPORT.title],
      ['citation_author', 'A. Nobody'],
      ['citation_publication_date', '2026/03/04'],
      ['citation_technical_report_institution', 'Us'],
      ['citation_language', 'en-GB'],
      ['citation_doi', '10.1234/abc'],
      ['citation_abstract_html_url', `${ADDRESS}reports/lag/`],
    ]);
    expect(structured).not.toContain('<');
    expect(JSON.parse(structured ?? '')).toMatchObject({
      '@type': 'Report',
      headline: REPORT.title,
      datePublished: '2026-03-04',
    });
  });

  it('writes nothing absolute without an address', () => {
    const bare = compileBench(withSite({}));
    for (const path of ['/', '/sessions/a/', '/reports/lag/'])
      expect(JSON.stringify(pageHead(bare, path))).not.toMatch(/https?:/);
    expect(renderCitationFile(bare.bench)).not.toMatch(/https?:/);
  });

  it('describes every kind of page', () => {
    const paths = [
      '/',
      '/reports/',
      '/comparison/',
      '/bodies/',
      '/sessions/',
      '/rigs/',
      '/chain/',
      '/method/',
      '/data/',
    ];
    for (const path of [...paths, '/bodies/alba-one/', '/rigs/attic/', '/reports/lag/', '/documentation/ledger/'])
      expect(describePage(site, path).text.length, path).toBeGreaterThan(15);
  });
});
