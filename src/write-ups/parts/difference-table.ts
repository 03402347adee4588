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
    '<DifferenceTable setting="audio-out" body="orrin-v2" rig="balcony" caption="What embedded audio costs on the Orrin." />',
  failure: {
    written: '<DifferenceTable setting="audio" caption="What embedded audio costs." />',
    says: '1:1  DifferenceTable setting  unknown setting "audio"; expected one of resolution, rate, bit-depth, chroma, audio-out, recording.',
  },
  asks: askedPairs,
  whyEmpty: whyNoPairs,
  view: ({ caption, ...asked }, answering) => ({ compared: comparedPairs(asked, answering), caption }),
  figures: ({ compared }) => figuresCompared(compared),
});
