import { z } from 'zod';
import { definePart } from './definition.ts';

export const quoted = definePart({
  name: 'Quoted',
  group: 'words',
  shows: 'the words between its tags, with a number that is meant as it stands: it comes from elsewhere',
  needs: ['from'],
  properties: { from: { means: 'where it comes from', accepts: '"text"', schema: z.string().regex(/\S/) } },
  marksWords: true,
  example: 'Viewers notice late sound from <Quoted from="ITU-R BT.1359-1">125 ms</Quoted> on.',
  failure: {
    written: 'Viewers notice late sound from <Quoted>125 ms</Quoted> on.',
    says: '1:32  Quoted  this part needs the property from. Add it.',
  },
  view: ({ from }) => ({ from }),
  figures: () => [],
});
