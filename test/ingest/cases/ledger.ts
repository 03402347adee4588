import type { Files } from '../../support/bench-folder.ts';
import type { ProblemCase } from './case.ts';

const SUM = 'a'.repeat(64);
const WRITTEN = 'npm run record writes this file: take it back from version control.';
const TAKE_BACK =
  'Take its files back from version control; what is wrong in an entry is put right by a further record.';
const FIGURES = 'content/ledger/figures.csv';
const INPUTS = 'content/ledger/inputs.csv';
const ENTRY = 'content/ledger/entries/2026-05-02-why.yaml';
const TABLE = 'content/ledger/entries/2026-05-02-why.csv';
const TOLD = 'content/ledger/entries/2026-05-01-why.yaml';

/** A sound ledger with some of its files replaced. */
function ledger(changes: Files): Files {
  return {
    [FIGURES]: 'id,text,value,low,high,also,files\ntotal/a,308 ± 54 ms,308,254,362,u 27,0123abcd\n',
    [INPUTS]: `input,state\nanalysis,1\nledger,${SUM}\ndata/sessions/a.csv,${SUM}\n`,
    [ENTRY]: `date: 2026-05-02\nreason: Why\nanalysis: "1"\nsays: ${SUM}\ncauses:\n  - [{ changed: data/sessions/a.csv }]\n`,
    [TABLE]: 'id,was,text,value,low,high,also,files,cause\ntotal/a,,308 ± 54 ms,308,254,362,u 27,0123abcd,1\n',
    [TOLD]:
      'date: 2026-05-01\nreason: Why\nanalysis: "1"\nmoved:\n  - { id: total/a, from: 307 ± 54 ms, to: 308 ± 54 ms }\nadded:\n  total: 1\n',
    ...changes,
  };
}

const figures = (...rows: readonly string[]): Files =>
  ledger({ [FIGURES]: `id,text,value,low,high,also,files\n${rows.join('\n')}\n` });

