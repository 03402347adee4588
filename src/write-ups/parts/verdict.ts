import { definePart } from './definition.ts';
import { checkTwo, comparedTwo, ofTwo, TWO_SESSIONS } from './two-sessions.ts';

export const verdict = definePart({
  name: 'Verdict',
  group: 'comparisons',
  shows:
    'what that allows to say, in words that change with the data: slower by 18.4 ± 4.6 ms, the same within ± 8.3 ms, too close to call',
  needs: ['of', 'than'],
  properties: TWO_SESSIONS,
  prints: 'figures',
  example: 'With its quiet fan the Skelby is <Verdict of="skelby-uhd50-quiet" than="skelby-uhd50-a" margin="10 ms" />.',
  failure: {
    written: '<Verdict of="skelby-uhd50-quiet" than="skelby-uhd50-a" margin="10" />',
    says: '1:1  Verdict margin  expected a duration, found "10"; write a number and a unit: 14 ms, 1/500 s, 60 s, 60 min.',
  },
  check: checkTwo,
  asks: (props) => [ofTwo(props)],
  view: (props, answering) => comparedTwo(props, answering).verdict,
  figures: (shown) => [shown],
});
