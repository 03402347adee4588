/**
 * What the build is measured against: a bare Astro project that gives the same pages from pasted text.
 *
 * Its write-ups are MDX in a content collection, each number pasted as its link and each chart as a string of
 * HTML; every other page is a string of HTML that one dynamic route puts between the same header and footer;
 * what is no page (raw files, register, stylesheet, fonts) lies in `public/`. Nothing is computed and nothing checked.
 */
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { PROJECT } from '../support/project-files.ts';

const REPORT = /^reports\/([^/]+)\/index\.html$/;

const CONFIG = `import mdx from '@astrojs/mdx';
import { defineConfig } from 'astro/config';
export default defineConfig({
  trailingSlash: 'always',
  devToolbar: { enabled: false },
  cacheDir: './.astro/cache',
  integrations: [mdx()],
  markdown: { syntaxHighlight: false },
  vite: { build: { rolldownOptions: { checks: { moduleLevelDirective: false } } } },
});
`;

const COLLECTION = `import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
export const collections = { reports: defineCollection({ loader: glob({ base: './content/reports', pattern: '*.mdx' }) }) };
`;

const BUILD = `import { build } from 'astro';
await build({ root: process.cwd(), logLevel: 'error' }, { devOutput: false });
`;

const ROUTE = `---
import { readFileSync, readdirSync } from 'node:fs';
import Layout from '../Layout.astro';
export function getStaticPaths() {
  return readdirSync('pasted').map((name) => {
    const { path, head, main } = JSON.parse(readFileSync('pasted/' + name, 'utf8'));
    return { params: { path: path || undefined }, props: { path, head, main } };
  });
}
const { path, head, main } = Astro.props;
---
<Layout {path} {head}><Fragment set:html={main} /></Layout>
`;

/** Writes the bare project into `root`, for the site that stands built in `dist` from the write-ups of `content`. */
export function writeBareSite(root: string, dist: string, content: string): void {
  rmSync(root, { recursive: true, force: true });
  const write = (path: string, text: string): void => {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  };
  write('package.json', '{ "type": "module" }\n');
  symlinkSync(join(PROJECT, 'node_modules'), join(root, 'node_modules'), 'dir');
  write('astro.config.mjs', CONFIG);
  write('build.mjs', BUILD);
  write('src/content.config.ts', COLLECTION);
  write('src/pages/[...path].astro', ROUTE);

  const files = readdirSync(dist, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(dist.length + 1));
  for (const file of files.filter((name) => !name.endsWith('.html'))) {
    mkdirSync(dirname(join(root, 'public', file)), { recursive: true });
    cpSync(join(dist, file), join(root, 'public', file));
  }
  const pages = files
    .filter((name) => name.endsWith('.html'))
    .map((file) => ({ file, html: readFileSync(join(dist, file), 'utf8') }));
  for (const [index, { file, html }] of pages.entries()) {
    const id = REPORT.exec(file)?.[1];
    if (id !== undefined)
      write(`content/reports/${id}.mdx`, pasteInto(readFileSync(join(content, 'reports', `${id}.mdx`), 'utf8'), html));
    else
      write(
        `pasted/${index}.json`,
        JSON.stringify({
          path: file.replace(/\/?index\.html$/, ''),
          head: headOf(html),
          main: between(html, '<main class="page" id="content">', '</main>'),
        }),
      );
  }
  const home = pages.find(({ file }) => file === 'index.html')?.html ?? '';
  write('src/Layout.astro', layoutOf(home));
  const report = pages.find(({ file }) => REPORT.test(file))?.html ?? '';
  write('src/pages/reports/[id].astro', reportRoute(report));
}

/** The page around its content, as static markup; links go up by as many folders as the page lies deep. */
function layoutOf(home: string): string {
  const linked = (html: string): string =>
    html.replace(
      /href="\.\/([^"]*)"|href="((?:[a-z]+\/|site\.css)[^"]*)"/g,
      (_all, here: string | undefined, below: string | undefined) => `href={up + '${here ?? below ?? ''}'}`,
    );
  return `---
const { path, head } = Astro.props;
const up = path === '' ? './' : '../'.repeat(path.split('/').length);
---
<!doctype html>
<html lang="en-GB"><head><Fragment set:html={head} />${linked('<link rel="stylesheet" href="site.css">')}</head>
${linked(between(home, '</head>', '<main').replaceAll(/ aria-current="[a-z]+"/g, ''))}<main class="page" id="content"><slot /></main>${linked(between(home, '</main>', '</html>'))}</html>
`;
}

function reportRoute(report: string): string {
  return `---
import { getCollection, render } from 'astro:content';
import Layout from '../../Layout.astro';
export async function getStaticPaths() {
  return (await getCollection('reports')).map((entry) => ({ params: { id: entry.id }, props: { entry } }));
}
const { entry } = Astro.props;
const { Content } = await render(entry);
---
<Layout path={'reports/' + entry.id} head={entry.data.head}><article><Fragment set:html={entry.data.header} /><Content /><hr>${between(report, '<hr>', '</article>')}</article></Layout>
`;
}

/** The write-up with every part replaced by what the built page has in its place. */
function pasteInto(mdx: string, html: string): string {
  const charts = [
    ...html.matchAll(/<figure class="plate"[^>]*>[^]*?<\/figure>\s*<details class="behind">[^]*?<\/details>/g),
  ].map(([chart]) => chart);
  const links = new Map(
    [...html.matchAll(/<a class="figure"[^>]* data-figure="([^"]*)"[^>]*>[^]*?<\/a>/g)].map(([link, id = '']) => [
      id,
      link,
    ]),
  );
  const front = { head: headOf(html), header: `<header>${between(html, '<article><header>', '</header>')}</header>` };
  const text = mdx
    .replace(/^---\n[^]*?\n---\n/, '')
    .replace(/<Figure id="([^"]*)" \/>/g, (_all, id: string) => required(links.get(id), id))
    .replace(
      /<FigureChart [^]*?\/>/g,
      (part) => `<Fragment set:html={${JSON.stringify(required(charts.shift(), part))}} />`,
    );
  return `---\n${JSON.stringify(front)}\n---\n${text}`;
}

function headOf(html: string): string {
  return between(html, '<head>', '<link rel="stylesheet"');
}

function between(text: string, start: string, end: string): string {
  const from = text.indexOf(start);
  const to = text.indexOf(end, from + start.length);
  if (from < 0 || to < 0)
    throw new Error(`a built page has no '${from < 0 ? start : end}'; the bare site cannot be made from it`);
  return text.slice(from + start.length, to);
}

function required(text: string | undefined, what: string): string {
  if (text === undefined) throw new Error(`a built page does not show ${what}`);
  return text;
}
