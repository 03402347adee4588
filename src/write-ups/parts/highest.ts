import { definePart } from './definition.ts';
import { extremeOf } from './extreme.ts';
import { RANKED, whySelectionEmpty } from './selected-figures.ts';

export const highest = definePart({
  name: 'Highest',
  group: 'figures',
  shows: 'the same at the other end',
  needs: [['ids', 'kind']],
  properties: RANKED,
  prints: 'names',
  example:
    'At 25 the slowest is the <Highest ids={["total/vennick-uhd25-b", "total/dunmere-uhd25-a", "total/skelby-uhd25-a"]} />.',
  failure: {
    written: '<Highest ids={["total/vennick-uhd25-b", "total/vennick-uhd25-d"]} />',
    says: '1:1  Highest ids  there is no figure "total/vennick-uhd25-d". Did you mean total/vennick-uhd25-a, total/vennick-uhd25-b or total/vennick-uhd25-c?',
  },
  whyEmpty: whySelectionEmpty,
  view: (selection, answering) => extremeOf(selection, answering, 'highest'),
  figures: (named) => named.map(({ figure }) => figure),
});
