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
    'At 23.976 the slowest is the <Highest ids={["total/orrin-uhd24-b", "total/tamsel-uhd24-a", "total/wexley-uhd24-a"]} />.',
  failure: {
    written: '<Highest ids={["total/orrin-uhd24-b", "total/orrin-uhd24-d"]} />',
    says: '1:1  Highest ids  there is no figure "total/orrin-uhd24-d". Did you mean total/orrin-uhd24-a, total/orrin-uhd24-b or total/orrin-uhd24-c?',
  },
  whyEmpty: whySelectionEmpty,
  view: (selection, answering) => extremeOf(selection, answering, 'highest'),
  figures: (named) => named.map(({ figure }) => figure),
});
