import { FORMAT } from '../../../src/ingest/formats.ts';
import { edit, type ProblemCase } from './case.ts';

const SESSION_KEYS =
  'body, firmware, rig, method, date, settings, room, warm-up, cut-short, links, display, planned, imported-from';
const session = (from: string, to: string) => edit('data/sessions/a.md', from, to);
const body = (content: string) => ({ 'data/bodies/vennick.md': content });
const refused = (language: string, column = 4) =>
  `data/bodies/vennick.md:1:${column}  front matter in the language "${language}" is refused and was not run. Open with --- alone and write YAML.`;

const IN_QUOTES = 'Put the whole value in quotes: name: "a: b".';
const KEY_VALUE = 'Write key: value, or indent a line that goes on.';

/** What people write, and what a build says of it: name, line, place, words. */
const YAML_CASES: readonly (readonly [string, string, string, string])[] = [
  [
    'a colon in a value',
    'room: warm: 22 °C',
    '8:1',
    `the value in "room: warm: 22 °C" holds a colon and a blank, which begin a value of their own. ${IN_QUOTES}`,
  ],
  [
    'no blank after a colon',
    'room:22.5 °C',
    '8:1',
    'there is no blank after the colon in "room:22.5 °C". Write one: rate: 24.',
  ],
  ['an equals sign', 'room = 22.5 °C', '8:1', `expected a key and a value, found "room = 22.5 °C". ${KEY_VALUE}`],
  [
    'a word on a line of its own',
    'room: 22.5 °C\nwarm',
    '9:1',
    `expected a key and a value, found "warm". ${KEY_VALUE}`,
  ],
  [
    'a line indented under a value',
    'room: 22.5 °C\n  floor: wood',
    '9:1',
    '"floor: wood" is indented under a line that has a value already. Begin it where the line above begins, or remove the value above.',
  ],
  ['a tab', 'room:\n\ta: 1', '9:2', '"a: 1" is indented with a tab. Indent with blanks.'],
  ['a value that begins with @', 'room: @home', '8:7', 'a value cannot begin with "@". Put it in quotes.'],
  ['a value that begins with %', 'room: %5', '8:7', 'a value cannot begin with "%". Put it in quotes.'],
  [
    'an apostrophe in single quotes',
    "room: 'it's warm'",
    '8:11',
    `text goes on after a closing quotation mark in "room: 'it's warm'". Write the value without quotes, or double a quotation mark within: 'it''s'.`,
  ],
  [
    'an escape that is none',
    'room: "22\\q"',
    '8:10',
    '"\\\\q" means nothing in double quotes. Write \\\\ for a backslash, or use single quotes.',
  ],
  [
    'an open bracket',
    'links: [air',
    '8:8',
    'the bracket "[" opens here and is never closed. Close it, or put a value that begins with it in quotes.',
  ],
  [
    'a closing bracket',
    'room: warm\nlinks: air]]\nx: }',
    '10:4',
    '"}" closes a bracket that never opened. Remove it, or put the value in quotes.',
  ],
  [
    'no comma in brackets',
    'x: { a: 1 b: 2 }',
    '8:1',
    'a comma is missing between two entries in brackets, in "x: { a: 1 b: 2 }". Write one: { a: 1, b: 2 }.',
  ],
  [
    'two commas in brackets',
    'x: { a: 1,, b: 2 }',
    '8:11',
    'there is a comma too many in "x: { a: 1,, b: 2 }". Remove it.',
  ],
  [
    'a dash on the line of a key',
    'links: - air',
    '8:1',
    'a list with dashes begins on the line of its key, in "links: - air". Begin it on a line of its own, or write [a, b].',
  ],
];

