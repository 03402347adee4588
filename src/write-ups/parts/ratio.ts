import { definePart } from './definition.ts';
import { checkTwo, comparedTwo, ofTwo, TWO_SESSIONS } from './two-sessions.ts';

export const ratio = definePart({
  name: 'Ratio',
  group: 'comparisons',
  shows: 'the same as a ratio: 1.74 (1.65 to 1.84)',
  needs: ['of', 'than'],
  properties: TWO_SESSIONS,
  prints: 'figures',
  example: 'With genlock it takes <Ratio of="vennick-uhd25-genlock" than="vennick-uhd25-b" /> of what it was.',
  failure: {
    written: '<Ratio of="vennick-uhd25-b" than="vennick-uhd25-b" />',
    says: '1:1  Ratio than  "vennick-uhd25-b" is compared with itself. Name two sessions.',
  },
  check: checkTwo,
  asks: (props) => [ofTwo(props)],
  view: (props, answering) => {
    const shown = comparedTwo(props, answering).ratio;
    if (shown === undefined)
      throw new Error(
        `there is no ratio of '${props.of}' and '${props.than}': the one is zero, or neither has any scatter`,
      );
    return shown;
  },
  figures: (shown) => [shown],
});
