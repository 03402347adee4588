import { sessionTitle } from '../../register/labels.ts';
import { sessionPath } from '../../register/paths.ts';
import { readingsPlate } from '../../views/readings-plate.ts';
import { COMMON } from './common.ts';
import { definePart } from './definition.ts';

export const readings = definePart({
  name: 'Readings',
  group: 'figures',
  shows: 'every reading of a session, drawn and listed',
  needs: ['session'],
  properties: { session: COMMON.session },
  example: '<Readings session="vennick-uhd25-a" />',
  failure: {
    written: '<Readings session="vennick-uhd25-z" />',
    says: '1:1  Readings session  unknown session "vennick-uhd25-z"; expected one of dunmere-hd25-a, dunmere-hd25-nr, dunmere-pit-uhd60, dunmere-uhd24-a, dunmere-uhd25-a, dunmere-uhd25-b, dunmere-uhd25-fw53, dunmere-uhd25-nr, dunmere-uhd25-steady, dunmere-uhd25-steady-b, dunmere-uhd30-a, dunmere-uhd50-a and 32 more. Did you mean vennick-uhd25-a, vennick-uhd25-b or vennick-uhd25-c?',
  },
  view: ({ session: id }, { site }) => {
    const session = site.find.session(id);
    return {
      session,
      title: sessionTitle(site.bench, session),
      path: sessionPath(id),
      plate: readingsPlate(site, session),
    };
  },
  figures: ({ plate }) => (plate === undefined ? [] : [plate.total]),
});
