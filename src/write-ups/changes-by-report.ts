import type { Published } from '../register/published.ts';
import { describeCount } from '../register/text.ts';
import type { Changes } from '../ledger/compare.ts';
import { answeringAll } from './answering.ts';
import { statementsShown } from './statements-shown.ts';

/**
 * Which reports what moved since the last record touches, a line each; empty where it touches none:
 *
 *     In content/reports/stage-screen.mdx: 3 moved, 12 new.
 */
export function describeByReport({ moved, gone, added }: Changes, site: Published): string {
  const sorts = [
    { word: 'moved', ids: moved.map(({ id }) => id) },
    { word: 'gone', ids: gone.map(({ id }) => id) },
    { word: 'new', ids: added },
  ];
  return answeringAll(site)
    .filter(({ kind }) => kind === 'report')
    .flatMap(({ writeUp, answering }) => {
      const shown = statementsShown(writeUp, answering);
      const counts = sorts
        .map(({ word, ids }) => ({ word, count: ids.filter((id) => shown.has(id)).length }))
        .filter(({ count }) => count > 0)
        .map(({ word, count }) => `${describeCount(count)} ${word}`);
      return counts.length > 0 ? [`In ${writeUp.file.path}: ${counts.join(', ')}.`] : [];
    })
    .join('\n');
}
