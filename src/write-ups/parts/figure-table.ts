import { figureRows } from '../../views/figure-rows.ts';
import { COMMON } from './common.ts';
import { definePart } from './definition.ts';
import { comparedByIds, selectedFigures, SELECTION, whySelectionEmpty } from './selected-figures.ts';

export const figureTable = definePart({
  name: 'FigureTable',
  group: 'figures',
  shows: 'a table of figures, by list (ids) or by query: new sessions that match join by themselves',
  needs: [['ids', 'kind'], 'caption'],
  properties: { ...SELECTION, caption: COMMON.caption },
  example:
    '<FigureTable kind="total" body="vennick-q4" rig="balcony" where={{ output: "uhd" }} caption="Vennick Q4 in UHD, from the balcony." />',
  failure: {
    written: '<FigureTable kind="total" where={{ output: "8k" }} caption="In 8K." />',
    says: '1:1  FigureTable where  unknown level "8k" of this setting; expected one of hd, uhd.',
  },
  asks: ({ ids = [] }, asking) => comparedByIds(asking, ids),
  whyEmpty: whySelectionEmpty,
  view: ({ caption, ...selection }, answering) => {
    const { bench, figures, sessions } = selectedFigures(selection, answering);
    return { table: figureRows(bench, figures, sessions), caption };
  },
  figures: ({ table }) => table.rows.map(({ figure }) => figure),
});
