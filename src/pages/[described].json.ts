import type { APIRoute, GetStaticPaths } from 'astro';
import { computedFiles } from '../data-package/package-files.ts';
import { loadSite } from 'lagfolio/site';

export const getStaticPaths: GetStaticPaths = async () => {
  const { bench, register } = await loadSite();
  return [...computedFiles(bench, register)].flatMap(([file, text]) =>
    file.endsWith('.json') ? [{ params: { described: file.replace(/\.json$/, '') }, props: { text } }] : [],
  );
};

export const GET: APIRoute = ({ props: { text } }) =>
  new Response(String(text), { headers: { 'Content-Type': 'application/json; charset=utf-8' } });
