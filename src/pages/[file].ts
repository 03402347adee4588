import type { APIRoute, GetStaticPaths } from 'astro';
import { foundFiles, type FoundFile } from 'lagfolio/site';

export const getStaticPaths: GetStaticPaths = async () =>
  (await foundFiles()).map((file) => ({ params: { file: file.name }, props: { ...file } }));

export const GET: APIRoute<Record<keyof FoundFile, string>> = ({ props: { text, type } }) =>
  new Response(text, { headers: { 'Content-Type': `${type}; charset=utf-8` } });
