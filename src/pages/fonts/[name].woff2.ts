import { readFile } from 'node:fs/promises';
import type { APIRoute, GetStaticPaths } from 'astro';
import { fileOfPackage, FONT_PACKAGES } from './_packages.ts';

const NAMES = [
  'source-serif-4-latin-wght-normal',
  'source-serif-4-latin-wght-italic',
  'source-sans-3-latin-wght-normal',
];

export const getStaticPaths: GetStaticPaths = () => NAMES.map((name) => ({ params: { name } }));

export const GET: APIRoute = async ({ params: { name = '' } }) => {
  const [family = ''] = name.split('-latin-');
  const bytes = await readFile(fileOfPackage(FONT_PACKAGES.get(family) ?? '', `files/${name}.woff2`));
  return new Response(new Uint8Array(bytes), { headers: { 'Content-Type': 'font/woff2' } });
};
