import { definePart } from './definition.ts';
import { askedPairs, comparedPairs, figuresCompared, SEVERAL_PAIRS, whyNoPairs } from './several-pairs.ts';

export const differenceChart = definePart({
  name: 'DifferenceChart',
  group: 'comparisons',
  shows: 'the same comparisons drawn about zero, with the table behind',
  needs: [['pairs', 'setting', 'where'], 'caption'],
  properties: SEVERAL_PAIRS,
  example:
    '<DifferenceChart where={{ output: "uhd", rate: "59.94" }} rig="pit" caption="Bodies against each other in the pit." />',
  failure: {
    written: '<DifferenceChart pairs={[["skelby-hd100-a"]]} caption="Twice the rate." />',
    says: '1:1  DifferenceChart pairs  expected pairs of sessions, such as {[["a", "b"], ["c", "d"]]}, found [["skelby-hd100-a"]].',
  },
  asks: askedPairs,
  whyEmpty: whyNoPairs,
  view: ({ caption, ...asked }, answering) => ({ compared: comparedPairs(asked, answering), caption }),
  figures: ({ compared }) => figuresCompared(compared),
});
