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
  example: '<Readings session="orrin-uhd24-a" />',
  failure: {
    written: '<Readings session="orrin-uhd24-z" />',
    says: '1:1  Readings session  unknown session "orrin-uhd24-z"; expected one of orrin-flash-uhd60, orrin-hd60-a, orrin-hd60-audio, orrin-pit-uhd60, orrin-pit-uhd60-radio, orrin-uhd24-8bit, orrin-uhd24-a, orrin-uhd24-audio, orrin-uhd24-b, orrin-uhd24-c, orrin-uhd25-a, orrin-uhd30-a and 26 more. Did you mean orrin-uhd24-a, orrin-uhd24-b or orrin-uhd24-c?',
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
