import { bundle } from 'lagfolio/recompute';

export async function GET(): Promise<Response> {
  return new Response(await bundle('main'), { headers: { 'Content-Type': 'text/javascript; charset=utf-8' } });
}
