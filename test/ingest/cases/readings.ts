import { VALID_FILES } from '../../support/bench-folder.ts';
import { bytes, edit, readings, rows, type ProblemCase } from './case.ts';

const CSV = VALID_FILES['data/sessions/a.csv'];
const GOOD = '1,00:31.482,00:31.181,,';
const COLUMNS = 'expected exactly run,source,shown,exclude,note';
const WRITE_TIME = 'write 31.482, 00:31.482 or 00:00:31.482';
const NO_VALUE = 'Where there is no value, leave the cell empty and say under exclude why.';
const OR_EXCLUDE = 'Correct it, or say under exclude why it does not count.';
const LATER = 'Check that the two are not swapped; correct the reading, or say under exclude why it does not count.';
const RUNS = 'Runs count up from 1 without gaps.';
const EMPTY = 'is empty, and the reading is not excluded. Write the value, or say under exclude why there is none.';
const at = (line: string): string => `data/sessions/a.csv:${line}`;
const method = (name: string) => edit('data/sessions/a.md', 'two-timers', name);
const onPit = edit('data/sessions/a.md', 'rig: balcony', 'rig: pit');
const wrapped = (shown: string, period: string): string =>
  `shown  the display shows ${shown}, later than the source; the timer may have started again at zero. If it does so after ${period}, state wraps-after: ${period} in the rig; if not, correct the reading or exclude it.`;

