import { readFile } from 'node:fs/promises';
import type { APIRoute, GetStaticPaths } from 'astro';
import { FACES } from '../../styles/faces.ts';
import { fileOfPackage } from './_packages.ts';

export const getStaticPaths: GetStaticPaths = () =>
  FACES.map(({ name, from }) => ({ params: { name }, props: { from } }));

export const GET: APIRoute<{ from: string }> = async ({ params: { name }, props: { from } }) =>
  new Response(new Uint8Array(await readFile(fileOfPackage(from, `files/${name}.woff2`))), {
    headers: { 'Content-Type': 'font/woff2' },
  });
