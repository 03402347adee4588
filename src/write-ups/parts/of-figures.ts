import { COMMON, SELECTION, type PartDefinitions } from './definition.ts';

/** Parts that show figures of single sessions. */
export const FIGURE_PARTS: PartDefinitions = {
  Figure: {
    shows: 'one figure in running text, leading to its entry',
    needs: ['id'],
    properties: { id: { means: 'which figure', accepts: '"kind/session", as npm run figures lists it' } },
    example:
      'The picture arrives <Figure id="total/orrin-uhd24-a" /> after the event, or <Figure id="frames/orrin-uhd24-a" />.',
    failure: {
      written: '<Figure id="total/orin-uhd24-a" />',
      says: '1:1  Figure id  there is no figure "total/orin-uhd24-a". Did you mean total/orrin-uhd24-a, total/orrin-uhd24-b or total/orrin-uhd24-c?',
    },
  },
  FigureTable: {
    shows: 'a table of figures, by list (ids) or by query: new sessions that match join by themselves',
    needs: [['ids', 'kind'], 'caption'],
    properties: { ...SELECTION, caption: COMMON.caption },
    example:
      '<FigureTable kind="total" body="orrin-v2" rig="balcony" where={{ resolution: "uhd" }} caption="Orrin V2 in UHD, from the balcony." />',
    failure: {
      written: '<FigureTable kind="total" where={{ resolution: "8k" }} caption="In 8K." />',
      says: '1:1  FigureTable where  unknown level "8k" of this setting; expected one of hd, uhd.',
    },
  },
  FigureChart: {
    shows: 'the same figures drawn with their intervals, with the table behind',
    needs: [['ids', 'kind'], 'caption'],
    properties: {
      ...SELECTION,
      caption: COMMON.caption,
      bands: {
        means:
          'dashed lines where sound ahead of the picture is noticed and no longer acceptable (ITU-R BT.1359-1, EBU R 37)',
        accepts: '"sound"',
      },
    },
    example:
      '<FigureChart ids={["total/wexley-uhd60-a", "total/tamsel-uhd60-a"]} caption="Two bodies in UHD at 59.94." />',
    failure: {
      written: '<FigureChart caption="Two bodies in UHD at 59.94." />',
      says: '1:1  FigureChart  this part needs the property ids or kind. Add it.',
    },
  },
  Ranking: {
    shows: 'sessions from the lowest figure up, with those that cannot be told from the lowest',
    needs: [['ids', 'kind'], 'caption'],
    properties: { ...SELECTION, kind: COMMON.ranked, caption: COMMON.caption },
    example: '<Ranking kind="total" rig="pit" caption="Down in the pit, lowest total first." />',
    failure: {
      written: '<Ranking kind="median" rig="pit" caption="Medians." />',
      says: '1:1  Ranking kind  "median" is not a choice here; expected one of total, frames.',
    },
  },
  Lowest: {
    shows: 'the name of the session with the lowest figure, or of all that cannot be told from it, in running text',
    needs: [['ids', 'kind']],
    properties: { ...SELECTION, kind: COMMON.ranked },
    example:
      'In UHD at 59.94 the fastest is the <Lowest kind="total" rig="balcony" where={{ resolution: "uhd", rate: "59.94", "audio-out": "off" }} />.',
    failure: {
      written: '<Lowest kind="total" rig="attic" />',
      says: '1:1  Lowest rig  unknown rig "attic"; expected one of balcony, pit, workshop.',
    },
  },
  Highest: {
    shows: 'the same at the other end',
    needs: [['ids', 'kind']],
    properties: { ...SELECTION, kind: COMMON.ranked },
    example:
      'At 23.976 the slowest is the <Highest ids={["total/orrin-uhd24-b", "total/tamsel-uhd24-a", "total/wexley-uhd24-a"]} />.',
    failure: {
      written: '<Highest ids={["total/orrin-uhd24-b", "total/orrin-uhd24-d"]} />',
      says: '1:1  Highest ids  there is no figure "total/orrin-uhd24-d". Did you mean total/orrin-uhd24-a, total/orrin-uhd24-b or total/orrin-uhd24-c?',
    },
  },
  Readings: {
    shows: 'every reading of a session, drawn and listed',
    needs: ['session'],
    properties: { session: { means: 'which session', accepts: '"id of a session"' } },
    example: '<Readings session="orrin-uhd24-a" />',
    failure: {
      written: '<Readings session="orrin-uhd24-z" />',
      says: '1:1  Readings session  unknown session "orrin-uhd24-z"; expected one of orrin-flash-uhd60, orrin-hd60-a, orrin-hd60-audio, orrin-pit-uhd60, orrin-pit-uhd60-radio, orrin-uhd24-8bit, orrin-uhd24-a, orrin-uhd24-audio, orrin-uhd24-b, orrin-uhd24-c, orrin-uhd25-a, orrin-uhd30-a and 26 more. Did you mean orrin-uhd24-a, orrin-uhd24-b or orrin-uhd24-c?',
    },
  },
  MethodNote: {
    shows: 'how such readings are taken, with the way to the whole note',
    needs: ['of'],
    properties: { of: { means: 'which way of reading', accepts: '"two-timers", "frame-count" or "instrument"' } },
    example: '<MethodNote of="two-timers" />',
    failure: {
      written: '<MethodNote of="two-timer" />',
      says: '1:1  MethodNote of  unknown method "two-timer"; expected one of frame-count, instrument, two-timers. Did you mean two-timers?',
    },
  },
};
