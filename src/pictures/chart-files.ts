/** The files of one chart: a picture that stands alone, its numbers, its specification. */
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { Store } from 'lagfolio/memory';
import { readMarkup } from '../model/markup-text.ts';
import { chartNumbers, chartPicture, chartSpecification } from '../register/paths.ts';
import type { CitedPublication } from '../views/cite-line.ts';
import { citePlace } from '../views/cite-line.ts';
import { chartData, renderRows, type DataSource } from './chart-data.ts';
import type { ShownChart } from './find-charts.ts';
import { FORMATS, PUBLISHED, SCHEMES, type Format } from './formats.ts';
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
    ...(chart.pictured
      ? [{ path: chartPicture(chart.id), text: inColours(drawn(chart, words, PUBLISHED), 'light') }]
      : []),
    { path: chartNumbers(chart.id), text: renderRows(data.rows) },
    {
      path: chartSpecification(chart.id),
      text: `${JSON.stringify(specification(data, chart.caption, words.description))}\n`,
    },
  ];
}

export interface ChartPicture {
  /** `square-dark` */
  readonly form: string;
  readonly svg: string;
}

/** The chart in every format, light and dark, as SVG; also one that is put out without a picture. */
export function chartPictures(site: ChartSource, page: string, chart: ShownChart): readonly ChartPicture[] {
  const words = pictureWords(site, page, chart);
  return FORMATS.flatMap((format) => {
    const picture = drawn(chart, words, format);
    return SCHEMES.map((scheme) => ({ form: `${format.name}-${scheme}`, svg: inColours(picture, scheme) }));
  });
}

/** What was drawn before is taken from disk, where it is kept packed: its letters repeat. */
function drawn({ wide, narrow }: ShownChart, words: PictureWords, format: Format): string {
  const name = kept.nameOf([wide, narrow, words, format.name]);
  const known = kept.get(name);
  if (known instanceof Uint8Array) return inflateRawSync(known).toString('utf8');
  const picture = standAlone([wide, narrow], words, format);
  kept.put(name, deflateRawSync(picture, { level: 1 }));
  return picture;
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
