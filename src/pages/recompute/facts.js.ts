import { loadSite, recomputeFacts } from 'lagfolio/site';
import { renderFacts } from '../../scripts/facts.ts';
import { scriptResponse } from '../../scripts/script-response.ts';

export async function GET(): Promise<Response> {
  return scriptResponse(renderFacts(recomputeFacts(await loadSite())));
}
