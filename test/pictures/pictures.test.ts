/** Pictures, numbers and specifications of charts: that each stands alone. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { compile, type TopLevelSpec } from 'vega-lite';
import { renderEstimates } from '../../src/charts/estimates.ts';
import { chartFiles, chartPictures, type ChartSource } from '../../src/pictures/chart-files.ts';
import { drawPng } from '../../src/pictures/draw-png.ts';
import { findCharts, readHead } from '../../src/pictures/find-charts.ts';
import { CARD, FORMATS, PALETTE, SCHEMES } from '../../src/pictures/formats.ts';
import { widthOf, wrap } from '../../src/pictures/outlines.ts';
import { pictureName } from '../../src/pictures/picture-name.ts';
import { standAlone } from '../../src/pictures/stand-alone.ts';
import { compileBench } from '../../src/site/compile.ts';
import { citedPublication } from '../../src/views/cite-line.ts';
import { bench, session } from '../support/small-bench.ts';
import { PROJECT } from '../support/project-files.ts';

const site = compileBench(
  bench([session('a', { rate: '24', resolution: 'hd' }), session('b', { rate: '25', resolution: 'hd' })]),
);
const totals = ['total/a', 'total/b'].map((id) => {
  const figure = site.figure(id);
  if (figure?.interval === undefined) throw new Error(`no interval of ${id}`);
  return figure;
});
const drawing = await renderEstimates({
  id: 'chart-1',
  title: 'Totals, A & B',
  rows: totals.map((figure) => ({ label: `<${figure.id}> → Ω`, figure })),
});
const PAGE = `<h1>Alba <b>One</b></h1><p class="answer">It lags by 94.9 ms.
  More.</p><figure class="plate" id="chart-1" data-from="total/a
total/b"><figcaption>Totals, A &amp; B<span class="shared">HD.</span></figcaption><div class="chart">${drawing.wide}${drawing.narrow}</div></figure>`;
const source: ChartSource = {
  ...site,
  precision: new Map(),
  publication: { ...citedPublication(site), address: 'https://bench.example/' },
  invented: 'All of it is invented.',
};
const [chart] = findCharts(PAGE + PAGE);
if (chart === undefined) throw new Error('no chart was found');
const files = new Map(
  chartFiles(source, '/bodies/a/', chart).map(({ path, text }) => [path.split('/').at(-1) ?? '', text]),
);
const pictures = new Map(chartPictures(source, '/bodies/a/', chart).map(({ form, svg }) => [form, svg]));
const sizeOf = (png: Uint8Array): readonly number[] => {
  const view = new DataView(png.buffer, png.byteOffset);
  // PNG (ISO/IEC 15948), 5.2 and 11.2.2: a signature of 8 bytes, then IHDR with width and height.
  expect([...png.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  return [view.getUint32(16), view.getUint32(20)];
};

describe('a page', () => {
  it('is asked for its charts, each once, and for its title and answer', () => {
    expect(findCharts(PAGE + PAGE)).toHaveLength(1);
    expect(chart).toMatchObject({ caption: 'Totals, A & B', shared: 'HD.', from: ['total/a', 'total/b'] });
    expect(readHead(PAGE)).toEqual({ title: 'Alba One', answer: 'It lags by 94.9 ms. More.' });
  });
});

describe('a picture', () => {
  it('is put out once beside numbers and specification, and drawn in every format, light and dark', () => {
    expect([...files.keys()]).toEqual(['picture.svg', 'data.csv', 'specification.json']);
    expect([...pictures.keys()]).toEqual(FORMATS.flatMap(({ name }) => SCHEMES.map((scheme) => `${name}-${scheme}`)));
    expect(files.get('picture.svg')).toBe(pictures.get('landscape-light'));
  });

  it('is not put out of a chart that says so', () => {
    const names = chartFiles(source, '/bodies/a/', { ...chart, pictured: false }).map(({ path }) => path);
    expect(names).toEqual(['/charts/chart-1/data.csv', '/charts/chart-1/specification.json']);
  });

  it.each(FORMATS)('needs no font, no page and no other host, and is as large as it says: $name', async (format) => {
    for (const scheme of SCHEMES) {
      const svg = pictures.get(`${format.name}-${scheme}`) ?? '';
      expect(svg).not.toMatch(/<text|font-|var\(|currentColor|<image|<style|<script/);
      expect(svg.replace(/xmlns(?::xlink)?="[^"]*"/g, '').replace(/<desc>[^]*?<\/desc>/, '')).not.toMatch(/https?:/);
    }
    // The program that draws it refuses what is no SVG.
    const png = await drawPng(pictures.get(`${format.name}-dark`) ?? '');
    expect(sizeOf(png)).toEqual([format.width, format.height]);
  });

  it('has the colours of the pages', () => {
    const css = readFileSync(join(PROJECT, 'src/styles/tokens.css'), 'utf8');
    const [light = '', dark = ''] = css.split('@media (prefers-color-scheme: dark)');
    for (const [scheme, part] of [
      ['light', light],
      ['dark', dark.split('@media print')[0] ?? ''],
    ] as const)
      for (const [name, value] of Object.entries(PALETTE[scheme])) expect(part, name).toContain(`--${name}: ${value};`);
  });

  it('says title, what rows share, what bars are, and its source, all within its margins', () => {
    for (const format of FORMATS) {
      const svg = pictures.get(`${format.name}-light`) ?? '';
      const runs = [...svg.matchAll(/<g fill="[^"]*" transform="translate\(([-\d.]+),([-\d.]+)\) scale\(([\d.]+),/g)];
      // The letters of the drawing stand in its own measure, and are smaller there.
      const outside = runs.filter(
        ([, x, y, scale]) =>
          Number(scale) > 0.0136 &&
          (Number(x) < format.margin.left || Number(y) > format.height - format.margin.bottom),
      );
      expect(outside).toEqual([]);
      expect(runs.length).toBeGreaterThan(8);
    }
    // Words as outlines: the same glyph is defined once and the same word once, and a line of text refers to both.
    const one = standAlone([], { title: 'aa aa', lines: [], source: '', description: '' }, CARD);
    expect(one.match(/<path /g)).toHaveLength(1);
    expect(one.match(/<use xlink:href="#g0"/g)).toHaveLength(2);
    expect(one.match(/<use xlink:href="#w0"/g)).toHaveLength(2);
  });

  it('is the same each time', () => {
    const again = chartFiles(source, '/bodies/a/', chart);
    expect(again.map(({ text }) => text)).toEqual([...files.values()]);
  });

  it('is called by its title, its chart and its form', () => {
    expect(pictureName({ id: 'chart-5aed5fd42d', caption: 'Lag of “A” & B' }, 'square-dark')).toBe(
      'lag-of-a-b-5aed5f-square-dark',
    );
  });
});

describe('text as outlines', () => {
  it('is as wide as the font says', () => {
    expect(widthOf('00', 1000, 400)).toBeCloseTo(2 * widthOf('0', 1000, 400), 10);
    expect(widthOf('一', 20, 400)).toBe(20);
  });

  it('is broken at spaces', () => {
    expect(wrap('one two three', widthOf('one two', 20, 400), 20, 400)).toEqual(['one two', 'three']);
    expect(wrap('', 10, 20, 400)).toEqual([]);
  });
});

describe('the numbers of a chart', () => {
  it('are those of the register, at full precision', () => {
    const rows: readonly Record<string, string>[] = parse(files.get('data.csv') ?? '', { columns: true });
    expect(
      rows.map((row) => [row['id'], Number(row['value']), Number(row['low']), Number(row['high']), row['text']]),
    ).toEqual(totals.map(({ id, value, interval, text }) => [id, value, interval?.low, interval?.high, text]));
  });

  it('are drawn by their specification without a warning', () => {
    const said: unknown[] = [];
    const quiet = (): unknown => logger;
    const note = (...words: readonly unknown[]): unknown => {
      said.push(words);
      return logger;
    };
    const logger: unknown = { level: quiet, error: note, warn: note, info: quiet, debug: quiet };
    const spec = JSON.parse(files.get('specification.json') ?? '') as TopLevelSpec;
    compile(spec, { logger: logger as never });
    expect(said).toEqual([]);
    expect(spec).toMatchObject({ title: 'Totals, A & B', data: { values: [{ id: 'total/a' }, { id: 'total/b' }] } });
  });
});
