import type { Files } from '../../support/bench-folder.ts';
import type { ProblemCase } from './case.ts';

const SUM = 'a'.repeat(64);
const WRITTEN = 'npm run record writes this file: take it back from version control.';
const FIGURES = 'content/ledger/figures.csv';
const INPUTS = 'content/ledger/inputs.csv';
const ENTRY = 'content/ledger/entries/2026-05-02-why.yaml';

/** A sound ledger with some of its files replaced. */
function ledger(changes: Files): Files {
  return {
    [FIGURES]: 'id,text,value,low,high,files\ntotal/a,308 ± 54 ms,308,254,362,0123abcd\n',
    [INPUTS]: `input,state\nanalysis,1\ndata/sessions/a.csv,${SUM}\n`,
    [ENTRY]:
      'date: 2026-05-02\nreason: Why\nanalysis: "1"\nmoved:\n  - { id: total/a, from: 307 ± 54 ms, to: 308 ± 54 ms }\nadded:\n  total: 1\n',
    ...changes,
  };
}

const figures = (...rows: readonly string[]): Files =>
  ledger({ [FIGURES]: `id,text,value,low,high,files\n${rows.join('\n')}\n` });

/** The files of the ledger, edited by hand into nonsense. */
export const LEDGER_CASES: readonly ProblemCase[] = [
  { name: 'nothing, when it is sound', changes: ledger({}), lines: [] },
  {
    name: 'cells of figures that cannot be',
    changes: figures('total,,3o8,254 ms,--1,0123'),
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
    changes: figures('total/a,308 ms,308,,,0123abcd', 'total/a,309 ms,309,,,0123abcd'),
    lines: [`${FIGURES}:3  id  "total/a" stands here a second time. Keep one of the two lines, then record again.`],
  },
  {
    name: 'a merge that nobody finished',
    changes: figures(
      '<<<<<<< HEAD',
      'total/a,308 ms,308,,,0123abcd',
      '=======',
      'total/a,309 ms,309,,,0123abcd',
      '>>>>>>> other',
    ),
    lines: [
      `${FIGURES}:2  a merge is not finished: the marks of version control begin here. Keep the lines of either side, remove the marks, then record again.`,
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
      [ENTRY]: 'date: 2026-02-30\nreason: " "\nanalysis: "1"\nmoved: yes\nadded:\n  total: many\nwhy: x\n',
    }),
    lines: [
      `${ENTRY}:1:7  date  expected a calendar date written YYYY-MM-DD, found "2026-02-30".`,
      `${ENTRY}:2:9  reason  has no value. Write one, or remove the key where it is optional.`,
      `${ENTRY}:4:8  moved  expected a list, found text.`,
      `${ENTRY}:6:10  added.total  expected a whole number, found "many". ${WRITTEN}`,
      `${ENTRY}:7:1  why  unknown key "why"; expected one of date, reason, analysis, causes, moved, gone, added.`,
    ],
  },
  {
    name: 'files that are missing, and files that belong to nothing',
    changes: ledger({ [FIGURES]: null, 'content/ledger/figure.csv': 'x', 'content/ledger/entries/note.txt': 'x' }),
    lines: [
      'content/ledger/entries/note.txt  does not belong here; expected <id>.yaml. Move it away, or correct its name.',
      'content/ledger/figure.csv  does not belong here; expected one of figures.csv, inputs.csv, entries, README.md. Move it away, or correct its name. Did you mean figures.csv?',
      `${FIGURES}  this file is missing. Create it.`,
    ],
  },
];
