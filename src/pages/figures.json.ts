import { renderRegister } from '../register/render-register.ts';
import { loadSite } from 'lagfolio/site';

export async function GET(): Promise<Response> {
  const { register } = await loadSite();
  return new Response(renderRegister(register), { headers: { 'Content-Type': 'application/json; charset=utf-8' } });
}
