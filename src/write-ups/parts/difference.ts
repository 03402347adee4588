import { definePart } from './definition.ts';
import { checkTwo, comparedTwo, ofTwo, TWO_SESSIONS } from './two-sessions.ts';

export const difference = definePart({
  name: 'Difference',
  group: 'comparisons',
  shows:
    'how much later the one session is than the other, in running text: 45.9 ± 6.8 ms; what the rig adds to both cancels',
  needs: ['of', 'than'],
  properties: TWO_SESSIONS,
  prints: 'figures',
  example: 'Genlock costs <Difference of="vennick-uhd25-genlock" than="vennick-uhd25-b" />.',
  failure: {
    written: '<Difference of="vennick-uhd25-genlock" />',
    says: '1:1  Difference  this part needs the property than. Add it.',
  },
  check: checkTwo,
  asks: (props) => [ofTwo(props)],
  view: (props, answering) => comparedTwo(props, answering).difference,
  figures: (shown) => [shown],
});
