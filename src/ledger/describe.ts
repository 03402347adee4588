/** What moved since the last record, for people at a terminal. */
import { describeCauses } from '../model/cause-text.ts';
import type { Cause } from '../model/ledger.ts';
import { describeProblem } from '../model/problem-text.ts';
import { describeCount } from '../register/text.ts';
import { isUnchanged, type Changes } from './compare.ts';

const SHOWN_PER_CAUSE = 10;
const NEW_SHOWN = 5;
const FAULTS_SHOWN = 10;

/**
 * A block to print; empty where nothing changed. What has one cause in common stands under it:
 *
 *     Since the last record: 2 moved, 1 gone, 12 new.
 *
 *       data/sessions/a.csv changed:
 *         total/a  167.6 ± 5.6 ms → 169.9 ± 5.1 ms
 *         mean/a   306.1 ms → 308.2 ms
 *
 * @param recorded after a record, which then need not be asked for
 */
export function describeChanges(changes: Changes, { recorded = false } = {}): string {
  const { moved, gone, added, renames, unchanged } = changes;
  const faults = recorded ? [] : describeFaults(changes);
  if (isUnchanged(changes)) return faults.join('\n');
  const counts = [
    [moved.length, 'moved'],
    [gone.length, 'gone'],
    [added.length, 'new'],
    [renames.length, 'renamed'],
  ] as const;
  const heading = `Since the last record: ${counts
    .filter(([count]) => count > 0)
    .map(([count, word]) => `${describeCount(count)} ${word}`)
    .join(', ')}; ${describeCount(unchanged)} as recorded.`;
  const lines = [
    ...moved.map(({ id, from, to, causes }) => ({ id, causes, says: `${from} → ${to}` })),
    ...gone.map(({ id, from, causes }) => ({ id, causes, says: `${from} → no longer published` })),
  ];
  const blocks = [...Map.groupBy(lines, ({ causes }) => describeCauses(causes))].map(([cause, group]) =>
    [`  ${cause}:`, ...describeGroup(group)].join('\n'),
  );
  const names = renames.map(({ from, to }) => `  ${from} is called ${to} now`);
  const news =
    added.length === 0
      ? []
      : [
          `  new: ${added.slice(0, NEW_SHOWN).join(', ')}${added.length > NEW_SHOWN ? ` and ${describeCount(added.length - NEW_SHOWN)} more` : ''}`,
        ];
  const todo = recorded ? [] : ['  To record this state: npm run record -- --reason "…" --date YYYY-MM-DD'];
  return [...faults, heading, ...names, ...blocks, ...news, ...todo].join('\n\n');
}

/** Where the ledger does not hold together: a build warns of it, a strict one refuses. */
function describeFaults({ faults }: Changes): readonly string[] {
  if (faults.length === 0) return [];
  const more = faults.length - FAULTS_SHOWN;
  return [
    [
      'The ledger cannot be relied on; a strict build refuses it:',
      ...faults.slice(0, FAULTS_SHOWN).map((fault) => `  ${describeProblem(fault)}`),
      ...(more > 0 ? [`  and ${describeCount(more)} more`] : []),
    ].join('\n'),
  ];
}

function describeGroup(
  group: readonly { readonly id: string; readonly causes: readonly Cause[]; readonly says: string }[],
): readonly string[] {
  const shown = group.slice(0, SHOWN_PER_CAUSE);
  const width = Math.max(...shown.map(({ id }) => id.length));
  const more = group.length - shown.length;
  return [
    ...shown.map(({ id, says }) => `    ${id.padEnd(width)}  ${says}`),
    ...(more > 0 ? [`    and ${describeCount(more)} more`] : []),
  ];
}
