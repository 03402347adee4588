import { COMMON, type PartDefinitions } from './definition.ts';

const QUANTITY = '"100 ms", "half a frame", "0.5 frames", "30 %", "half", "twice", "3"';
const AMONG = '{["total/a", "total/b"]}, or {{ body: …, rig: …, method: …, where: … }}';

/** Parts that mark the words between their tags. */
export const WORD_PARTS: PartDefinitions = {
  Claim: {
    shows: 'the words between its tags, leading to the figure; the build fails when the data do not support them',
    needs: [
      'of',
      ['atLeast', 'atMost', 'exactly', 'sameWithin', 'noLowerBy', 'noHigherBy', 'verdict', 'lowestOf', 'highestOf'],
    ],
    properties: {
      of: { means: 'what the words are about', accepts: '"id of a figure"; with than, "id of a session"' },
      than: {
        means:
          'the session it is compared with: by their ratio where a share or a plain number is asserted, else by their difference',
        accepts: '"id of a session"',
      },
      atLeast: {
        means: 'the whole 95 % interval is at or above this; together with atMost, between the two',
        accepts: QUANTITY,
      },
      atMost: { means: 'the whole interval is at or below this', accepts: QUANTITY },
      exactly: { means: 'the value is this: for counts', accepts: '"3"' },
      sameWithin: {
        means: 'the whole interval of the difference is within this of zero, or of a ratio, within this of one',
        accepts: QUANTITY,
      },
      noLowerBy: { means: 'if it is lower at all, then by less than this', accepts: QUANTITY },
      noHigherBy: { means: 'if it is higher at all, then by less than this', accepts: QUANTITY },
      verdict: {
        means: 'the verdict is this, adjusted for all that the write-up compares',
        accepts: '"slower", "faster", "same" or "not-settled"',
      },
      lowestOf: { means: 'the lowest of these, and told from each of the others', accepts: AMONG },
      highestOf: { means: 'the highest of these, and told from each of the others', accepts: AMONG },
      margin: { ...COMMON.margin, means: `for verdict: ${COMMON.margin.means}` },
    },
    marksWords: true,
    example:
      'Embedding makes the Orrin <Claim of="orrin-uhd24-audio" than="orrin-uhd24-b" atLeast="100 ms">slower by at least 100 ms</Claim>.',
    failure: {
      written:
        'It is <Claim of="orrin-uhd24-audio" than="orrin-uhd24-b" atLeast="150 ms">slower by at least 150 ms</Claim>.',
      says: '1:7  Claim  the data do not support "slower by at least 150 ms" (at least 150 ms): difference/orrin-uhd24-audio/orrin-uhd24-b is 123.3 ± 8.1 ms, 95 % interval 115.2 to 131.3 ms; its interval begins 35 ms too low. Change the sentence to what the data say, or find out why they say it.',
    },
  },
  Quoted: {
    shows: 'the words between its tags, with a number that is meant as it stands: it comes from elsewhere',
    needs: ['from'],
    properties: { from: { means: 'where it comes from', accepts: '"text"' } },
    marksWords: true,
    example: 'Viewers notice late sound from <Quoted from="ITU-R BT.1359-1">125 ms</Quoted> on.',
    failure: {
      written: 'Viewers notice late sound from <Quoted>125 ms</Quoted> on.',
      says: '1:32  Quoted  this part needs the property from. Add it.',
    },
  },
  Setting: {
    shows: 'the words between its tags, with a number that is meant as it stands: somebody chose it',
    needs: [],
    properties: {},
    marksWords: true,
    example: 'The shutter stood at <Setting>2 ms</Setting>.',
    failure: {
      written: 'The shutter stood at <Setting></Setting>.',
      says: '1:22  Setting  there are no words between its tags. Write them: what is to be marked stands inside.',
    },
  },
};
