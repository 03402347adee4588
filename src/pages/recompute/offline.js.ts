import { bundle } from 'lagfolio/scripts';

export async function GET(): Promise<Response> {
  return new Response(await bundle('offline'), { headers: { 'Content-Type': 'text/javascript; charset=utf-8' } });
}
