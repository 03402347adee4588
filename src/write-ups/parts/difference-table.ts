import { definePart } from './definition.ts';
import { askedPairs, comparedPairs, figuresCompared, SEVERAL_PAIRS, whyNoPairs } from './several-pairs.ts';

export const differenceTable = definePart({
  name: 'DifferenceTable',
  group: 'comparisons',
  shows:
    'a table of differences, ratios and verdicts: by list (pairs), for every pair that differs in one setting only, or for every two bodies where something was set',
  needs: [['pairs', 'setting', 'where'], 'caption'],
  properties: SEVERAL_PAIRS,
  example:
    '<DifferenceTable setting="sync" body="vennick-q4" rig="balcony" caption="What genlock costs on the Vennick." />',
  failure: {
    written: '<DifferenceTable setting="synk" caption="What genlock costs." />',
    says: '1:1  DifferenceTable setting  unknown setting "synk"; expected one of output, rate, stabiliser, noise-reduction, assist, fan, sync. Did you mean sync?',
  },
  asks: askedPairs,
  whyEmpty: whyNoPairs,
  view: ({ caption, ...asked }, answering) => ({ compared: comparedPairs(asked, answering), caption }),
  figures: ({ compared }) => figuresCompared(compared),
});
