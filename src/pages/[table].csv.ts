import type { APIRoute, GetStaticPaths } from 'astro';
import { tablesOf } from '../data-package/package-files.ts';
import { loadSite } from 'lagfolio/site';

export const getStaticPaths: GetStaticPaths = async () => {
  const { bench, register } = await loadSite();
  return tablesOf(bench, register).map(({ file, csv }) => ({
    params: { table: file.replace(/\.csv$/, '') },
    props: { csv },
  }));
};

export const GET: APIRoute = ({ props: { csv } }) =>
  new Response(String(csv), { headers: { 'Content-Type': 'text/csv; charset=utf-8' } });
