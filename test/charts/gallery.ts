/**
 * Draws every chart with ordinary and with extreme values, into one HTML file to look at:
 *
 *     node test/charts/gallery.ts FOLDER
 */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Chart } from '../../src/charts/chart.ts';
import { GALLERY } from './examples.ts';

const folder = process.argv[2];
if (folder === undefined) throw new Error('usage: node test/charts/gallery.ts FOLDER');

const font = await readFile(
  new URL(
    '../../node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2',
    import.meta.url,
  ),
);
const css = await readFile(new URL('../../src/styles/chart.css', import.meta.url), 'utf8');

const figures: string[] = [];
for (const [name, render] of Object.entries(GALLERY)) {
  const { wide, narrow, title, description }: Chart = await render(name);
  figures.push(
    `<h2>${name}: ${escapeText(title)}</h2>\n<figure class="chart">${wide}${narrow}<figcaption>${escapeText(description)}</figcaption></figure>`,
  );
}

await mkdir(folder, { recursive: true });
await writeFile(
  join(folder, 'gallery.html'),
  `<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Charts</title>
<style>
@font-face { font-family: 'Source Sans 3 Variable'; src: url(data:font/woff2;base64,${font.toString('base64')}); font-weight: 200 900; }
:root { color-scheme: light dark; --paper: #fffdf9; --ink: #1b1b1a; --ink-soft: #5c5a55; --rule: #dedad1; --accent: #1f5f8b; --accent-2: #a4502a; --accent-3: #4d6b2f; --caution: #a12a1f; }
@media (prefers-color-scheme: dark) { :root { --paper: #161513; --ink: #ece8e0; --ink-soft: #aaa59a; --rule: #3a3834; --accent: #7fb8e0; --accent-2: #e59a6f; --accent-3: #a8c983; --caution: #ef8b7d; } }
body { background: var(--paper); color: var(--ink); font: 17px/1.5 'Source Sans 3 Variable'; max-width: 720px; margin: 0 auto; padding: 16px; }
h2 { font-size: 15px; margin: 40px 0 4px } figure { margin: 0 } figcaption { overflow-wrap: anywhere; font-size: 13px; color: var(--ink-soft) }
${css}</style>
${figures.join('\n')}</html>`,
);

function escapeText(text: string): string {
  return text.replace(/[&<]/g, (character) => `&#${String(character.charCodeAt(0))};`);
}
