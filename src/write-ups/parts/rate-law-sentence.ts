import { figuresIn } from '../../views/law-plate.ts';
import { describeLaw } from '../../views/rate-law-words.ts';
import { definePart } from './definition.ts';
import { LAW, lawsOf, whyNoLaw } from './laws-of-body.ts';

export const rateLawSentence = definePart({
  name: 'RateLawSentence',
  group: 'bodies',
  shows: 'the same as a statement in running text',
  needs: ['body'],
  properties: LAW,
  prints: 'figures',
  example: '<RateLawSentence body="dunmere-30" rig="balcony" where={{ output: "uhd", stabiliser: "off" }} />',
  failure: {
    written: '<RateLawSentence body="dunmere-30" where={{ output: "4k" }} />',
    says: '1:1  RateLawSentence where  unknown level "4k" of this setting; expected one of hd, uhd.',
  },
  whyEmpty: whyNoLaw,
  view: (query, answering) => {
    const { figure, find } = answering.site;
    return lawsOf(query, answering).map((law) => ({
      subject: law.subject,
      sentence: describeLaw(law, figure, find).says,
    }));
  },
  figures: (laws) => laws.flatMap(({ sentence }) => figuresIn(sentence)),
});
