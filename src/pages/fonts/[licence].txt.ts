import type { APIRoute, GetStaticPaths } from 'astro';
import { licenceText } from 'lagfolio/fonts';
import { FACES, licenceOf, type Face } from '../../fonts/faces.ts';

/** The licence of each font, which has to go wherever the font goes. */
export const getStaticPaths: GetStaticPaths = () =>
  [...new Map(FACES.map((face) => [licenceOf(face), face]))].map(([licence, face]) => ({
    params: { licence },
    props: { face },
  }));

export const GET: APIRoute<{ face: Face }> = async ({ props: { face } }) =>
  new Response(await licenceText(face), { headers: { 'Content-Type': 'text/plain; charset=utf-8' } });
