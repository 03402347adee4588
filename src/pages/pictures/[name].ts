import type { APIRoute, GetStaticPaths } from 'astro';
import { loadSite, publicationFolder } from 'lagfolio/site';
import { illustrationFiles, type IllustrationFile } from '../../illustrations/files.ts';
import { readIllustrationFile } from '../../illustrations/illustration-file.ts';

export const getStaticPaths: GetStaticPaths = async () => {
  const { bench } = await loadSite();
  return illustrationFiles(bench).map((file) => ({ params: { name: file.name }, props: { file } }));
};

export const GET: APIRoute<{ readonly file: IllustrationFile }> = async ({ props: { file } }) => {
  const { bytes, type } = await readIllustrationFile(publicationFolder(), file);
  return new Response(bytes, { headers: { 'Content-Type': type } });
};
