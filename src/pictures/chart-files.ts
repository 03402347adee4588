/** The files of one chart: pictures that stand alone, its numbers, its specification. */
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { Store } from 'lagfolio/memory';
import { readMarkup } from '../model/markup-text.ts';
import { chartFile, chartPath } from '../register/paths.ts';
import type { CitedPublication } from '../views/cite-line.ts';
import { citePlace } from '../views/cite-line.ts';
import { chartData, renderRows, type DataSource } from './chart-data.ts';
import type { ShownChart } from './find-charts.ts';
import { FORMATS, SCHEMES } from './formats.ts';
import { specification } from './specification.ts';
import { inColours, standAlone, type PictureWords } from './stand-alone.ts';

const kept = new Store('charts-alone', ['src/pictures', 'src/model']);

export interface ChartSource extends DataSource {
  readonly publication: CitedPublication;
  /** Said on every picture where bodies are invented. */
  readonly invented: string | undefined;
}

export interface ChartFile {
  /** Site path. */
  readonly path: string;
  readonly text: string;
}

/** @param page site path of the page that the chart stands on */
export function chartFiles(site: ChartSource, page: string, chart: ShownChart): readonly ChartFile[] {
  const words = pictureWords(site, page, chart);
  const data = chartData(site, chart.from, titleOf(chart));
  return [
    ...(chart.pictured ? chartPictures(site, page, chart) : []),
    { path: `${chartPath(chart.id)}data.csv`, text: renderRows(data.rows) },
    {
      path: `${chartPath(chart.id)}specification.json`,
      text: `${JSON.stringify(specification(data, chart.caption, words.description), null, 2)}\n`,
    },
  ];
}

/**
 * The pictures alone, as SVG; also of a chart that is put out without. What was drawn before is taken from disk, where it
 * is kept packed: its letters repeat.
 */
export function chartPictures(site: ChartSource, page: string, chart: ShownChart): readonly ChartFile[] {
  const { id, wide, narrow } = chart;
  const words = pictureWords(site, page, chart);
  const name = kept.nameOf([wide, narrow, words]);
  const known = kept.get(name);
  const texts =
    known instanceof Uint8Array
      ? (JSON.parse(inflateRawSync(known).toString('utf8')) as readonly string[])
      : FORMATS.flatMap((format) => {
          const picture = standAlone([wide, narrow], words, format);
          return SCHEMES.map((scheme) => inColours(picture, scheme));
        });
  if (known === undefined) kept.put(name, deflateRawSync(JSON.stringify(texts), { level: 1 }));
  return FORMATS.flatMap((format, row) =>
    SCHEMES.map((scheme, column) => ({
      path: chartFile(id, format.name, scheme),
      text: texts[row * SCHEMES.length + column] ?? '',
    })),
  );
}

function pictureWords(
  { publication, invented }: ChartSource,
  page: string,
  { id, caption, shared, wide }: ShownChart,
): PictureWords {
  const description = wordsOf(wide, 'desc');
  // What is drawn, and what bars and bands are: the first sentence of the alternative text says it.
  const [drawn = ''] = /^.*?\.(?=\s|$)/s.exec(description) ?? [];
  return {
    title: caption,
    lines: [shared, drawn].filter(Boolean),
    source: [citePlace(publication, `${page}#${id}`), invented].filter(Boolean).join(' '),
    description,
  };
}

function titleOf({ wide }: ShownChart): string {
  return wordsOf(wide, 'title');
}

function wordsOf(svg: string, element: 'title' | 'desc'): string {
  const found = new RegExp(`<${element}\\b[^>]*>([\\s\\S]*?)</${element}>`).exec(svg)?.[1] ?? '';
  return readMarkup(found);
}