/** Front matter, YAML, keys and the form of values. */
export const FRONT_MATTER_CASES: readonly ProblemCase[] = [
  {
    name: 'a version of the format that is none',
    changes: edit('content/site.md', 'publisher: Nobody', 'publisher: Nobody\nformat: second'),
    lines: ['content/site.md:5:9  format  "second" is no version of the format. Write a whole number: format: 2.'],
  },
  {
    name: 'files of a version of the format that is not known yet, beside which nothing else is reported',
    changes: {
      ...edit('content/site.md', 'publisher: Nobody', 'publisher: Nobody\nformat: 99'),
      'data/bodies/vennick.md': 'No front matter.\n',
    },
    lines: [
      `content/site.md:5:9  format  these files were written for format 99, and this version of the tool reads up to format ${FORMAT}. Update the tool.`,
    ],
  },
  {
    name: 'words of the planner in a session of the first format',
    changes: edit(
      'data/sessions/a.md',
      'A quiet morning.',
      'Session 1 of 2, in an order drawn at random. Plan: 4 clips.\nLet the body warm up for 15 min with these settings before the first reading. If it shows a temperature warning, stop, switch it off and let it cool.',
    ),
    lines: [
      'data/sessions/a.md:12  words of the planner stand in the notes, where they would be published; they belong into comments (since format 2). npm run bring-over writes it anew, and every other file that needs it; with --dry it only says which.',
    ],
  },
  {
    name: 'what a publication says of itself to be cited by',
    changes: edit(
      'content/site.md',
      'publisher: Nobody',
      'publisher: Nobody\nlicence: free\naddress: example.org/bench\nlanguage: English please\nidentifier: ten',
    ),
    lines: [
      'content/site.md:5:10  licence  "free" is not on the SPDX licence list; write its identifier, such as CC-BY-4.0 or CC0-1.0.',
      'content/site.md:6:10  address  expected the address of the site\'s home page, found "example.org/bench"; write https://example.org/bench/.',
      'content/site.md:7:11  language  expected a language tag, found "English please"; write en, en-GB or de.',
      'content/site.md:8:13  identifier  expected a DOI, a URN or an address, found "ten"; write 10.1234/abc or urn:isbn:9780306406157.',
    ],
  },
  {
    name: 'no front matter',
    changes: body('Vennick Q4\n'),
    lines: [
      'data/bodies/vennick.md:1  expected the opening line ---, found "Vennick Q4". Begin the file with front matter: a line ---, keys and values, a line ---.',
    ],
  },
  ...['js', 'javascript', 'JS', 'JavaScript', 'coffee', 'constructor', 'toString', '__proto__', 'json', 'toml'].map(
    (language) => ({
      name: `front matter in ${language}`,
      changes: body(`---${language}\n({ name: globalThis.frontMatterRan = '${language}' })\n---\n`),
      lines: [refused(language)],
    }),
  ),
  {
    name: 'front matter in js, after a blank',
    changes: body('--- js\nglobalThis.frontMatterRan = 1\n---\n'),
    lines: [refused('js', 5)],
  },
  {
    name: 'executable front matter in a report',
    changes: { 'content/reports/first.mdx': '---js\nglobalThis.frontMatterRan = 1\n---\n' },
    lines: [
      'content/reports/first.mdx:1:4  front matter in the language "js" is refused and was not run. Open with --- alone and write YAML.',
    ],
  },
  {
    name: 'front matter that is never closed',
    changes: body('---\nname: Vennick Q4\n'),
    lines: ['data/bodies/vennick.md:1  the front matter that opens here is never closed. End it with a line ---.'],
  },
  {
    name: 'a closing line that holds more',
    changes: body('---\nname: Vennick Q4\n---js\n'),
    lines: [
      'data/bodies/vennick.md:3  the front matter closes with "---js". Close it with a line --- that holds nothing else.',
    ],
  },
  {
    name: 'empty front matter',
    changes: body('---\n---\n'),
    lines: ['name', 'maker', 'model'].map((key) => `data/bodies/vennick.md:1  ${key}  this key is missing. Add it.`),
  },
  {
    name: 'front matter that is a list',
    changes: body('---\n- Vennick\n---\n'),
    lines: ['data/bodies/vennick.md:2:1  expected keys with values, found a list.'],
  },
  {
    name: 'a misspelt key',
    changes: session('firmware', 'firmwear'),
    lines: [
      `data/sessions/a.md:3:1  firmwear  unknown key "firmwear"; expected one of ${SESSION_KEYS}. Did you mean firmware?`,
    ],
  },
  {
    name: 'a misspelt key inside another, and the one that is missing for it',
    changes: edit('data/rigs/balcony.md', '{ name: Phone, refresh: 60 }', '\n  name: Phone\n  refreh: 60'),
    lines: [
      'data/rigs/balcony.md:3:1  source-timer.refresh  this key is missing. Add it.',
      'data/rigs/balcony.md:5:3  source-timer.refreh  unknown key "refreh"; expected one of name, refresh, resolution, wraps-after, clock-tolerance. Did you mean refresh?',
    ],
  },
  {
    name: 'a key of the prototype',
    changes: session('firmware:', '__proto__:'),
    lines: [`data/sessions/a.md:3:1  __proto__  unknown key "__proto__"; expected one of ${SESSION_KEYS}.`],
  },
  {
    name: 'a missing key',
    changes: session('body: vennick\n', ''),
    lines: ['data/sessions/a.md:1  body  this key is missing. Add it.'],
  },
  {
    name: 'a key without a value',
    changes: session('rig: balcony', 'rig:'),
    lines: ['data/sessions/a.md:4:1  rig  has no value. Write one, or remove the key where it is optional.'],
  },
  {
    name: 'a key with blank text',
    changes: session('rig: balcony', 'rig: " "'),
    lines: ['data/sessions/a.md:4:6  rig  has no value. Write one, or remove the key where it is optional.'],
  },
  {
    name: 'a key written twice',
    changes: session('rig: balcony', 'rig: balcony\nrig: pit'),
    lines: ['data/sessions/a.md:5:1  rig  this key is written twice. Keep one of the two.'],
  },
  {
    name: 'a list where text belongs',
    changes: session('rig: balcony', 'rig: [balcony]'),
    lines: ['data/sessions/a.md:4:6  rig  expected text, found a list.'],
  },
  {
    name: 'YAML that does not parse',
    changes: session('room: 22.5 °C', 'room: "22.5 °C'),
    lines: [
      'data/sessions/a.md:8:7  a quotation mark opens in "room: \\"22.5 °C" and is never closed. Close it, or write the value without.',
    ],
  },
  ...YAML_CASES.map(
    ([name, written, place, says]): ProblemCase => ({
      name: `in YAML, ${name}`,
      changes: session('room: 22.5 °C', written),
      lines: [`data/sessions/a.md:${place}  ${says}`],
    }),
  ),
  {
    name: 'aliases that multiply',
    changes: session('room: 22.5 °C', 'a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]'),
    lines: [
      '8:7  YAML anchors and aliases are not accepted, found "&a".',
      '9:7  YAML anchors and aliases are not accepted, found "&b".',
      '9:8  YAML anchors and aliases are not accepted, found "*a".',
      '9:12  YAML anchors and aliases are not accepted, found "*a".',
      '10:5  YAML anchors and aliases are not accepted, found "*b".',
      '10:9  YAML anchors and aliases are not accepted, found "*b".',
    ].map((line) => `data/sessions/a.md:${line} Write the value out; put it in quotes if it is text.`),
  },
  {
    name: 'a value in the quotes of a word processor',
    changes: session('22.5 °C', '“22.5 °C”'),
    lines: [
      'data/sessions/a.md:8:7  found “22.5 °C” in quotes of print, which would be part of the value. Write straight ones, "…"; where a text is meant to have them, put straight ones around them.',
    ],
  },
  {
    name: 'a YAML tag',
    changes: session('22.5 °C', '!!js/function "() => { globalThis.frontMatterRan = 1 }"'),
    lines: [
      'data/sessions/a.md:8:21  YAML tags are not accepted, found "tag:yaml.org,2002:js/function". Remove it; put the value in quotes if it is text.',
    ],
  },
  {
    name: 'YAML nested without end',
    changes: { 'data/settings.yaml': '['.repeat(50_000) },
    lines: ['data/settings.yaml  the YAML is nested too deeply. Write plain keys and values.'],
  },
  {
    name: 'a second YAML document',
    changes: edit('data/settings.yaml', '- { name: bit-depth', '---\n- { name: bit-depth'),
    lines: [
      'data/settings.yaml:2:1  a second YAML document begins here. Keep one, and remove the line that parts them.',
    ],
  },
  {
    name: 'a number where a firmware version should be text',
    changes: session('"1.40"', '1.40'),
    lines: [
      'data/sessions/a.md:3:11  firmware  1.40 is a number here, and other programs would drop its last zeros. Quote it: "1.40".',
    ],
  },
  ...['2026-02-30', '2025-02-29', '2026-13-01', '11.04.2026', '2026-4-11', '2026-04-11T10:00:00Z', 'yesterday'].map(
    (date) => ({
      name: `the date ${date}`,
      changes: session('2026-04-11', date),
      lines: [`data/sessions/a.md:6:7  date  expected a calendar date written YYYY-MM-DD, found "${date}".`],
    }),
  ),
  {
    name: 'quantities of a rig',
    changes: {
      'data/rigs/pit.md': `---
name: Pit
source-timer:
  name: Tablet
  refresh: sixty
  resolution: 0 ms
  wraps-after: 60
  clock-tolerance: 50
observer:
  name: Pocket camera
  rate: 120 000
  source-row: 1.5
  display-row: -0.1
instrument:
  name: Light sensor
  expanded-uncertainty: 1e999 ms
display: screen
invented: yes
---
`,
    },
    lines: [
      '5:12  source-timer.refresh  expected a rate, found "sixty"; write 24, 23.976, 24000/1001 or 59.94p.',
      '6:15  source-timer.resolution  must be longer than zero, found "0 ms".',
      '7:16  source-timer.wraps-after  expected a duration, found "60"; write a number and a unit: 14 ms, 1/500 s, 60 s, 60 min.',
      '8:20  source-timer.clock-tolerance  expected parts per million, found "50"; write 50 ppm.',
      '11:9  observer.rate  expected a rate, found "120 000"; write 24, 23.976, 24000/1001 or 59.94p.',
      '12:15  observer.source-row  expected a height from 0 (top edge) to 1 (bottom edge), found "1.5".',
      '13:16  observer.display-row  expected a height from 0 (top edge) to 1 (bottom edge), found "-0.1".',
      '16:25  instrument.expanded-uncertainty  expected a duration, found "1e999 ms"; write a number and a unit: 14 ms, 1/500 s, 60 s, 60 min.',
      '18:11  invented  expected true or false, found "yes".',
    ].map((line) => `data/rigs/pit.md:${line}`),
  },
  {
    name: 'a choice that is none',
    changes: edit('data/displays/screen.md', 'sync: input', 'sync: inputs'),
    lines: [
      'data/displays/screen.md:4:7  sync  "inputs" is not a choice here; expected one of input, free. Did you mean input?',
    ],
  },
  {
    name: 'a latency without its uncertainty',
    changes: edit('data/links/air.md', 'uncertainty: 0.2 ms, ', ''),
    lines: ['data/links/air.md:3:1  latency.uncertainty  this key is missing. Add it.'],
  },
  {
    name: 'quotations in quotations without end',
    changes: edit('content/reports/first.mdx', 'Nothing yet.', `${'> '.repeat(120)}x`),
    lines: [
      'content/reports/first.mdx  quotations, lists or elements are nested too deeply to be read. Take them out of each other.',
    ],
  },
  {
    name: 'a property that is written twice',
    changes: edit('content/reports/first.mdx', 'Nothing yet.', '<Figure id="total/a" id="mean/a" />'),
    lines: ['content/reports/first.mdx:8:1  Figure id  this key is written twice. Keep one of the two.'],
  },
  {
    name: 'a report that is not MDX',
    changes: edit('content/reports/first.mdx', 'Nothing yet.', 'It took <300 ms.'),
    // up to the remedy, the words are the MDX parser's
    lines: [
      'content/reports/first.mdx:8:9  not valid MDX: Unexpected character after `<`, expected a valid JSX tag (note: to create a link in MDX, use `[text](url)`). In MDX, < and { begin markup: write &lt; or \\{ where the character is meant.',
    ],
  },
];
