import { z } from 'zod';
import { figureRows } from '../../views/figure-rows.ts';
import { COMMON } from './common.ts';
import { definePart } from './definition.ts';
import { checkChoice } from './property.ts';
import { comparedByIds, selectedFigures, SELECTION, whySelectionEmpty } from './selected-figures.ts';

export const figureChart = definePart({
  name: 'FigureChart',
  group: 'figures',
  shows: 'the same figures drawn with their intervals, with the table behind',
  needs: [['ids', 'kind'], 'caption'],
  properties: {
    ...SELECTION,
    caption: COMMON.caption,
    bands: {
      means:
        'dashed lines where sound ahead of the picture is noticed and no longer acceptable (ITU-R BT.1359-1, EBU R 37)',
      accepts: '"sound"',
      schema: z.literal('sound'),
      check: checkChoice('bad-choice', () => ['sound']),
    },
  },
  example:
    '<FigureChart ids={["total/skelby-uhd60-a", "total/dunmere-uhd60-a"]} caption="Two bodies in UHD at 59.94." />',
  failure: {
    written: '<FigureChart caption="Two bodies in UHD at 59.94." />',
    says: '1:1  FigureChart  this part needs the property ids or kind. Add it.',
  },
  asks: ({ ids = [] }, asking) => comparedByIds(asking, ids),
  whyEmpty: whySelectionEmpty,
  view: ({ caption, bands, ...selection }, answering) => {
    const { bench, figures, sessions } = selectedFigures(selection, answering);
    return { plate: figureRows(bench, figures, sessions), caption, bands };
  },
  figures: ({ plate }) => plate.rows.map(({ figure }) => figure),
});
