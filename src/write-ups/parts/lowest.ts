import { definePart } from './definition.ts';
import { extremeOf } from './extreme.ts';
import { RANKED, whySelectionEmpty } from './selected-figures.ts';

export const lowest = definePart({
  name: 'Lowest',
  group: 'figures',
  shows: 'the name of the session with the lowest figure, or of all that cannot be told from it, in running text',
  needs: [['ids', 'kind']],
  properties: RANKED,
  prints: 'names',
  example:
    'In UHD at 59.94 the fastest is the <Lowest kind="total" rig="balcony" where={{ output: "uhd", rate: "59.94", sync: "free" }} />.',
  failure: {
    written: '<Lowest kind="total" rig="attic" />',
    says: '1:1  Lowest rig  unknown rig "attic"; expected one of balcony, pit, workshop.',
  },
  whyEmpty: whySelectionEmpty,
  view: (selection, answering) => extremeOf(selection, answering, 'lowest'),
  figures: (named) => named.map(({ figure }) => figure),
});