/** The readings file: its shape, then its cells. */
export const READING_CASES: readonly ProblemCase[] = [
  {
    name: 'a header and no readings',
    changes: rows(),
    lines: ['data/sessions/a.csv  has a header and no readings. Add the readings, one per line.'],
  },
  {
    name: 'a misspelt column',
    changes: readings('run,sorce,shown,exclude,note', GOOD),
    lines: [at(`1  unknown column "sorce"; ${COLUMNS}. Did you mean source?`)],
  },
  {
    name: 'columns in another order',
    changes: readings('run,shown,source,exclude,note', GOOD),
    lines: [at(`1  the columns are in another order; ${COLUMNS}.`)],
  },
  {
    name: 'a missing column',
    changes: readings('run,source,shown,exclude', GOOD),
    lines: [at(`1  note  this column is missing; ${COLUMNS}.`)],
  },
  {
    name: 'a column too many',
    changes: readings('run,source,shown,exclude,note,mood', GOOD),
    lines: [at(`1  unknown column "mood"; ${COLUMNS}.`)],
  },
  {
    name: 'a column twice',
    changes: readings('run,source,shown,shown,exclude,note', GOOD),
    lines: [at(`1  the column "shown" stands twice; ${COLUMNS}.`)],
  },
  {
    name: 'the columns of another method',
    changes: { ...method('instrument'), ...rows(GOOD) },
    lines: [
      at('1  latency  this column is missing; expected exactly run,latency,exclude,note.'),
      at('1  unknown column "source"; expected exactly run,latency,exclude,note.'),
      at('1  unknown column "shown"; expected exactly run,latency,exclude,note.'),
    ],
  },
  ...[
    [';', 'semicolons'],
    ['\t', 'tabs'],
  ].map(([separator = '', name = '']) => ({
    name: `a file separated by ${name}, with decimal commas`,
    changes: bytes(CSV.replaceAll(',', separator).replaceAll('.', ',')),
    lines: [
      at(
        `1  the columns are separated by ${name}, not by commas. Save the file with comma-separated values, and write decimals with a point: 31.482.`,
      ),
    ],
  })),
  {
    name: 'decimal commas, quoted and not',
    changes: rows(GOOD, '1,"00:31,482","00:31,181",,', '1,00:31,482,00:31,181,,'),
    lines: [
      at(`3  source  expected a time, found "00:31,482"; ${WRITE_TIME}. Write decimals with a point, not a comma.`),
      at(`3  shown  expected a time, found "00:31,181"; ${WRITE_TIME}. Write decimals with a point, not a comma.`),
      at(
        '4  this row has 7 cells; expected 5. Quote a cell that holds a comma, and write decimals with a point: 31.482.',
      ),
    ],
  },
  {
    name: 'a row that ends early',
    changes: rows(GOOD, '1,00:31.482'),
    lines: [at('3  this row has 2 cells; expected 5. Write every comma, also beside an empty cell.')],
  },
  {
    name: 'blank rows among the readings',
    changes: rows(GOOD, '', ',,,,', '1,00:33.482,00:33.181,,'),
    lines: [3, 4].map((line) =>
      at(`${line}  a blank row stands among the readings. Remove it; blank lines are accepted only at the end.`),
    ),
  },
  {
    name: 'a mistake after a note of three lines',
    changes: rows('1,00:31.482,00:31.181,,"one\ntwo\nthree"', '1,00:31.482,x,,'),
    lines: [at(`5  shown  expected a time, found "x"; ${WRITE_TIME}. ${NO_VALUE}`)],
  },
  {
    name: 'a mistake after a note of three lines that end in CRLF',
    changes: bytes(
      'run,source,shown,exclude,note\r\n1,00:31.482,00:31.181,,"one\r\ntwo\r\nthree"\r\n1,00:31.482,x,,\r\n',
    ),
    lines: [at(`5  shown  expected a time, found "x"; ${WRITE_TIME}. ${NO_VALUE}`)],
  },
  {
    name: 'a quote that is never closed, after a note of two lines',
    changes: rows('1,00:31.482,00:31.181,,"one\ntwo"', '1,00:31.482,00:31.181,,"three', GOOD),
    lines: [
      at('4  a quote that opens in this row is never closed. Close it; inside quotes, a quote is written twice: "".'),
    ],
  },
  ...['say "hi"', '"say" hi', ' "say"'].map((note) => ({
    name: `the quotes of ${note}`,
    changes: rows(GOOD, GOOD + note),
    lines: [
      at(
        '3  a quote in this row stands where none can. Quote whole cells, without spaces around; inside quotes, a quote is written twice: "".',
      ),
    ],
  })),
  {
    name: 'runs that skip, go back or are none',
    changes: rows(
      '2,00:31.482,00:31.181,,',
      '4,00:31.482,00:31.181,,',
      '3,00:31.482,00:31.181,,',
      '0,00:31.482,00:31.181,,',
      '1.5,00:31.482,00:31.181,,',
      ',00:31.482,00:31.181,,',
    ),
    lines: [
      at(`2  run  run 2 cannot stand here; expected 1. ${RUNS}`),
      at(`3  run  run 4 cannot stand here; expected 2 or 3. ${RUNS}`),
      at(`4  run  run 3 cannot stand here; expected 4 or 5. ${RUNS}`),
      at('5  run  expected a run number, 1 or more, found "0".'),
      at('6  run  expected a run number, 1 or more, found "1.5".'),
      at('7  run  expected a run number, 1 or more, found "".'),
    ],
  },
  ...[
    '0:3x.181',
    '00:61.482',
    '00:61:00.000',
    '1:00:60.000',
    '1:5.200',
    '31.',
    '.482',
    '1e999',
    'NaN',
    'Infinity',
    '00:00:00:31.482',
    '٣١.482',
    '99999999999999.999',
  ].map((time) => ({
    name: `the time ${time}`,
    changes: rows(GOOD, `1,00:31.482,${time},,`),
    lines: [at(`3  shown  expected a time, found "${time}"; ${WRITE_TIME}. ${NO_VALUE}`)],
  })),
  {
    name: 'a time with a blank before it',
    changes: rows('1, 00:31.482,00:31.181,,'),
    lines: [at(`2  source  expected a time, found " 00:31.482"; ${WRITE_TIME}. Remove the blanks around it.`)],
  },
  {
    name: 'a time that must parse although its reading is excluded',
    changes: rows(GOOD, '1,blurred,,blurred,'),
    lines: [at(`3  source  expected a time, found "blurred"; ${WRITE_TIME}. ${NO_VALUE}`)],
  },
  {
    name: 'times that are missing',
    changes: rows('1,,,,'),
    lines: [at(`2  source  ${EMPTY}`), at(`2  shown  ${EMPTY}`)],
  },
  {
    name: 'a negative time',
    changes: rows('1,00:31.482,-00:31.181,,'),
    lines: [at(`2  shown  must not be negative, found -00:31.181. ${OR_EXCLUDE}`)],
  },
  {
    name: 'mixed decimals, where they first differ',
    changes: rows(GOOD, '1,00:31.5,00:31.181,,', '1,00:31.5,00:31.2,,'),
    lines: [
      at(
        '3  source  "00:31.5" has 1 decimal where the times above have 3. Write every time of a file with the same number of decimals, as the timer shows it.',
      ),
    ],
  },
  {
    name: 'a time shown later than the source',
    changes: rows('1,00:31.181,00:31.482,,'),
    lines: [at(`2  shown  the display shows 00:31.482, later than the source at 00:31.181. ${LATER}`)],
  },
  {
    name: 'a timer that seems to wrap after a minute, an hour, a day',
    changes: rows('1,00:00.181,00:59.982,,', '1,00:00:00.181,00:59:59.999,,', '1,00:00:00.181,23:59:59.999,,'),
    lines: [
      at(`2  ${wrapped('00:59.982', '60 s')}`),
      at(`3  ${wrapped('00:59:59.999', '60 min')}`),
      at(`4  ${wrapped('23:59:59.999', '24 h')}`),
    ],
  },
  {
    name: 'a timer that is said to wrap, shown later or past its end',
    changes: { ...onPit, ...rows('1,00:31.181,00:31.482,,', '1,00:59.900,00:00.100,,', '1,01:00.000,00:59.700,,') },
    lines: [
      at(`2  shown  the display shows 00:31.482, later than the source at 00:31.181. ${LATER}`),
      at(`3  shown  the display shows 00:00.100, later than the source at 00:59.900. ${LATER}`),
      at(
        '4  source  01:00.000 cannot be read off a timer that starts again after 60 s. Correct the reading, or wraps-after in the rig.',
      ),
    ],
  },
  {
    name: 'frame counts that are no numbers, negative or missing',
    changes: {
      ...method('frame-count'),
      ...readings('run,frames,exclude,note', '1,17.5,,', '1,1e999,,', '1,NaN,,', '1,"17,5",,', '1,-3,,', '1,,,'),
    },
    lines: [
      at(`3  frames  expected a plain decimal number, found "1e999"; write 17 or 17.5. ${NO_VALUE}`),
      at(`4  frames  expected a plain decimal number, found "NaN"; write 17 or 17.5. ${NO_VALUE}`),
      at(
        '5  frames  expected a plain decimal number, found "17,5"; write 17 or 17.5. Write decimals with a point, not a comma.',
      ),
      at(`6  frames  must not be negative, found -3. ${OR_EXCLUDE}`),
      at(`7  frames  ${EMPTY}`),
    ],
  },
  {
    name: 'latencies that are no numbers or negative',
    changes: { ...method('instrument'), ...readings('run,latency,exclude,note', '1,Infinity,,', '1,-0.1,,') },
    lines: [
      at(`2  latency  expected a plain decimal number, found "Infinity"; write 17 or 17.5. ${NO_VALUE}`),
      at(`3  latency  must not be negative, found -0.1. ${OR_EXCLUDE}`),
    ],
  },
  {
    name: 'a reason of blanks',
    changes: rows(GOOD, '1,00:31.482,00:31.181, ,'),
    lines: [at('3  exclude  holds only blanks. Write why the reading does not count, or leave the cell empty.')],
  },
  {
    name: 'a session of excluded readings',
    changes: rows('1,00:31.181,00:31.482,misread,', '1,,,blurred,'),
    lines: [
      'data/sessions/a.csv  every reading of this session is excluded. Add a reading that counts, or remove the session.',
    ],
  },
];
