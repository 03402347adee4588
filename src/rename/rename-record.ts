/** Every text of a publication that names a record → the same text with its new name. Pure. */
import { filesOfRecord, RECORD_KINDS, type RecordKind } from './record-kinds.ts';

export interface Renaming {
  readonly kind: RecordKind;
  readonly from: string;
  readonly to: string;
}

/** What changes, by path: the new text; undefined where the file goes. */
export type Changes = ReadonlyMap<string, string | undefined>;

/** Where the pages of files stand that links are written in, relative to the site. */
const PAGES: readonly (readonly [folder: RegExp, page: string])[] = [
  [/^data\/(sessions|bodies|rigs)\/([^/]+)\.md$/, '/$1/$2/'],
  [/^content\/reports\/([^/]+)\.mdx$/, '/reports/$1/'],
  [/^content\/methods\/([^/]+)\.mdx$/, '/method/$1/'],
];

/** @param texts every file of `data/` and `content/`, by path, but the ledger, which follows by itself */
export function renameRecord(texts: ReadonlyMap<string, string>, renaming: Renaming): Changes {
  const changes = new Map<string, string | undefined>();
  const own = filesOfRecord(renaming.kind, renaming.from);
  const renamed = filesOfRecord(renaming.kind, renaming.to);
  for (const [path, text] of texts) {
    const mended = mend(path, text, renaming);
    const at = own.indexOf(path);
    if (at >= 0) changes.set(path, undefined).set(renamed[at] ?? path, mended);
    else if (mended !== text) changes.set(path, mended);
  }
  return changes;
}

function mend(path: string, text: string, renaming: Renaming): string {
  const { kind, from, to } = renaming;
  if (path === 'data/variation.yaml') return kind === 'body' || kind === 'session' ? mendKeys(text, from, to) : text;
  if (!/\.mdx?$/.test(path)) return text;
  const [front = '', rest = ''] = splitFront(text);
  const named =
    path.startsWith('data/sessions/') && (kind === 'body' || kind === 'rig') ? mendKey(front, renaming) : front;
  const parts = path.endsWith('.mdx') ? mendParts(rest, renaming) : rest;
  return named + mendLinks(parts, pageOf(path), renaming);
}

/** The front matter with its closing dashes, and what follows. */
function splitFront(text: string): readonly [string, string] {
  const front = /^---[ \t]*\r?\n[\s\S]*?\r?\n---[ \t]*(?:\r?\n|$)/.exec(text)?.[0] ?? '';
  return [front, text.slice(front.length)];
}

/** `body: fenn-3`, with quotes and a comment as they stand. */
function mendKey(front: string, { kind, from, to }: Renaming): string {
  return front.replace(
    new RegExp(`^(${kind}:[ \\t]*)(["']?)${from}\\2(?=[ \\t]*(?:#.*)?\\r?$)`, 'm'),
    (_all, key: string, quote: string) => `${key}${quote}${to}${quote}`,
  );
}

function mendKeys(text: string, from: string, to: string): string {
  return text.replace(new RegExp(`(^|[\\s{,])(["']?)${from}\\2(?=:[\\s{])`, 'gm'), `$1$2${to}$2`);
}

const PART = /<[A-Z]\w*(?:"[^"]*"|'[^']*'|[^"'<>])*>/g;
/** Properties that hold words or levels, never a name. */
const NO_NAMES = /\b(?:caption|title|where)=(?:"[^"]*"|'[^']*'|\{\{[\s\S]*?\}\}|\{[^{}]*\})/g;
/** Properties that name one kind of record. */
const NAMING: Readonly<Record<string, RecordKind>> = { body: 'body', rig: 'rig', session: 'session' };

/** In quotes within the tags of parts: the name itself, or a part of a figure's name, `total/fenn-3-a`. */
function mendParts(text: string, { kind, from, to }: Renaming): string {
  return text.replace(PART, (tag) => {
    const kept = [...tag.matchAll(NO_NAMES)].map(({ index, 0: { length } }) => [index, index + length] as const);
    return tag.replace(
      /(\b\w+=)?(["'])([a-z0-9./-]+)\2/g,
      (all, property: string | undefined, quote: string, value: string, at: number) => {
        if (kept.some(([start, end]) => at >= start && at < end)) return all;
        const names = NAMING[property?.slice(0, -1) ?? ''];
        if (names !== undefined && names !== kind) return all;
        const mended = value.split('/').map((piece) => (piece === from ? to : piece));
        return `${property ?? ''}${quote}${mended.join('/')}${quote}`;
      },
    );
  });
}

/** Targets of links that lead to its page or to its files. */
function mendLinks(text: string, page: string, { kind, from, to }: Renaming): string {
  const { pages } = RECORD_KINDS[kind];
  const lead = [`${pages}${from}/`, `${pages}${from}`, ...filesOfRecord(kind, from).map((path) => `/${path}`)];
  return text.replace(
    /(\]\(\s*<?|^\[[^\]]+\]:\s*<?|\bhref=["'])([^\s)>"']+)/gm,
    (all, before: string, target: string) => {
      if (/^[a-z][a-z+.-]*:|^#|^\/\//i.test(target)) return all;
      const { pathname } = new URL(target, `http://site${page}`);
      if (!lead.includes(pathname)) return all;
      const at = target.lastIndexOf(from);
      return `${before}${target.slice(0, at)}${to}${target.slice(at + from.length)}`;
    },
  );
}

function pageOf(path: string): string {
  for (const [folder, page] of PAGES) if (folder.test(path)) return path.replace(folder, page);
  return '/';
}
