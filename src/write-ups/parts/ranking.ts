import { rankedRows } from '../../views/figure-rows.ts';
import { COMMON } from './common.ts';
import { definePart } from './definition.ts';
import { RANKED, rankedFigures, whySelectionEmpty } from './selected-figures.ts';

export const ranking = definePart({
  name: 'Ranking',
  group: 'figures',
  shows: 'sessions from the lowest figure up, with those that cannot be told from the lowest',
  needs: [['ids', 'kind'], 'caption'],
  properties: { ...RANKED, caption: COMMON.caption },
  example: '<Ranking kind="total" rig="pit" caption="Down in the pit, lowest total first." />',
  failure: {
    written: '<Ranking kind="median" rig="pit" caption="Medians." />',
    says: '1:1  Ranking kind  "median" is not a choice here; expected one of total, frames.',
  },
  whyEmpty: whySelectionEmpty,
  view: ({ caption, ...selection }, answering) => ({ table: rankedRows(rankedFigures(selection, answering)), caption }),
  figures: ({ table }) => table.rows.map(({ figure }) => figure),
});
