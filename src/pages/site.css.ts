import chart from '../styles/chart.css?raw';
import form from '../styles/form.css?raw';
import page from '../styles/page.css?raw';
import stacked from '../styles/stacked-table.css?raw';
import table from '../styles/table.css?raw';
import tokens from '../styles/tokens.css?raw';
import { fontFaces } from '../styles/faces.ts';
import { fallbackFaces } from './fonts/_fallbacks.ts';

/** One stylesheet for every page, under a path that pages and fonts can be linked from relatively. */
export function GET(): Response {
  return new Response([fontFaces(), fallbackFaces(), tokens, page, table, stacked, chart, form].join('\n'), {
    headers: { 'Content-Type': 'text/css; charset=utf-8' },
  });
}
