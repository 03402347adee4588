import { readFile } from 'node:fs/promises';
import type { APIRoute, GetStaticPaths } from 'astro';
import { FACES, licenceOf } from '../../styles/faces.ts';
import { fileOfPackage } from './_packages.ts';

/** The licence of each font, which has to go wherever the font goes. */
export const getStaticPaths: GetStaticPaths = () =>
  [...new Map(FACES.map((face) => [licenceOf(face), face.from]))].map(([licence, from]) => ({
    params: { licence },
    props: { from },
  }));

export const GET: APIRoute<{ from: string }> = async ({ props: { from } }) =>
  new Response(await readFile(fileOfPackage(from, 'LICENSE'), 'utf8'), {
    headers: { 'Content-Type': 'text/plain; charset=utf-8' },
  });
