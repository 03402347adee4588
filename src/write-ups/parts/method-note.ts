import { methodPath } from '../../register/paths.ts';
import { COMMON } from './common.ts';
import { definePart } from './definition.ts';

export const methodNote = definePart({
  name: 'MethodNote',
  group: 'figures',
  shows: 'how such readings are taken, with the way to the whole note',
  needs: ['of'],
  properties: { of: { ...COMMON.method, means: 'which way of reading' } },
  example: '<MethodNote of="two-timers" />',
  failure: {
    written: '<MethodNote of="two-timer" />',
    says: '1:1  MethodNote of  unknown method "two-timer"; expected one of frame-count, instrument, mirrored-screen, side-by-side, two-timers. Did you mean two-timers?',
  },
  view: ({ of }, { site }) => {
    const method = site.bench.methods.find(({ id }) => id === of);
    if (method === undefined) throw new Error(`there is no method note '${of}'`);
    return { title: method.title, summary: method.summary, path: methodPath(of) };
  },
  figures: () => [],
});
