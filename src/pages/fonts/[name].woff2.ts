import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { APIRoute, GetStaticPaths } from 'astro';

const PACKAGE_OF: Readonly<Record<string, string>> = {
  'source-serif-4-latin-wght-normal': '@fontsource-variable/source-serif-4',
  'source-serif-4-latin-wght-italic': '@fontsource-variable/source-serif-4',
  'source-sans-3-latin-wght-normal': '@fontsource-variable/source-sans-3',
};

export const getStaticPaths: GetStaticPaths = () => Object.keys(PACKAGE_OF).map((name) => ({ params: { name } }));

export const GET: APIRoute = async ({ params: { name = '' } }) => {
  const fromRoot = createRequire(`${process.cwd()}/package.json`);
  const bytes = await readFile(fromRoot.resolve(`${PACKAGE_OF[name]}/files/${name}.woff2`));
  return new Response(new Uint8Array(bytes), { headers: { 'Content-Type': 'font/woff2' } });
};
