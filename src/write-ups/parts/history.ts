import { bodyHistory, figuresOfHistory } from '../../views/body-history.ts';
import { COMMON } from './common.ts';
import { definePart } from './definition.ts';

export const history = definePart({
  name: 'History',
  group: 'bodies',
  shows: 'the sessions of a body by date, what repeats on other days say, and what a change of firmware did',
  needs: ['body'],
  properties: { body: { ...COMMON.body, means: 'which body' } },
  example: '<History body="tamsel-6" />',
  failure: {
    written: '<History body="tamsel-7" />',
    says: '1:1  History body  unknown body "tamsel-7"; expected one of orrin-v2, tamsel-6, wexley-duo. Did you mean tamsel-6?',
  },
  view: ({ body }, { site }) => bodyHistory(site, body),
  figures: figuresOfHistory,
});
