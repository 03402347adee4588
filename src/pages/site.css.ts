import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { transform } from 'lightningcss';
import { fontsFor } from 'lagfolio/fonts';
import { loadSite, TOOL } from 'lagfolio/site';
import { fontFaces, licenceComment } from '../fonts/faces.ts';
import { fallbackFaces } from '../fonts/fallbacks.ts';

/** In the order in which they follow the typefaces. */
const SHEETS = ['tokens', 'page', 'table', 'stacked-table', 'chart', 'form'];

/** One stylesheet for every page, under a path that pages and fonts can be linked from relatively. */
export async function GET(): Promise<Response> {
  const read = (name: string): Promise<string> => readFile(join(TOOL, 'src/styles', `${name}.css`), 'utf8');
  const fonts = fontsFor((await loadSite()).bench);
  const sheets = [fontFaces(fonts), fallbackFaces(), ...(await Promise.all(SHEETS.map(read)))];
  const { code } = transform({ filename: 'site.css', code: Buffer.from(sheets.join('\n')), minify: true });
  const css = `${licenceComment()}\n${new TextDecoder().decode(code)}`;
  return new Response(css, { headers: { 'Content-Type': 'text/css; charset=utf-8' } });
}
