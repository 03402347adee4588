import { COMMON, type PartDefinitions } from './definition.ts';

const OF_BODY = {
  body: { means: 'which body', accepts: '"id of a body"' },
  rig: { means: 'on which rig', accepts: '"id of a rig"' },
  caption: COMMON.title,
} as const;
const LAW = { body: OF_BODY.body, rig: COMMON.rig, method: COMMON.method, where: COMMON.where } as const;

/** Parts that show what all sessions of a body, or of the bench, say together. */
export const BODY_PARTS: PartDefinitions = {
  Effects: {
    shows: 'what each setting of a body changes on a rig, from all its sessions there',
    needs: ['body', 'rig'],
    properties: OF_BODY,
    example: '<Effects body="orrin-v2" rig="balcony" />',
    failure: {
      written: '<Effects body="orrin-v2" rig="workshop" />',
      says: '1:1  Effects  no two sessions match, so there is nothing to compare. Loosen it, or record the sessions first.',
    },
  },
  Advice: {
    shows: 'what to set on a body on a rig: one computed sentence, and what every condition costs over the fastest',
    needs: ['body', 'rig'],
    properties: OF_BODY,
    example: '<Advice body="wexley-duo" rig="balcony" />',
    failure: {
      written: '<Advice body="wexley" rig="balcony" />',
      says: '1:1  Advice body  unknown body "wexley"; expected one of orrin-v2, tamsel-6, wexley-duo.',
    },
  },
  RateLaw: {
    shows:
      'how the latency of a body goes with its frame rate: a statement, a chart and its sessions, once for each configuration that matches',
    needs: ['body'],
    properties: { ...LAW, caption: COMMON.title },
    selects: 'total',
    example: '<RateLaw body="orrin-v2" rig="balcony" where={{ resolution: "uhd", "audio-out": "off" }} />',
    failure: { written: '<RateLaw rig="balcony" />', says: '1:1  RateLaw  this part needs the property body. Add it.' },
  },
  RateLawSentence: {
    shows: 'the same as a statement in running text',
    needs: ['body'],
    properties: LAW,
    selects: 'total',
    example: '<RateLawSentence body="tamsel-6" rig="balcony" where={{ resolution: "uhd", "audio-out": "off" }} />',
    failure: {
      written: '<RateLawSentence body="tamsel-6" where={{ resolution: "4k" }} />',
      says: '1:1  RateLawSentence where  unknown level "4k" of this setting; expected one of hd, uhd.',
    },
  },
  History: {
    shows: 'the sessions of a body by date, what repeats on other days say, and what a change of firmware did',
    needs: ['body'],
    properties: { body: OF_BODY.body },
    example: '<History body="tamsel-6" />',
    failure: {
      written: '<History body="tamsel-7" />',
      says: '1:1  History body  unknown body "tamsel-7"; expected one of orrin-v2, tamsel-6, wexley-duo. Did you mean tamsel-6?',
    },
  },
  ChainBrackets: {
    shows: 'what display, links and body can each take at least and at most of a total',
    needs: [],
    properties: { caption: COMMON.title },
    example: '<ChainBrackets />',
    failure: {
      written: '<ChainBrackets titel="The chain" />',
      says: '1:1  ChainBrackets  this part takes no property "titel"; expected caption.',
    },
  },
};