/** The files of the ledger, edited by hand into nonsense. */
export const LEDGER_CASES: readonly ProblemCase[] = [
  { name: 'nothing, when it is sound', changes: ledger({}), lines: [] },
  {
    name: 'cells of figures that cannot be',
    changes: figures('total,,3o8,254 ms,--1,,0123'),
    lines: [
      `${FIGURES}:2  id  expected an id such as total/a, found "total". ${WRITTEN}`,
      `${FIGURES}:2  text  expected the published text, found "". ${WRITTEN}`,
      `${FIGURES}:2  value  expected a number, found "3o8". ${WRITTEN}`,
      `${FIGURES}:2  low  expected a number, found "254 ms". ${WRITTEN}`,
      `${FIGURES}:2  high  expected a number, found "--1". ${WRITTEN}`,
      `${FIGURES}:2  files  expected eight hexadecimal digits, found "0123". ${WRITTEN}`,
    ],
  },
  {
    name: 'a figure that stands twice',
    changes: figures('total/a,308 ms,308,,,,0123abcd', 'total/a,309 ms,309,,,,0123abcd'),
    lines: [`${FIGURES}:3  id  "total/a" stands here a second time. Keep one of the two lines, then record again.`],
  },
  {
    name: 'a merge that nobody finished',
    changes: figures(
      '<<<<<<< HEAD',
      'total/a,308 ms,308,,,,0123abcd',
      '=======',
      'total/a,309 ms,309,,,,0123abcd',
      '>>>>>>> other',
    ),
    lines: [
      `${FIGURES}:2  a merge is not finished: the marks of version control begin here. The file follows from the entries: let it be written again, npm run record -- --join.`,
    ],
  },
  {
    name: 'a merge of which the mark in the middle was left',
    changes: figures('total/a,308 ms,308,,,,0123abcd', '======='),
    lines: [
      `${FIGURES}:3  a merge is not finished: the marks of version control begin here. The file follows from the entries: let it be written again, npm run record -- --join.`,
    ],
  },
  {
    name: 'columns that are not those of a ledger',
    changes: ledger({ [FIGURES]: 'id;text\n', [INPUTS]: 'input\n' }),
    lines: [
      `${FIGURES}:1  the columns are separated by semicolons, not by commas. Save the file with comma-separated values, and write decimals with a point: 31.482.`,
      `${INPUTS}:1  state  this column is missing; expected exactly input,state.`,
    ],
  },
  {
    name: 'inputs that cannot be',
    changes: ledger({ [INPUTS]: `input,state\ndata/sessions/a.csv,abc\n,${SUM}\ndata/sessions/a.csv,${SUM}\n` }),
    lines: [
      `${INPUTS}:1  analysis  this key is missing. Add it.`,
      `${INPUTS}:2  state  expected a SHA-256 checksum, 64 hexadecimal digits, found "abc". ${WRITTEN}`,
      `${INPUTS}:3  input  expected a file, found "". ${WRITTEN}`,
      `${INPUTS}:4  input  "data/sessions/a.csv" stands here a second time. Keep one of the two lines, then record again.`,
    ],
  },
  {
    name: 'an entry without a day, with a reason that is none, and with words where a count belongs',
    changes: ledger({
      [TOLD]: 'date: 2026-02-30\nreason: " "\nanalysis: "1"\nmoved: yes\nadded:\n  total: many\nwhy: x\n',
    }),
    lines: [
      `${TOLD}:1:7  date  expected a calendar date written YYYY-MM-DD, found "2026-02-30".`,
      `${TOLD}:2:9  reason  has no value. Write one, or remove the key where it is optional.`,
      `${TOLD}:4:8  moved  expected a list, found text.`,
      `${TOLD}:6:10  added.total  expected a whole number, found "many". ${WRITTEN}`,
      `${TOLD}:7:1  why  unknown key "why"; expected one of date, reason, analysis, causes, moved, gone, added.`,
    ],
  },
  {
    name: 'an entry with digests and causes that are none',
    changes: ledger({
      [ENTRY]: `date: 2026-05-02\nreason: Why\nanalysis: "1"\nbefore: abc\nsays: ${SUM}\ncauses:\n  - [{ changed: a, new: b }]\n`,
    }),
    lines: [
      `${ENTRY}:4:9  before  expected a SHA-256 digest, 64 hexadecimal digits, found "abc". ${WRITTEN}`,
      `${ENTRY}:7:6  causes.1.1  this is not one cause. ${WRITTEN}`,
    ],
  },
  {
    name: 'a table of an entry with rows that cannot be',
    changes: ledger({
      [TABLE]: 'id,was,text,value,low,high,also,files,cause\ntotal,a,308 ms,,,,,0123abcd,x\nmean,,,,,,,,\n',
    }),
    lines: [
      `${TABLE}:2  was  expected an id such as total/a, found "a". ${WRITTEN}`,
      `${TABLE}:2  cause  expected a number of a cause, found "x". ${WRITTEN}`,
      `${TABLE}:2  id  expected an id such as total/a, found "total". ${WRITTEN}`,
      `${TABLE}:3  id  expected an id such as total/a, found "mean". ${WRITTEN}`,
    ],
  },
  {
    name: 'halves of entries',
    changes: ledger({
      [TABLE]: null,
      'content/ledger/entries/other.csv': 'id,was,text,value,low,high,also,files,cause\n',
    }),
    lines: [
      `${ENTRY}  has no 2026-05-02-why.csv beside it, and the two are one entry. ${TAKE_BACK}`,
      `content/ledger/entries/other.csv  has no other.yaml beside it, and the two are one entry. ${TAKE_BACK}`,
    ],
  },
  {
    name: 'nothing, when it was recorded in the form of before',
    changes: ledger({
      [FIGURES]: 'id,text,value,low,high,files\ntotal/a,308 ± 54 ms,308,254,362,0123abcd\n',
      [INPUTS]: `input,state\nanalysis,1\ndata/sessions/a.csv,${SUM}\n`,
      [ENTRY]: null,
      [TABLE]: null,
    }),
    lines: [],
  },
  {
    name: 'files that are missing, and files that belong to nothing',
    changes: ledger({ [FIGURES]: null, 'content/ledger/figure.csv': 'x', 'content/ledger/entries/note.txt': 'x' }),
    lines: [
      'content/ledger/entries/note.txt  does not belong here; expected <id>.yaml or <id>.csv. Move it away, or correct its name.',
      'content/ledger/figure.csv  does not belong here; expected one of figures.csv, inputs.csv, entries, README.md. Move it away, or correct its name. Did you mean figures.csv?',
      `${FIGURES}  this file is missing. Take the file back from version control, or let it be written again from the entries: npm run record -- --join.`,
    ],
  },
];
