/** What the data page prints; where files are many, pages of their own list them. */
import type { Bench, SourceFile } from '../model/bench.ts';
import { once } from '../model/once.ts';
import { labelSessions } from '../register/labels.ts';
import { bodyPath, checksumsPath, countAnchor } from '../register/paths.ts';
import { publishedFiles } from '../register/published-files.ts';
import type { Published } from '../register/published.ts';
import type { Figure, Finding } from '../register/register.ts';
import { inBenchOrder } from '../register/select.ts';
import { MOST_LISTED } from './most-rows.ts';
import { namedSession, type NamedSession } from './named-session.ts';

export interface DataPage {
  /** None where pages of their own list what belongs to them. */
  readonly sessions: readonly {
    readonly session: NamedSession;
    readonly date: string;
    readonly total: Figure | undefined;
    readonly readings: Figure | undefined;
  }[];
  readonly findings: readonly Finding[];
  readonly counts: readonly {
    readonly id: string;
    readonly anchor: string;
    readonly label: string;
    readonly text: string;
    readonly body: { readonly name: string; readonly path: string } | undefined;
  }[];
  /** None where pages of their own list them. */
  readonly files: readonly SourceFile[];
  readonly pages: readonly FilesPart[];
}

export interface FilesPart {
  /** `alba-one/loft` */
  readonly slug: string;
  readonly title: string;
  readonly path: string;
}

export interface FilesPage {
  readonly title: string;
  readonly files: readonly SourceFile[];
}

/** Empty where the data page lists all files. */
export function partsOfFiles({ bench, find }: Pick<Published, 'bench' | 'find'>): readonly FilesPart[] {
  const placed = (slug: string, title: string): FilesPart => ({ slug, title, path: checksumsPath(slug) });
  return [...dividedFiles(bench).keys()].map((slug) => {
    const [body = '', rig] = slug.split('/');
    return rig === undefined
      ? placed(slug, 'Files of bodies, displays, links, rigs and settings')
      : placed(slug, `Files of sessions of ${find.body(body).name} on ${find.rig(rig).name}`);
  });
}

export function filesPage(site: Published, { slug, title }: FilesPart): FilesPage {
  return { title, files: dividedFiles(site.bench).get(slug) ?? [] };
}

const OTHER_FILES = 'bench';

/** By body and rig of their sessions, and those of no session; empty where one page holds them all. */
const dividedFiles = once((bench: Bench): ReadonlyMap<string, readonly SourceFile[]> => {
  const files = publishedFiles(bench);
  if (bench.sessions.length + files.length <= MOST_LISTED) return new Map();
  const slugs = new Map(
    bench.sessions.flatMap(({ body, rig, file, readingsFile }) =>
      [file, readingsFile].map(({ path }) => [path, `${body}/${rig}`] as const),
    ),
  );
  return Map.groupBy(files, ({ path }) => slugs.get(path) ?? OTHER_FILES);
});

export function dataPage(site: Published): DataPage {
  const { bench, register, find, figure } = site;
  const pages = partsOfFiles(site);
  const isWhole = pages.length === 0;
  const sessions = isWhole ? inBenchOrder(bench, bench.sessions) : [];
  const labels = labelSessions(bench, sessions);
  return {
    sessions: sessions.map(({ id, date }) => ({
      session: namedSession(bench, id, labels.of.get(id)),
      date,
      total: figure(`total/${id}`),
      readings: figure(`readings/${id}`),
    })),
    findings: register.findings,
    counts: register.figures
      .filter(({ kind }) => kind === 'count')
      .map(({ id, label, of: { body }, text }) => ({
        id,
        anchor: countAnchor(id),
        label,
        text,
        body: body === undefined ? undefined : { name: find.body(body).name, path: bodyPath(body) },
      })),
    files: isWhole ? publishedFiles(bench) : [],
    pages,
  };
}
