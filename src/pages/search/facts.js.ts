import { loadSite, searchFacts } from 'lagfolio/site';
import { renderFacts } from '../../scripts/facts.ts';

export async function GET(): Promise<Response> {
  const facts = renderFacts(searchFacts(await loadSite()));
  return new Response(facts, { headers: { 'Content-Type': 'text/javascript; charset=utf-8' } });
}
