/** What the data page prints. */
import type { SourceFile } from '../model/bench.ts';
import { labelSessions } from '../register/labels.ts';
import { bodyPath, countAnchor } from '../register/paths.ts';
import { publishedFiles } from '../register/published-files.ts';
import type { Published } from '../register/published.ts';
import type { Figure, Finding } from '../register/register.ts';
import { inBenchOrder } from '../register/select.ts';
import { namedSession, type NamedSession } from './named-session.ts';

export interface DataPage {
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
  readonly files: readonly SourceFile[];
}

export function dataPage({ bench, register, find, figure }: Published): DataPage {
  const sessions = inBenchOrder(bench, bench.sessions);
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
    files: publishedFiles(bench),
  };
}
