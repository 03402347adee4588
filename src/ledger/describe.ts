/** What moved since the last record, for people at a terminal. */
import { describeCauses } from '../model/cause-text.ts';
import type { Cause } from '../model/ledger.ts';
import { describeCount } from '../register/text.ts';
import { isUnchanged, type Changes } from './compare.ts';

const SHOWN_PER_CAUSE = 10;
const NEW_SHOWN = 5;

/**
 * A block to print; empty where nothing changed. What has one cause in common stands under it:
 *
 *     Since the last record: 2 moved, 1 gone, 12 new.
 *
 *       data/sessions/a.csv changed:
 *         total/a  307.6 ± 7.1 ms → 309.8 ± 6.2 ms
 *         mean/a   306.1 ms → 308.2 ms
 *
 * @param recorded after a record, which then need not be asked for
 */
export function describeChanges(changes: Changes, { recorded = false } = {}): string {
  if (isUnchanged(changes)) return '';
  const { moved, gone, added, unchanged } = changes;
  const counts = [
    [moved.length, 'moved'],
    [gone.length, 'gone'],
    [added.length, 'new'],
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
  const news =
    added.length === 0
      ? []
      : [
          `  new: ${added.slice(0, NEW_SHOWN).join(', ')}${added.length > NEW_SHOWN ? ` and ${describeCount(added.length - NEW_SHOWN)} more` : ''}`,
        ];
  const todo = recorded ? [] : ['  To record this state: npm run record -- --reason "…" --date YYYY-MM-DD'];
  return [heading, ...blocks, ...news, ...todo].join('\n\n');
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
