import { definePart } from './definition.ts';

export const setting = definePart({
  name: 'Setting',
  group: 'words',
  shows: 'the words between its tags, with a number that is meant as it stands: somebody chose it',
  needs: [],
  properties: {},
  marksWords: true,
  example: 'The shutter stood at <Setting>2 ms</Setting>.',
  failure: {
    written: 'The shutter stood at <Setting></Setting>.',
    says: '1:22  Setting  there are no words between its tags. Write them: what is to be marked stands inside.',
  },
  view: () => undefined,
  figures: () => [],
});
