import { readFile } from 'node:fs/promises';
import type { APIRoute, GetStaticPaths } from 'astro';
import { fileOfPackage, FONT_PACKAGES } from './_packages.ts';

/** The licence of each font, which has to go wherever the font goes. */
export const getStaticPaths: GetStaticPaths = () =>
  [...FONT_PACKAGES].map(([family, name]) => ({ params: { licence: `${family}-licence` }, props: { name } }));

export const GET: APIRoute<{ name: string }> = async ({ props: { name } }) =>
  new Response(await readFile(fileOfPackage(name, 'LICENSE'), 'utf8'), {
    headers: { 'Content-Type': 'text/plain; charset=utf-8' },
  });
