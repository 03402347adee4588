import { zipPackage } from '../data-package/zip-package.ts';
import { loadSite, publicationFolder } from 'lagfolio/site';

export async function GET(): Promise<Response> {
  const { bench, register } = await loadSite();
  const bytes = await zipPackage(publicationFolder(), bench, register);
  return new Response(new Uint8Array(bytes), { headers: { 'Content-Type': 'application/zip' } });
}
