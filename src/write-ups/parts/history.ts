import { bodyHistory, figuresOfHistory } from '../../views/body-history.ts';
import { COMMON } from './common.ts';
import { definePart } from './definition.ts';

export const history = definePart({
  name: 'History',
  group: 'bodies',
  shows: 'the sessions of a body by date, what repeats on other days say, and what a change of firmware did',
  needs: ['body'],
  properties: { body: { ...COMMON.body, means: 'which body' } },
  example: '<History body="dunmere-30" />',
  failure: {
    written: '<History body="dunmere-31" />',
    says: '1:1  History body  unknown body "dunmere-31"; expected one of dunmere-30, skelby-dome, vennick-q4. Did you mean dunmere-30?',
  },
  view: ({ body }, { site }) => bodyHistory(site, body),
  figures: figuresOfHistory,
});
