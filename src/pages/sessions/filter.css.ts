import { loadSite } from 'lagfolio/site';
import { filterRules, sessionsIndex } from '../../views/sessions-index.ts';

/** The filters of the list of sessions, which work without script. */
export async function GET(): Promise<Response> {
  return new Response(filterRules(sessionsIndex(await loadSite())), {
    headers: { 'Content-Type': 'text/css; charset=utf-8' },
  });
}
