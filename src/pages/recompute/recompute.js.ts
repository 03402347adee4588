import { bundle } from 'lagfolio/scripts';
import { scriptResponse } from '../../scripts/script-response.ts';

export async function GET(): Promise<Response> {
  return scriptResponse(await bundle('recompute'));
}
