/** What the pages that list reports, bodies and rigs print. */
import type { Bench } from '../model/bench.ts';
import { reportPath, rigPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';

export interface ReportLine {
  readonly title: string;
  readonly summary: string;
  readonly date: string;
  readonly path: string;
}

/** Newest first. */
export function reportLines({ reports }: Pick<Bench, 'reports'>): readonly ReportLine[] {
  return reports.map(({ id, title, summary, date }) => ({ title, summary, date, path: reportPath(id) }));
}

export interface RigLine {
  readonly name: string;
  readonly path: string;
  /** Timer, instrument and display. */
  readonly parts: string;
}

export function rigLines({ bench, find }: Pick<Published, 'bench' | 'find'>): readonly RigLine[] {
  return bench.rigs.map(({ id, name, sourceTimer, instrument, display }) => ({
    name,
    path: rigPath(id),
    parts: [sourceTimer?.name, instrument?.name, find.display(display).name].filter(Boolean).join('; '),
  }));
}
