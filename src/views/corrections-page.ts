/** All that the corrections page says, and what stands of it under a report. */
import { correctionsOf, entriesOf, firstDay, renamedIds } from '../ledger/history.ts';
import type { LedgerEntry, Move } from '../model/ledger.ts';
import { PATHS } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import { describeCount } from '../register/text.ts';
import { describeDay } from './day.ts';
import { moveGroups, type MoveGroup } from './moves.ts';
import { kindLabel, nameStatement } from './statement-name.ts';

export interface CorrectionView {
  readonly id: string;
  readonly day: string;
  readonly reason: string;
  readonly causes: readonly string[];
  readonly analysis: string;
  readonly groups: readonly MoveGroup[];
  /** Of what counts everything or is a limit from everything, and moved because something was added. */
  readonly follows: string | undefined;
  /** What is called otherwise since. */
  readonly renamed: readonly { readonly was: string; readonly name: string; readonly path: string | undefined }[];
  readonly gone: readonly { readonly id: string; readonly name: string; readonly from: string }[];
  readonly added: { readonly total: string; readonly kinds: readonly string[] } | undefined;
}

/** What has an address of its own: the rest is renamed with it. */
const NAMED = new Set(['body', 'display', 'link', 'rig', 'session', 'report', 'method']);

/** Newest first; without records by which nothing moved, went or came. */
export function correctionsPage(site: Published): readonly CorrectionView[] {
  return entriesOf(site.bench.ledger)
    .filter(
      ({ moved, gone, added, renamed = [] }) =>
        moved.length + gone.length + renamed.length + Object.keys(added).length > 0,
    )
    .map((entry) => describeCorrection(entry, site));
}

function describeCorrection(entry: LedgerEntry, site: Published): CorrectionView {
  const { id, date, reason, causes, analysis, moved, gone, added, renamed = [] } = entry;
  const day = describeDay(date);
  const following = moved.filter(({ quiet }) => quiet === 'follows');
  const counts = Object.values(added);
  const total = counts.reduce((sum, count) => sum + count, 0);
  return {
    id,
    day,
    reason,
    causes,
    analysis,
    groups: moveGroups(
      moved.filter(({ quiet }) => quiet !== 'follows'),
      site,
    ),
    follows:
      following.length === 0
        ? undefined
        : `Besides, ${describeKinds(following)} moved because something was added; their entries keep what they said before.`,
    renamed: renamed
      .filter(({ id: of }) => NAMED.has(of.split('/')[0] ?? ''))
      .map(({ id: of, was }) => ({
        was: was.replace(/^[^/]*\//, ''),
        ...nameStatement(renamedIds(site.bench.ledger).get(was) ?? of, site),
      })),
    gone: gone.map((each) => ({ ...each, name: nameStatement(each.id, site).name })),
    added:
      total === 0
        ? undefined
        : {
            total: describeCount(total),
            kinds: Object.entries(added).map(([kind, count]) => `${describeCount(count)} of “${kindLabel(kind)}”`),
          },
  };
}

/** `12 of “Count” and 33 of “Lowest and highest possible latency”`. */
function describeKinds(moves: readonly Move[]): string {
  const kinds = Map.groupBy(moves, ({ id }) => id.split('/')[0] ?? id);
  return [...kinds].map(([kind, of]) => `${describeCount(of.length)} of “${kindLabel(kind)}”`).join(' and ');
}

/** What changed of a report after it came out, once for each record. */
export interface ReportChange {
  readonly id: string;
  readonly day: string;
  readonly reason: string;
  /** Where the record is told. */
  readonly path: string;
  readonly moved: readonly MoveGroup[];
}

export function reportChanges(
  site: Published,
  shown: ReadonlySet<string>,
  report: { readonly id: string; readonly date: string },
): readonly ReportChange[] {
  const { ledger } = site.bench;
  return correctionsOf(ledger, shown, firstDay(ledger, report)).map(({ entry: { id, date, reason }, moved }) => ({
    id,
    day: describeDay(date),
    reason,
    path: `${PATHS.corrections}#${id}`,
    moved: moveGroups(moved, site),
  }));
}
