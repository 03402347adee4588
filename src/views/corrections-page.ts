/** What the page of corrections prints, and what stands of them under a report. */
import { correctionsOf } from '../ledger/history.ts';
import { PATHS } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import { describeCount } from '../register/text.ts';
import { describeDay } from './day.ts';
import { moveGroups, type MoveGroup } from './moves.ts';
import { kindLabel, nameStatement } from './statement-name.ts';

export interface CorrectionsEntry {
  readonly id: string;
  /** `11 April 2026`. */
  readonly day: string;
  readonly reason: string;
  readonly analysis: string;
  readonly causes: readonly string[];
  readonly moved: readonly MoveGroup[];
  readonly gone: readonly { readonly name: string; readonly from: string }[];
  readonly added: {
    readonly count: string;
    readonly kinds: readonly { readonly kind: string; readonly count: string }[];
  };
}

export interface CorrectionsPage {
  /** Latest first. */
  readonly entries: readonly CorrectionsEntry[];
}

export function correctionsPage(site: Published): CorrectionsPage {
  return {
    entries: (site.bench.ledger?.entries ?? []).map(({ id, date, reason, analysis, causes, moved, gone, added }) => ({
      id,
      day: describeDay(date),
      reason,
      analysis,
      causes,
      moved: moveGroups(moved, site),
      gone: gone.map(({ id: goneId, from }) => ({ name: nameStatement(goneId, site).name, from })),
      added: {
        count: describeCount(Object.values(added).reduce((sum, count) => sum + count, 0)),
        kinds: Object.entries(added).map(([kind, count]) => ({ kind: kindLabel(kind), count: describeCount(count) })),
      },
    })),
  };
}

/** What changed of a report after it came out, once for each record. */
export interface ReportChange {
  readonly day: string;
  readonly reason: string;
  /** Where the record is told. */
  readonly path: string;
  readonly moved: readonly MoveGroup[];
}

export function reportChanges(site: Published, shown: ReadonlySet<string>, since: string): readonly ReportChange[] {
  return correctionsOf(site.bench.ledger, shown, since).map(({ entry: { id, date, reason }, moved }) => ({
    day: describeDay(date),
    reason,
    path: `${PATHS.corrections}#${id}`,
    moved: moveGroups(moved, site),
  }));
}
