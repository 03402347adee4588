import { inPractice as practiceOf } from '../../views/in-practice.ts';
import { figuresIn } from '../../views/law-plate.ts';
import { COMMON } from './common.ts';
import { definePart } from './definition.ts';

export const inPractice = definePart({
  name: 'InPractice',
  group: 'bodies',
  shows: 'what the lowest total of a body means: how far someone walks, a ball falls or sound travels meanwhile',
  needs: ['body'],
  properties: { body: { ...COMMON.body, means: 'which body' } },
  example: '<InPractice body="vennick-q4" />',
  failure: {
    written: '<InPractice body="vennick" />',
    says: '1:1  InPractice body  unknown body "vennick"; expected one of dunmere-30, skelby-dome, vennick-q4. Did you mean vennick-q4?',
  },
  whyEmpty: ({ body }, { site }) => (practiceOf(site, body) === undefined ? 'empty-selection' : undefined),
  view: ({ body }, { site }) => {
    const practice = practiceOf(site, body);
    if (practice === undefined) throw new Error(`no session of '${body}' has been recorded`);
    return practice;
  },
  figures: ({ sentence }) => figuresIn(sentence),
});
