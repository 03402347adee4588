import { COMMON, type PartDefinitions } from './definition.ts';

const TWO = { of: COMMON.of, than: COMMON.than, margin: COMMON.margin } as const;
const SEVERAL = {
  pairs: { means: 'pairs of sessions, the first less the second', accepts: '{[["a", "b"], ["c", "d"]]}' },
  setting: { means: 'pairs of sessions that differ in this setting only, by query', accepts: '"id of a setting"' },
  body: COMMON.body,
  rig: COMMON.rig,
  where: {
    means: 'only where this was set; without setting, the bodies measured there are compared',
    accepts: '{{ setting: "level" }}',
  },
  margin: COMMON.margin,
  caption: COMMON.caption,
} as const;

/** Parts that set sessions against each other. */
export const COMPARISON_PARTS: PartDefinitions = {
  Difference: {
    shows:
      'how much later the one session is than the other, in running text: 52.8 ± 5.3 ms; what the rig adds to both falls out',
    needs: ['of', 'than'],
    properties: TWO,
    example: 'Embedding costs <Difference of="orrin-uhd24-audio" than="orrin-uhd24-b" />.',
    failure: {
      written: '<Difference of="orrin-uhd24-audio" />',
      says: '1:1  Difference  this part needs the property than. Add it.',
    },
  },
  Ratio: {
    shows: 'the same as a ratio: 1.74 (1.65 to 1.84)',
    needs: ['of', 'than'],
    properties: TWO,
    example: 'That is <Ratio of="orrin-uhd24-audio" than="orrin-uhd24-b" /> of what it was.',
    failure: {
      written: '<Ratio of="orrin-uhd24-b" than="orrin-uhd24-b" />',
      says: '1:1  Ratio than  "orrin-uhd24-b" is compared with itself. Name two sessions.',
    },
  },
  Verdict: {
    shows:
      'what that allows to say, in words that change with the data: slower by 52.8 ± 5.3 ms, the same within ± 8.3 ms, not settled by these data',
    needs: ['of', 'than'],
    properties: TWO,
    example:
      'With embedded audio the Wexley is <Verdict of="wexley-hd60-audio" than="wexley-hd60-a" margin="10 ms" />.',
    failure: {
      written: '<Verdict of="wexley-hd60-audio" than="wexley-hd60-a" margin="10" />',
      says: '1:1  Verdict margin  expected a duration, found "10"; write a number and a unit: 14 ms, 1/500 s, 60 s, 60 min.',
    },
  },
  DifferenceTable: {
    shows:
      'a table of differences, ratios and verdicts: by list (pairs), for every pair that differs in one setting only, or for every two bodies where something was set',
    needs: [['pairs', 'setting', 'where'], 'caption'],
    properties: SEVERAL,
    example:
      '<DifferenceTable setting="audio-out" body="orrin-v2" rig="balcony" caption="What embedded audio costs on the Orrin." />',
    failure: {
      written: '<DifferenceTable setting="audio" caption="What embedded audio costs." />',
      says: '1:1  DifferenceTable setting  unknown setting "audio"; expected one of resolution, rate, bit-depth, chroma, audio-out, recording.',
    },
  },
  DifferenceChart: {
    shows: 'the same comparisons drawn about zero, with the table behind',
    needs: [['pairs', 'setting', 'where'], 'caption'],
    properties: SEVERAL,
    example:
      '<DifferenceChart where={{ resolution: "uhd", rate: "59.94" }} rig="pit" caption="Bodies against each other in the pit." />',
    failure: {
      written: '<DifferenceChart pairs={[["wexley-hd120-a"]]} caption="Twice the rate." />',
      says: '1:1  DifferenceChart pairs  expected pairs of sessions, such as {[["a", "b"], ["c", "d"]]}, found [["wexley-hd120-a"]].',
    },
  },
};
