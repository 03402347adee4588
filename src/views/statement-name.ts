import { sessionTitle } from '../register/labels.ts';
import { bodyPath, sessionPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import { isKind, KINDS } from '../register/kinds.ts';

export interface StatementName {
  readonly name: string;
  /** Where it stands now; undefined when it is no longer published. */
  readonly path: string | undefined;
}

/** What a reader is told a recorded id is: `Total latency, Orrin V2, 24 frames/s (orrin-uhd24-a)`; its id where it is gone. */
export function nameStatement(id: string, { bench, figure }: Pick<Published, 'bench' | 'figure'>): StatementName {
  const [kind = '', ...rest] = id.split('/');
  const subject = rest.join('/');
  const session = bench.sessions.find((each) => each.id === subject);
  const title = session && sessionTitle(bench, session);
  const of = title === undefined ? subject : `${title} (${subject})`;
  if (kind === 'session') return { name: `Session ${of}`, path: session && sessionPath(session.id) };
  if (kind === 'body') {
    const body = bench.bodies.find((each) => each.id === subject);
    return { name: `Body ${body?.name ?? subject}`, path: body && bodyPath(body.id) };
  }
  const now = figure(id);
  // What has a page of entries to itself says in its label what it is of.
  const says = now?.group !== undefined;
  const label = now?.label ?? kindLabel(kind);
  return {
    name: title !== undefined ? `${label}, ${of}` : says ? label : `${label} (${subject})`,
    path: now?.entry,
  };
}

/** `Total latency`, `Session`. */
export function kindLabel(kind: string): string {
  return isKind(kind) ? KINDS[kind].label : kind.slice(0, 1).toUpperCase() + kind.slice(1).replaceAll('-', ' ');
}
