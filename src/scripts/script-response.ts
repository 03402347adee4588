/** A script, as the route of a page answers with it. */
export function scriptResponse(text: string): Response {
  return new Response(text, { headers: { 'Content-Type': 'text/javascript; charset=utf-8' } });
}
