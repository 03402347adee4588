import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { TOOL } from 'lagfolio/site';
import { fontFaces } from '../styles/faces.ts';
import { fallbackFaces } from './fonts/_fallbacks.ts';

/** In the order in which they follow the typefaces. */
const SHEETS = ['tokens', 'page', 'table', 'stacked-table', 'chart', 'form'];

/** One stylesheet for every page, under a path that pages and fonts can be linked from relatively. */
export async function GET(): Promise<Response> {
  const read = (name: string): Promise<string> => readFile(join(TOOL, 'src/styles', `${name}.css`), 'utf8');
  const sheets = [fontFaces(), fallbackFaces(), ...(await Promise.all(SHEETS.map(read)))];
  return new Response(sheets.join('\n'), { headers: { 'Content-Type': 'text/css; charset=utf-8' } });
}
