import { definePart } from './definition.ts';
import { checkTwo, comparedTwo, ofTwo, TWO_SESSIONS } from './two-sessions.ts';

export const verdict = definePart({
  name: 'Verdict',
  group: 'comparisons',
  shows:
    'what that allows to say, in words that change with the data: slower by 52.8 ± 5.3 ms, the same within ± 8.3 ms, not settled by these data',
  needs: ['of', 'than'],
  properties: TWO_SESSIONS,
  prints: 'figures',
  example: 'With embedded audio the Wexley is <Verdict of="wexley-hd60-audio" than="wexley-hd60-a" margin="10 ms" />.',
  failure: {
    written: '<Verdict of="wexley-hd60-audio" than="wexley-hd60-a" margin="10" />',
    says: '1:1  Verdict margin  expected a duration, found "10"; write a number and a unit: 14 ms, 1/500 s, 60 s, 60 min.',
  },
  check: checkTwo,
  asks: (props) => [ofTwo(props)],
  view: (props, answering) => comparedTwo(props, answering).verdict,
  figures: (shown) => [shown],
});
