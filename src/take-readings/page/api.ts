/** Questions to the server part. What it refuses is an answer like any other. */
import { TOKEN_HEADER } from '../guard.ts';
import type { SessionList } from '../session-list.ts';
import type { SessionState } from '../session-state.ts';

export type Answer =
  | { readonly kind: 'done' | 'conflict'; readonly state: SessionState }
  | { readonly kind: 'refused'; readonly says: readonly string[] };

const token = document.querySelector('meta[name="token"]')?.getAttribute('content') ?? '';

/** Addresses end in a slash, as all of this server do. */
async function ask<T>(path: string, body?: unknown, query = ''): Promise<T> {
  const response = await fetch(`api${path}/${query}`, {
    headers: { [TOKEN_HEADER]: token, 'Content-Type': 'application/json' },
    ...(body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) }),
  });
  return (await response.json()) as T;
}

const UNREACHED: Answer = {
  kind: 'refused',
  says: [
    'The server does not answer: start npm run dev again. What is typed here is kept; press Enter once more then.',
  ],
};

const answer = (path: string, body?: unknown, query?: string): Promise<Answer> =>
  ask<Answer>(path, body, query).catch(() => UNREACHED);
const of = (id: string): string => `?id=${encodeURIComponent(id)}`;

export const api = {
  sessions: () => ask<SessionList>('/sessions'),
  session: (id: string) => answer('/session', undefined, of(id)),
  advice: (id: string) => ask<{ readonly says?: string }>('/advice', undefined, of(id)),
  add: (body: { id: string; base: string; run: number; cells: Record<string, string> }) => answer('/add', body),
  edit: (body: { id: string; base: string; line: number; cells: Record<string, string> }) => answer('/edit', body),
  undo: (body: { id: string; base: string }) => answer('/undo', body),
  fillIn: (body: { id: string; base: string; date: string; firmware: string; room: string; warmUp: string }) =>
    answer('/fill-in', body),
  begin: (body: { body: string; rig: string; settings: Record<string, string> }) =>
    ask<{ readonly id: string } | { readonly says: readonly string[] }>('/begin', body).catch(() => ({
      says: ['The server does not answer.'],
    })),
};
