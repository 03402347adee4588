import type { APIRoute, GetStaticPaths } from 'astro';
import { fontBytes, fontsFor } from 'lagfolio/fonts';
import { loadSite } from 'lagfolio/site';
import type { FontFile } from '../../fonts/faces.ts';

export const getStaticPaths: GetStaticPaths = async () =>
  fontsFor((await loadSite()).bench).map((file) => ({
    params: { name: file.path.replace(/^\/fonts\/|\.woff2$/g, '') },
    props: { file },
  }));

export const GET: APIRoute<{ file: FontFile }> = async ({ props: { file } }) =>
  new Response(new Uint8Array(await fontBytes(file)), { headers: { 'Content-Type': 'font/woff2' } });
