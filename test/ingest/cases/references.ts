import { VALID_FILES } from '../../support/bench-folder.ts';
import { edit, type ProblemCase } from './case.ts';

const session = (from: string, to: string) => edit('data/sessions/a.md', from, to);
const settings = (more: string) => ({ 'data/settings.yaml': VALID_FILES['data/settings.yaml'] + more });

/** Settings, and everything that names something else. */
export const REFERENCE_CASES: readonly ProblemCase[] = [
  {
    name: 'an unknown body',
    changes: session('vennick', 'venick'),
    lines: ['data/sessions/a.md:2:7  body  unknown body "venick"; expected vennick. Did you mean vennick?'],
  },
  {
    name: 'a workbook that is not there, or not by such a name, and one that was changed since',
    changes: {
      ...session('room:', `imported-from: { file: desk.xlsx, sha256: "${'0'.repeat(64)}" }\nroom:`),
      'data/sources/desk.xlsx': 'another',
      'data/sessions/b.md': VALID_FILES['data/sessions/a.md'].replace(
        'room:',
        'imported-from: { file: ../settings.yaml, sha256: "00" }\nroom:',
      ),
      'data/sessions/b.csv': VALID_FILES['data/sessions/a.csv'],
    },
    lines: [
      'data/sessions/a.md  imported-from  the workbook "data/sources/desk.xlsx" is not the one that it was imported from: its checksum is another. Put back the one that was imported; changes of readings belong into the readings file of the session.',
      'data/sessions/b.md  imported-from  the workbook "data/sources/../settings.yaml" that it was imported from is not there. Put it back, or take imported-from out if it is not to be published.',
    ],
  },
  {
    name: 'an unknown rig',
    changes: session('rig: balcony', 'rig: balcny'),
    lines: ['data/sessions/a.md:4:6  rig  unknown rig "balcny"; expected one of balcony, pit. Did you mean balcony?'],
  },
  {
    name: 'an unknown rig that is like none',
    changes: session('rig: balcony', 'rig: cellar'),
    lines: ['data/sessions/a.md:4:6  rig  unknown rig "cellar"; expected one of balcony, pit.'],
  },
  {
    name: 'an unknown display, of a rig and of a session',
    changes: {
      ...edit('data/rigs/pit.md', 'display: screen', 'display: scren'),
      ...session('room:', 'display: wall\nroom:'),
    },
    lines: [
      'data/rigs/pit.md:4:10  display  unknown display "scren"; expected screen. Did you mean screen?',
      'data/sessions/a.md:8:10  display  unknown display "wall"; expected screen.',
    ],
  },
  {
    name: 'unknown links, of a rig and of a session, and one listed twice',
    changes: {
      ...edit('data/rigs/balcony.md', '[air]', '[air, aire, air]'),
      ...session('room:', 'links: [cable]\nroom:'),
    },
    lines: [
      'data/rigs/balcony.md:7:14  links.2  unknown link "aire"; expected air. Did you mean air?',
      'data/rigs/balcony.md:7:20  links.3  the link "air" is listed twice. List each link of the chain once; give a second unit a file of its own.',
      'data/sessions/a.md:8:9  links.1  unknown link "cable"; expected air.',
    ],
  },
  {
    name: 'an unknown link where there are none',
    changes: { 'data/links/air.md': null },
    lines: ['data/rigs/balcony.md:7:9  links.1  unknown link "air"; there are none.'],
  },
  {
    name: 'an unknown setting',
    changes: session('bit-depth', 'bitdepth'),
    lines: [
      'data/sessions/a.md:7:26  settings.bitdepth  unknown setting "bitdepth"; expected one of rate, bit-depth, chroma, audio-out. Did you mean bit-depth?',
    ],
  },
  {
    name: 'unknown levels',
    changes: session(
      '{ rate: 23.98, bit-depth: 10, chroma: 4:2:2, audio-out: on }',
      '{ rate: 25, bit-depth: 10.0, chroma: 4:2:1, audio-out: true }',
    ),
    lines: [
      '7:19  settings.rate  unknown level "25" of this setting; expected one of 23.976, 24, 59.94. Did you mean 24?',
      '7:34  settings.bit-depth  unknown level "10.0" of this setting; expected one of 8, 10.',
      '7:48  settings.chroma  unknown level "4:2:1" of this setting; expected one of 4:2:0, 4:2:2. Did you mean 4:2:0 or 4:2:2?',
      '7:66  settings.audio-out  unknown level "true" of this setting; expected one of off, on.',
    ].map((line) => `data/sessions/a.md:${line}`),
  },
  {
    name: 'a session without a rate',
    changes: session('rate: 23.98, ', ''),
    lines: ['data/sessions/a.md:7:1  settings.rate  this key is missing. Add it.'],
  },
  {
    name: 'an unknown method',
    changes: session('two-timers', 'two-timer'),
    lines: [
      'data/sessions/a.md:5:9  method  unknown method "two-timer"; expected one of two-timers, frame-count, instrument. Did you mean two-timers?',
    ],
  },
  {
    name: 'a method without a page',
    changes: { 'content/methods/two-timers.mdx': null },
    lines: [
      'data/sessions/a.md:5:9  method  the method "two-timers" has no page two-timers.mdx. Write it, so that readers can see how the readings were taken.',
    ],
  },
  ...[
    ['two-timers', 'source-timer: { name: Phone, refresh: 60 }\n', 'source-timer'],
    [
      'frame-count',
      'observer: { name: Pocket camera, rate: 120, exposure: 1/500 s, source-row: 0.25, display-row: 0.75, clock-tolerance: 50 ppm }\n',
      'observer',
    ],
    ['instrument', 'instrument: { name: Light sensor, expanded-uncertainty: 0.5 ms }\n', 'instrument'],
  ].map(([method = '', part = '', key = '']) => ({
    name: `the method ${method} on a rig without ${key}`,
    changes: { ...session('two-timers', method), ...edit('data/rigs/balcony.md', part, '') },
    lines: [
      `data/sessions/a.md:4:6  rig  the method "${method}" needs ${key}, which the rig does not state. Add it to the rig, or choose another rig or method.`,
    ],
  })),
  {
    name: 'a faulty rig, reported once and not again where it is used',
    changes: edit('data/rigs/balcony.md', 'display: screen\n', ''),
    lines: ['data/rigs/balcony.md:1  display  this key is missing. Add it.'],
  },
  {
    name: 'settings that are no list',
    changes: { 'data/settings.yaml': 'rate: [24]\n' },
    lines: ['data/settings.yaml:1:1  expected a list, found keys with values.'],
  },
  {
    name: 'no setting for the frame rate',
    changes: { ...edit('data/settings.yaml', 'kind: rate', 'kind: ordered'), ...session('23.98', '23.976') },
    lines: [
      'data/settings.yaml:1  there is no setting named rate of kind rate. Declare it: - { name: rate, label: Frame rate, kind: rate, levels: [24, 25] }.',
    ],
  },
  {
    name: 'settings that are declared wrongly',
    changes: settings(
      '- { name: A b, label: x, kind: rates, levels: [] }\n- { name: z, label: [x], kind: ordered, levels: [{ nam: x }] }\n',
    ),
    lines: [
      '5:11  5.name  "A b" cannot name a setting; use lower-case letters, digits and hyphens.',
      '5:32  5.kind  "rates" is not a choice here; expected one of unordered, ordered, numeric, rate. Did you mean rate?',
      '5:47  5.levels  has no value. Write one, or remove the key where it is optional.',
      '6:21  6.label  expected text, found a list.',
      '6:50  6.levels.1.name  this key is missing. Add it.',
      '6:50  6.levels.1.label  this key is missing. Add it.',
      '6:52  6.levels.1.nam  unknown key "nam"; expected one of name, label. Did you mean name?',
    ].map((line) => `data/settings.yaml:${line}`),
  },
  {
    name: 'levels that are declared wrongly',
    changes: settings(
      '- { name: chroma, label: x, kind: numeric, levels: [8, 8, x, 8.0] }\n- { name: out, label: x, kind: rate, levels: [59.94, 60000/1001, foo] }\n',
    ),
    lines: [
      '5:11  5.name  the setting "chroma" is declared twice. Keep one of the two.',
      '5:56  5.levels.2  the level "8" repeats 8. Keep one of the two.',
      '5:59  5.levels.3  the levels of a numeric setting are plain numbers, found "x".',
      '5:62  5.levels.4  the level "8.0" repeats 8. Keep one of the two.',
      '6:32  6.kind  "out" is a second setting of kind rate. A body has one frame rate: give this one the kind numeric or ordered.',
      '6:54  6.levels.2  the level "60000/1001" repeats 59.94. Keep one of the two.',
      '6:66  6.levels.3  the levels of a rate setting are rates, found "foo"; write 24, 23.976, 24000/1001 or 59.94p.',
    ].map((line) => `data/settings.yaml:${line}`),
  },
];
