import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { card } from '../pictures/card.ts';
import { chartFiles, type ChartSource } from '../pictures/chart-files.ts';
import { drawPng } from '../pictures/draw-png.ts';
import { findCharts, readHead } from '../pictures/find-charts.ts';
import { CARD_FILE, chartPath, hasCard } from '../register/paths.ts';
import { citedPublication } from '../views/cite-line.ts';
import { pageFrame } from '../views/page-frame.ts';
import type { Site } from '../site/site.ts';
import { builtPages } from './built-pages.ts';

/** What charts of a site are drawn from, and what stands on each. */
export function chartSource(site: Site): ChartSource {
  return {
    bench: site.bench,
    figure: site.figure,
    precision: site.precision,
    publication: citedPublication(site),
    invented: pageFrame(site).invented,
  };
}

/** Writes beside the finished pages of a site every chart as files of its own, and the cards of reports and bodies. */
export async function putOutCharts(folder: string, site: Site): Promise<void> {
  const source = chartSource(site);
  const done = new Set<string>();
  for await (const { path: page, html } of builtPages(folder)) {
    const charts = findCharts(html);
    for (const chart of charts) {
      // A chart that several pages show is the same on all of them.
      if (done.has(chart.id)) continue;
      done.add(chart.id);
      const files = chartFiles(source, page, chart);
      mkdirSync(join(folder, chartPath(chart.id)), { recursive: true });
      for (const { path, text } of files) writeFileSync(join(folder, path), text);
    }
    if (hasCard(page)) {
      const drawn = card(readHead(html), charts[0], source.publication, source.invented);
      writeFileSync(join(folder, page, CARD_FILE), await drawPng(drawn));
    }
  }
}
