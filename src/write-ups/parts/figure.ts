import { definePart } from './definition.ts';
import { z } from 'zod';
import { checkFigure } from './property.ts';
import { comparedByIds, requireFigure } from './selected-figures.ts';

export const figure = definePart({
  name: 'Figure',
  group: 'figures',
  shows: 'one figure in running text, leading to its entry',
  needs: ['id'],
  properties: {
    id: {
      means: 'which figure',
      accepts: '"kind/session", as npm run figures lists it',
      schema: z.string(),
      check: checkFigure,
    },
  },
  prints: 'figures',
  example:
    'The picture arrives <Figure id="total/vennick-uhd25-a" /> after the event, or <Figure id="frames/vennick-uhd25-a" />.',
  failure: {
    written: '<Figure id="total/venick-uhd25-a" />',
    says: '1:1  Figure id  there is no figure "total/venick-uhd25-a". Did you mean total/vennick-uhd25-a, total/vennick-uhd25-b or total/vennick-uhd25-c?',
  },
  asks: ({ id }, asking) => comparedByIds(asking, [id]),
  view: ({ id }, answering) => requireFigure(answering, id),
  figures: (shown) => [shown],
});
