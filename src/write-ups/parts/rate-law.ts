import { figuresOfPlate, lawPlate } from '../../views/law-plate.ts';
import { COMMON } from './common.ts';
import { definePart } from './definition.ts';
import { LAW, lawsOf, whyNoLaw } from './laws-of-body.ts';

export const rateLaw = definePart({
  name: 'RateLaw',
  group: 'bodies',
  shows:
    'how the latency of a body goes with its frame rate: a statement, a chart and its sessions, once for each configuration that matches',
  needs: ['body'],
  properties: { ...LAW, caption: COMMON.title },
  example: '<RateLaw body="vennick-q4" rig="balcony" where={{ output: "uhd", sync: "free" }} />',
  failure: { written: '<RateLaw rig="balcony" />', says: '1:1  RateLaw  this part needs the property body. Add it.' },
  whyEmpty: ({ caption: _, ...query }, answering) => whyNoLaw(query, answering),
  view: ({ caption, ...query }, answering) => {
    const { site } = answering;
    const laws = lawsOf(query, answering);
    const { name } = site.find.body(query.body);
    const several = laws.length > 1;
    return laws.map((law) => {
      const computed = `Total latency of ${name} against frame interval${several && law.subject !== name ? `: ${law.subject}` : ''}`;
      return {
        plate: lawPlate(site, law),
        caption: caption === undefined ? computed : several ? `${caption} ${law.subject}.` : caption,
      };
    });
  },
  figures: (plates) => plates.flatMap(({ plate }) => figuresOfPlate(plate)),
});
