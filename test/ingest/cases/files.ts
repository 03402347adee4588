import { closeSync, ftruncateSync, mkdirSync, openSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { VALID_FILES, type BenchFolder } from '../../support/bench-folder.ts';
import { bytes, type ProblemCase } from './case.ts';

const CSV = VALID_FILES['data/sessions/a.csv'];
const SAVE_AS_UTF8 = 'Save it as UTF-8 (in a spreadsheet: "CSV UTF-8"; in an editor: Save with encoding, UTF-8).';
const BESIDE = 'Add it beside this file; both have the same name.';
const utf16le = Buffer.from(CSV, 'utf16le');
const utf16be = Buffer.from(utf16le).swap16();

/** Folders, file names, links, sizes and encodings. */
export const FILE_CASES: readonly ProblemCase[] = [
  {
    name: 'a session without its readings',
    changes: { 'data/sessions/a.csv': null },
    lines: [`data/sessions/a.md  this session has no readings file a.csv. ${BESIDE}`],
  },
  {
    name: 'readings without their session',
    changes: { 'data/sessions/a.md': null },
    lines: [`data/sessions/a.csv  these readings have no session file a.md. ${BESIDE}`],
  },
  {
    name: 'needed files that are missing',
    changes: { 'content/site.md': null, 'data/settings.yaml': null },
    lines: [
      'content/site.md  this file is missing. Create it.',
      'data/settings.yaml  this file is missing. Create it.',
    ],
  },
  {
    name: 'needed folders that are missing',
    changes: { 'data/sessions/a.md': null, 'data/sessions/a.csv': null, 'data/bodies/vennick.md': null },
    lines: ['data/bodies', 'data/sessions'].map(
      (folder) =>
        `${folder}  this folder is missing. Create it, or check that the build was pointed at the right place.`,
    ),
  },
  {
    name: 'two files with one id',
    changes: { 'data/bodies/Vennick.md': 'x', 'data/bodies/vennick.markdown': 'x', 'data/sessions/A.csv': 'x' },
    lines: [
      'data/bodies/Vennick.md  has the same id as data/bodies/vennick.md. Rename or remove one of the two.',
      'data/bodies/vennick.markdown  has the same id as data/bodies/vennick.md. Rename or remove one of the two.',
      'data/sessions/A.csv  has the same id as data/sessions/a.csv. Rename or remove one of the two.',
    ],
  },
  {
    name: 'file names that are no ids',
    changes: { 'data/bodies/Tam Sel 6.md': 'x', 'data/bodies/écran.md': 'x', 'data/bodies/_.md': 'x' },
    lines: [
      'data/bodies/Tam Sel 6.md  the file name "Tam Sel 6" cannot be an id; use lower-case letters, digits and hyphens. Rename it, for example to tam-sel-6.md.',
      'data/bodies/_.md  the file name "_" cannot be an id; use lower-case letters, digits and hyphens. Rename the file.',
      'data/bodies/écran.md  the file name "écran" cannot be an id; use lower-case letters, digits and hyphens. Rename it, for example to cran.md.',
    ],
  },
  {
    name: 'files and folders that belong to nothing',
    changes: {
      'data/body/x.md': 'x',
      'data/setting.yaml': 'x',
      'data/bodies/notes.txt': 'x',
      'data/bodies/dunmere.markdown': 'x',
      'data/sessions/old/a.md': 'x',
      'data/sessions/b.tsv': 'x',
      'content/reports/second.md': 'x',
    },
    lines: [
      'content/reports/second.md  does not belong here; expected <id>.mdx. Move it away, or correct its name.',
      'data/bodies/dunmere.markdown  does not belong here; expected dunmere.md. Move it away, or correct its name.',
      'data/bodies/notes.txt  does not belong here; expected <id>.md. Move it away, or correct its name.',
      'data/body  does not belong here; expected one of settings.yaml, variation.yaml, speeds.yaml, README.md, bodies, displays, display-pairs, links, rigs, sessions, sources. Move it away, or correct its name.',
      'data/sessions/b.tsv  does not belong here; expected <id>.md or <id>.csv. Move it away, or correct its name.',
      'data/sessions/old  does not belong here; expected <id>.md or <id>.csv. Move it away, or correct its name.',
      'data/setting.yaml  does not belong here; expected one of settings.yaml, variation.yaml, speeds.yaml, README.md, bodies, displays, display-pairs, links, rigs, sessions, sources. Move it away, or correct its name. Did you mean settings.yaml?',
    ],
  },
  {
    name: 'a folder where a file should be',
    changes: {},
    arrange: ({ root }) => mkdirSync(join(root, 'data/bodies/folder.md')),
    lines: ['data/bodies/folder.md  is not an ordinary file. Replace it with one.'],
  },
  {
    name: 'links that lead out of data/ and content/, to a file, a folder and nothing',
    changes: {
      'data/links/air.md': null,
      'data/rigs/balcony.md': VALID_FILES['data/rigs/balcony.md'].replace('links: [air]\n', ''),
    },
    arrange: linkOut,
    lines: [
      'content/reports/out.mdx  is a symbolic link that leads out of content/; its target was not read. Put the file itself here.',
      'data/bodies/gone.md  cannot be read (ENOENT). Check that it exists and that its permissions let you read it.',
      'data/bodies/out.md  is a symbolic link that leads out of data/; its target was not read. Put the file itself here.',
      'data/links  is a symbolic link that leads out of data/; its target was not read. Put the file itself here.',
    ],
  },
  {
    name: 'a file of 100 MB, refused by its size alone',
    changes: {},
    arrange: ({ root }) => {
      const file = openSync(join(root, 'data/sessions/a.csv'), 'w');
      ftruncateSync(file, 100_000_000);
      closeSync(file);
    },
    // 100 000 000 / 2^20 = 95.37 MiB; its zero bytes were not read, or they would be reported
    lines: ['data/sessions/a.csv  is 95.4 MiB and was not read; the limit is 64 MiB. Split it into several sessions.'],
  },
  {
    name: 'an empty file',
    changes: bytes(''),
    lines: ['data/sessions/a.csv  is empty. Write its contents, or remove it.'],
  },
  {
    name: 'a file that holds a byte order mark alone',
    changes: bytes('\ufeff'),
    lines: ['data/sessions/a.csv  is empty. Write its contents, or remove it.'],
  },
  ...[
    ['little-endian, with a byte order mark', Buffer.concat([Buffer.from([0xff, 0xfe]), utf16le])],
    ['little-endian, without one', utf16le],
    ['big-endian, with a byte order mark', Buffer.concat([Buffer.from([0xfe, 0xff]), utf16be])],
    ['big-endian, without one', utf16be],
  ].map(([name, content]) => ({
    name: `UTF-16, ${String(name)}`,
    changes: bytes(content as Uint8Array),
    lines: [`data/sessions/a.csv  is encoded as UTF-16. ${SAVE_AS_UTF8}`],
  })),
  {
    name: 'Latin-1',
    changes: bytes(Buffer.from(`${CSV}2,00:13.000,00:12.700,,caf\u00e9\n`, 'latin1')),
    lines: [`data/sessions/a.csv:5  this line holds bytes that are not UTF-8. ${SAVE_AS_UTF8}`],
  },
  {
    name: 'a UTF-8 sequence cut short at the end of the file',
    changes: bytes(Buffer.concat([Buffer.from(CSV), Buffer.from([0xe2, 0x82])])),
    lines: [`data/sessions/a.csv:5  this line holds bytes that are not UTF-8. ${SAVE_AS_UTF8}`],
  },
  {
    name: 'characters that steer a terminal or turn the direction of text, as they are or as an escape',
    changes: {
      'content/site.md': VALID_FILES['content/site.md'].replace('---\n', '---\n# \u001b[2J\n'),
      'data/bodies/vennick.md': VALID_FILES['data/bodies/vennick.md'].replace('Vennick Q4', '"Vennick \\u202EQ4"'),
      'data/displays/screen.md': `${VALID_FILES['data/displays/screen.md']}\nA\u0085b\n`,
      'data/sessions/a.csv': CSV.replace('.779 and .796', '\u2066779'),
    },
    lines: [
      ['content/site.md:2:3', 'U+001B'],
      ['data/bodies/vennick.md:2:7', 'U+202E'],
      ['data/displays/screen.md:9:2', 'U+0085'],
      ['data/sessions/a.csv:4:69', 'U+2066'],
    ].map(
      ([where, name]) =>
        `${where}  holds the character ${name}, which steers terminals or turns the direction of text. Remove it; it may have come along when text was copied.`,
    ),
  },
  {
    name: 'folders that are links to nowhere, links that lead out, or files',
    changes: {
      'content/reports/first.mdx': null,
      'data/links': 'a file',
      'data/rigs/balcony.md': VALID_FILES['data/rigs/balcony.md'].replace('links: [air]\n', ''),
      'data/links/air.md': null,
    },
    arrange(folder) {
      folder.link('content/reports', 'nowhere');
      folder.link('content/ledger', '../data');
    },
    lines: [
      'content/ledger  is a symbolic link that leads out of content/; its target was not read. Put the file itself here.',
      'content/reports  cannot be read (ENOENT). Check that it exists and that its permissions let you read it.',
      'data/links  cannot be read (ENOTDIR). Check that it exists and that its permissions let you read it.',
    ],
  },
  {
    name: 'a ledger that is a file',
    changes: { 'content/ledger': 'a file' },
    lines: ['content/ledger  cannot be read (ENOTDIR). Check that it exists and that its permissions let you read it.'],
  },
  {
    name: 'a ledger that is a link to nowhere',
    changes: {},
    arrange: (folder) => folder.link('content/ledger', 'nowhere'),
    lines: ['content/ledger  cannot be read (ENOENT). Check that it exists and that its permissions let you read it.'],
  },
  {
    name: 'marks of a merge in notes, front matter and readings; a heading underlined with equals signs is none',
    changes: {
      'content/site.md': `${VALID_FILES['content/site.md']}\nA heading\n=======\n\nText.\n`,
      'data/bodies/vennick.md': `${VALID_FILES['data/bodies/vennick.md']}\n<<<<<<< HEAD\nOne.\n=======\nTwo.\n>>>>>>> other\n`,
      'data/displays/screen.md': VALID_FILES['data/displays/screen.md'].replace('---\n', '---\r\n>>>>>>> other\r\n'),
      'data/sessions/a.csv': `${CSV}<<<<<<<\n2,00:13.000,00:12.700,,\n`,
    },
    lines: ['data/bodies/vennick.md:11', 'data/displays/screen.md:2', 'data/sessions/a.csv:5'].map(
      (place) =>
        `${place}  a merge is not finished: a mark of version control stands here. Keep what is true of both versions, and remove the marks.`,
    ),
  },
  {
    name: 'NUL bytes',
    changes: bytes(`${CSV}2,00:13.000\0,00:12.700,,\n`),
    lines: [
      'data/sessions/a.csv:5  this line holds a NUL byte, so the file is not plain text. Write it again as plain text in UTF-8.',
    ],
  },
];

/** The targets would be valid if they were read. */
function linkOut({ root, link }: BenchFolder): void {
  const outside = join(root, 'outside');
  mkdirSync(outside);
  writeFileSync(join(outside, 'vennick.md'), VALID_FILES['data/bodies/vennick.md']);
  writeFileSync(join(outside, 'first.mdx'), VALID_FILES['content/reports/first.mdx']);
  link('data/bodies/out.md', join(outside, 'vennick.md'));
  link('data/bodies/gone.md', join(root, 'data/bodies/nowhere.md'));
  link('data/links', outside);
  link('content/reports/out.mdx', '../../data/bodies/vennick.md');
}
