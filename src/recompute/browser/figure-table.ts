/** Published beside recomputed beside changed, a row for each figure. */
import type { Figure } from '../../register/register.ts';
import { compareFigures, type FigureComparison } from '../compare-figures.ts';
import { describeMove, exactly } from '../describe-comparison.ts';
import { element } from '../../scripts/dom.ts';

export interface TableInput {
  readonly caption: string;
  readonly published: readonly Figure[];
  readonly recomputed: readonly Figure[];
  /** After what the reader changed; undefined where nothing is. */
  readonly changed: readonly Figure[] | undefined;
  /** Whether to leave out what is identical and did not move, but for one figure. */
  readonly onlyMoved: boolean;
  /** Id of a figure that is shown in any case, first. */
  readonly askedFor: string | undefined;
}

const HEADS = ['Figure', 'Published', 'Recomputed here'];
const CHANGED = 'With your changes';

export function figureTable({ caption, published, recomputed, changed, onlyMoved, askedFor }: TableInput): HTMLElement {
  const compared = compareFigures(published, recomputed);
  const after = new Map(changed?.map((figure) => [figure.id, figure]));
  const rows = compared
    .map((each) => ({ ...each, now: after.get(each.id) }))
    .filter(
      ({ id, differing, recomputed: own, now }) =>
        !onlyMoved || id === askedFor || differing.length > 0 || (changed !== undefined && own?.text !== now?.text),
    )
    .sort((a, b) => Number(b.id === askedFor) - Number(a.id === askedFor));
  const heads = changed === undefined ? HEADS : [...HEADS, CHANGED];
  return element(
    'div',
    { class: 'table' },
    element(
      'table',
      { class: 'recomputed', 'data-columns': String(heads.length) },
      element('caption', {}, caption),
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          heads.map((head, at) => element('th', { scope: 'col', class: at > 0 ? 'number' : '' }, head)),
        ),
      ),
      element(
        'tbody',
        {},
        rows.map((row) => figureRow(row, changed !== undefined)),
      ),
    ),
  );
}

function figureRow(
  { id, published, recomputed, differing, now }: FigureComparison & { readonly now: Figure | undefined },
  isChanged: boolean,
): HTMLElement {
  const named = published ?? recomputed;
  const same = published === undefined ? 'not published' : differing.length === 0 ? 'identical' : 'differs';
  return element(
    'tr',
    { 'data-of-figure': id, 'data-same': same },
    element('th', { scope: 'row' }, named?.label ?? id, words(element('code', {}, id))),
    element('td', { class: 'number', 'data-label': HEADS[1] ?? '' }, published?.text ?? '', words(exactly(published))),
    element(
      'td',
      { class: 'number', 'data-label': HEADS[2] ?? '' },
      recomputed?.text ?? '',
      words(exactly(recomputed)),
      words(same),
    ),
    isChanged
      ? element(
          'td',
          { class: 'number', 'data-label': CHANGED },
          now?.text ?? 'no longer there',
          words(exactly(now)),
          words(describeMove(recomputed, now)),
        )
      : undefined,
  );
}

function words(content: string | Node): HTMLElement | undefined {
  return content === '' ? undefined : element('span', { class: 'words' }, content);
}
