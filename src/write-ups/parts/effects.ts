import { effectRows } from '../../views/effect-rows.ts';
import { BODY_ON_RIG } from './body-on-rig.ts';
import { definePart } from './definition.ts';

export const effects = definePart({
  name: 'Effects',
  group: 'bodies',
  shows: 'what each setting of a body changes on a rig, from all its sessions there',
  needs: ['body', 'rig'],
  properties: BODY_ON_RIG,
  example: '<Effects body="vennick-q4" rig="balcony" />',
  failure: {
    written: '<Effects body="vennick-q4" rig="workshop" />',
    says: '1:1  Effects  no two sessions match, so there is nothing to compare. Loosen it, or record the sessions first.',
  },
  whyEmpty: ({ body, rig }, { site }) =>
    effectRows(site, body, rig).effects.length === 0 ? 'empty-comparison' : undefined,
  view: ({ body, rig, caption }, { site }) => {
    const { effects: ofOne, interactions } = effectRows(site, body, rig);
    if (ofOne.length === 0)
      throw new Error(
        `the sessions of '${body}' on '${rig}' say nothing of a setting: at least two that differ in one are needed`,
      );
    const title = `${site.find.body(body).name} on ${site.find.rig(rig).name}: effects from all sessions`;
    return { rows: [...ofOne, ...interactions], caption: caption ?? title };
  },
  figures: ({ rows }) => rows.flatMap(({ effect, verdict }) => [effect, verdict]),
});
