import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { APIRoute, GetStaticPaths } from 'astro';
import { publishedFiles } from '../../register/published-files.ts';
import { loadSite, publicationFolder } from 'lagfolio/site';

export const getStaticPaths: GetStaticPaths = async () => {
  const { bench } = await loadSite();
  return publishedFiles(bench).map(({ path }) => ({ params: { path: path.replace(/^data\//, '') } }));
};

/** The file exactly as it is on disk. */
export const GET: APIRoute = async ({ params: { path = '' } }) => {
  const bytes = await readFile(join(publicationFolder(), 'data', path));
  return new Response(new Uint8Array(bytes), { headers: { 'Content-Type': 'text/plain; charset=utf-8' } });
};
