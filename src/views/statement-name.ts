import { sessionTitle } from '../register/labels.ts';
import type { Bench } from '../model/bench.ts';
import { bodyPath, displayPairPath, methodPath, PATHS, reportPath, rigPath, sessionPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import { isKind, KINDS } from '../register/kinds.ts';
import { capitalize } from '../register/text.ts';
import { lowerFirst } from '../register/traits.ts';

export interface StatementName {
  readonly name: string;
  /** Where it stands now; undefined when it is no longer published. */
  readonly path: string | undefined;
}

/** What a reader is told a recorded id is: `Total latency, Vennick Q4, 25 frames/s (vennick-uhd25-a)`; its id where it is gone. */
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
  const named = nameOfFile(id, bench);
  if (named !== undefined) return named;
  const now = figure(id);
  if (title !== undefined) return { name: `${kindLabel(kind)}, ${of}`, path: now?.entry };
  // What has a page of entries to itself says in its label what it is of.
  const says = now?.group !== undefined;
  const label = now?.label ?? kindLabel(kind);
  return { name: says ? label : `${label} (${subject})`, path: now?.entry };
}

/** What is no figure: by what it says something of. */
function nameOfFile(id: string, bench: Bench): StatementName | undefined {
  const [kind = '', first = '', ...rest] = id.split('/');
  const of = rest.join('/');
  switch (kind) {
    case 'display':
    case 'display-pair':
    case 'link':
    case 'rig':
    case 'report':
    case 'method':
      return recordNamed(`${kind}s`, first, bench);
    case 'setting':
      return { name: `Setting ${settingLabel(first, bench)}`, path: undefined };
    case 'speed':
      return {
        name: `Speed of ${bench.speeds?.list.find(({ id: own }) => own === first)?.name ?? first}`,
        path: undefined,
      };
    case 'level':
      return { name: `Label of ${of} (${settingLabel(first, bench)})`, path: undefined };
    case 'facts':
      return about('What is stated', first, of, bench);
    case 'words':
      return first === 'site' ? { name: 'Text of the site', path: undefined } : about('Text', first, of, bench);
    case 'pictures':
      return first === 'site'
        ? { name: 'Pictures of the site', path: PATHS.home }
        : about('Pictures', first, of, bench);
    case 'date':
      return about('Date', first, of, bench);
    case 'rows':
      return about('Rows', 'sessions', first, bench);
    case 'excluded-rows':
      return about('Rows that do not count', 'sessions', first, bench);
    case 'finding': {
      const session = bench.sessions.find((each) => each.id === of);
      return {
        name: `What was noticed of ${session === undefined ? of : `${sessionTitle(bench, session)} (${of})`}`,
        path: session && sessionPath(of),
      };
    }
    case 'kind':
      return { name: `What is meant by “${kindLabel(first)}”`, path: undefined };
    case 'site':
      return { name: `The site’s ${first}`, path: PATHS.home };
    default:
      return undefined;
  }
}

function about(what: string, folder: string, id: string, bench: Bench): StatementName {
  const { name, path } = recordNamed(folder, id, bench);
  return { name: `${what} of ${lowerFirst(name)}`, path };
}

/** A record of a folder: `Display Stage screen`, `Report Which body`; by its id where it is no longer there. */
function recordNamed(folder: string, id: string, bench: Bench): StatementName {
  const lists: Readonly<
    Record<string, readonly [what: string, named: readonly Named[], pathOf?: (id: string) => string]>
  > = {
    bodies: ['Body', bench.bodies, bodyPath],
    displays: ['Display', bench.displays],
    links: ['Link', bench.links],
    rigs: ['Rig', bench.rigs, rigPath],
    sessions: ['Session', bench.sessions.map((session) => ({ id: session.id, name: session.id })), sessionPath],
    'display-pairs': ['Display pair', bench.displayPairs.map(({ id: of }) => ({ id: of, name: of })), displayPairPath],
    reports: ['Report', bench.reports.map(({ id: of, title }) => ({ id: of, name: `“${title}”` })), reportPath],
    methods: ['Method note', bench.methods.map(({ id: of, title }) => ({ id: of, name: `“${title}”` })), methodPath],
  };
  const [what, list, pathOf] = lists[folder] ?? [folder, []];
  const found = list.find((each) => each.id === id);
  return { name: `${what} ${found?.name ?? id}`, path: found && pathOf?.(id) };
}

interface Named {
  readonly id: string;
  readonly name: string;
}

function settingLabel(id: string, { settings }: Bench): string {
  return settings.find((setting) => setting.id === id)?.label ?? id;
}

/** `Total latency`, `Session`. */
export function kindLabel(kind: string): string {
  return isKind(kind) ? KINDS[kind].label : capitalize(kind.replaceAll('-', ' '));
}
