import { choicesOf, type Choice } from '../../register/comparisons/choices.ts';
import { adviseOn } from '../../views/advice.ts';
import { figuresIn } from '../../views/law-plate.ts';
import { BODY_ON_RIG } from './body-on-rig.ts';
import { definePart, type Answering } from './definition.ts';

export const advice = definePart({
  name: 'Advice',
  group: 'bodies',
  shows: 'what to set on a body on a rig: one computed sentence, and what every condition costs over the fastest',
  needs: ['body', 'rig'],
  properties: BODY_ON_RIG,
  example: '<Advice body="skelby-dome" rig="balcony" />',
  failure: {
    written: '<Advice body="skelby" rig="balcony" />',
    says: '1:1  Advice body  unknown body "skelby"; expected one of dunmere-30, skelby-dome, vennick-q4.',
  },
  whyEmpty: (props, answering) => (choiceOf(props, answering) === undefined ? 'empty-comparison' : undefined),
  view: ({ body, rig, caption }, answering) => {
    const { site } = answering;
    const choice = choiceOf({ body, rig }, answering);
    const advised = choice && adviseOn(site, choice);
    if (advised === undefined)
      throw new Error(
        `there are not two sessions of '${body}' on '${rig}' through one chain: there is nothing to choose between`,
      );
    const title = `${site.find.body(body).name} on ${site.find.rig(rig).name}, lowest total first`;
    return { advice: advised, caption: caption ?? title };
  },
  figures: ({ advice: { sentence, rows, aside } }) => [
    ...figuresIn(sentence),
    ...rows.flatMap(({ total, cost }) => [total, cost]),
    ...aside.map(({ total }) => total),
  ],
});

/** Of the chain with the most sessions, where a rig has several. */
function choiceOf(
  { body, rig }: { readonly body: string; readonly rig: string },
  { bench }: Answering,
): Choice | undefined {
  return choicesOf(bench).find((choice) => choice.body === body && choice.rig === rig);
}
