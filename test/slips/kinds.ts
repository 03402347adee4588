/**
 * Single slips of the demonstration's files: each kind takes a text and a number from 0 to 1, and changes one place.
 */
type Draw = () => number;
type Kind = (text: string, draw: Draw) => string | undefined;

const pick = <T>(list: readonly T[], draw: Draw): T | undefined => list[Math.floor(draw() * list.length)];

/** Changes the cells of one row of a readings file. */
const inRow =
  (change: (cells: string[], draw: Draw) => void): Kind =>
  (text, draw) => {
    const lines = text.split('\n');
    const at = 1 + Math.floor(draw() * (lines.filter((line) => line !== '').length - 1));
    const cells = (lines[at] ?? '').split(',');
    change(cells, draw);
    lines[at] = cells.join(',');
    return lines.join('\n');
  };

const values = (cells: readonly string[]): readonly number[] =>
  Array.from({ length: cells.length - 3 }, (_, index) => index + 1);

/** Replaces one digit of a value at this place from its end: 0 is the last digit. */
const digit = (place: number): Kind =>
  inRow((cells, draw) => {
    const at = pick(values(cells), draw) ?? 1;
    const cell = cells[at] ?? '';
    const digits = [...cell.matchAll(/\d/g)].map(({ index }) => index);
    const index = digits.at(-1 - place);
    if (index === undefined) return;
    const other = String((Number(cell[index]) + 1 + Math.floor(draw() * 9)) % 10);
    cells[at] = cell.slice(0, index) + other + cell.slice(index + 1);
  });

const pattern =
  (search: RegExp, by: string): Kind =>
  (text) =>
    search.test(text) ? text.replace(search, by) : undefined;

const excludeWith = (word: string): Kind =>
  inRow((cells) => {
    cells[cells.length - 2] = word;
  });

/** What one may do to a readings file. */
export const CSV_KINDS: Readonly<Record<string, Kind>> = {
  'last digit': digit(0),
  'second last digit': digit(1),
  'third last digit': digit(2),
  'digit of the seconds': digit(3),
  'digit of the tens of seconds': digit(4),
  'digit of the minutes': digit(5),
  'no under exclude': excludeWith('no'),
  '0 under exclude': excludeWith('0'),
  'keep under exclude': excludeWith('keep'),
  'false under exclude': excludeWith('false'),
  'keep this one under exclude': excludeWith('keep this one'),
  'not excluded under exclude': excludeWith('not excluded'),
  'an invisible reason': excludeWith('\u200b'),
  'a reason in the note': inRow((cells) => {
    cells[cells.length - 1] = 'excluded';
  }),
  'a comma in a note': (text, draw) =>
    inRow((cells) => {
      cells.splice(-2, 2, 'slight blur', ' readable');
    })(text, draw),
  'all rows pasted twice': (text) => `${text.trimEnd()}\n${text.trimEnd().split('\n').slice(1).join('\n')}\n`,
  'a clip pasted as a further one': (text) => {
    const rows = text.trimEnd().split('\n');
    const last = Number(rows.at(-1)?.split(',')[0]);
    const again = rows.filter((row) => row.startsWith('1,')).map((row) => `${last + 1}${row.slice(1)}`);
    return again.length < 4 ? undefined : [...rows, ...again, ''].join('\n');
  },
  'a row pasted twice': (text, draw) => {
    const lines = text.trimEnd().split('\n');
    const at = 1 + Math.floor(draw() * (lines.length - 1));
    return [...lines.slice(0, at + 1), ...lines.slice(at), ''].join('\n');
  },
  'two rows exchanged': (text, draw) => {
    const lines = text.trimEnd().split('\n');
    const at = 1 + Math.floor(draw() * (lines.length - 2));
    const [first = '', second = ''] = lines.slice(at, at + 2);
    return [...lines.slice(0, at), second, first, ...lines.slice(at + 2), ''].join('\n');
  },
  'rounded to a second': (text) => text.replace(/(:\d\d)\.\d+/g, '$1'),
  'rounded to a tenth': (text) => text.replace(/(:\d\d\.\d)\d+/g, '$1'),
  'in seconds': (text) =>
    text.replace(/^(\d+,)(\d+\.\d)(,)/gm, (_, run, ms, end) => `${run}${Number(ms) / 1000}${end}`),
  'semicolons in the rows': (text) => text.replace(/\n.*/gs, (rows) => rows.replaceAll(',', ';')),
  'every reading a run': (text) => {
    let run = 0;
    return text.replace(/^\d+(?=,)/gm, () => {
      run += 1;
      return String(run);
    });
  },
  'columns exchanged': pattern(/source,shown/, 'shown,source'),
  'a row cut short': inRow((cells) => void cells.splice(-2)),
  'a formula in a note': inRow((cells) => {
    cells[cells.length - 1] = '=SUM(A1)';
  }),
};

/** What one may do to the front matter of a session. */
export const SESSION_KINDS: Readonly<Record<string, Kind>> = {
  'a setting left out': pattern(/^ {2}sync: .*\n/m, ''),
  'a misspelt key': pattern(/^firmware/m, 'firmwear'),
  'a version without its zero': pattern(/^firmware: "(\d+\.\d*[1-9])0?"/m, 'firmware: "$10"'),
  'a version with a word': pattern(/^firmware: "([^"]*)"/m, 'firmware: "$1 beta"'),
  'a year too far': pattern(/^date: 2026/m, 'date: 2062'),
  'a year too early': pattern(/^date: 2026/m, 'date: 0206'),
  'an unknown level': pattern(/rate: .*/, 'rate: 48'),
  'a key of the language': pattern(/^ {2}sync/m, '  __proto__'),
  'a tab before a setting': pattern(/^ {2}sync:/m, '\tsync:'),
  'no blank after a colon': pattern(/^rig: /m, 'rig:'),
  'a quotation mark left open': pattern(/^firmware: "([^"]*)"/m, 'firmware: "$1'),
  'a colon in a value': pattern(/^room: (.*)$/m, 'room: hall: $1'),
  'a setting indented further': pattern(/^ {2}sync:/m, '   sync:'),
  'a setting twice, in quotes': pattern(/^( {2})(sync): (.*)$/m, '$110: a\n$1"10": b'),
};

/** What one may do to a rig, a display or a body. */
export const RIG_KINDS: Readonly<Record<string, Kind>> = {
  'a scan-out in seconds': pattern(/scan-out: (\d+) ms/, 'scan-out: $1 s'),
  'a readout in seconds': pattern(/readout: (\d+) ms/, 'readout: $1 s'),
  'an exposure longer than a frame': pattern(/exposure: 1\/\d+ s/, 'exposure: 1/2 s'),
  'an absurd tolerance': pattern(/tolerance: \d+ ppm/, 'tolerance: 999999 ppm'),
  'an absurd refresh': pattern(/refresh: \d+/, 'refresh: 1/999999999'),
  'a latency in seconds': pattern(/value: (\S+) ms/, 'value: $1 s'),
  'a latency in microseconds': pattern(/value: (\S+) ms/, 'value: $1 us'),
  'a latency a hundred times too long': pattern(/value: (\d+)\.(\d+) ms/, 'value: $1$200 ms'),
  'an uncertainty in microseconds': pattern(/uncertainty: (\S+) ms/, 'uncertainty: $1 us'),
  'an uncertainty in seconds': pattern(/uncertainty: (\S+) ms/, 'uncertainty: $1 s'),
  'a row below the picture': pattern(/-row: 0\./, '-row: 10.'),
  'an early new start': pattern(/wraps-after: \d+ s/, 'wraps-after: 10 s'),
  'a late new start': pattern(/wraps-after: (\d+) s/, 'wraps-after: $10 s'),
  'a new start one second late': pattern(/wraps-after: 100 s/, 'wraps-after: 101 s'),
  'a new start in minutes': pattern(/wraps-after: (\d+) s/, 'wraps-after: $1 min'),
  'a quotation left open in a name': pattern(/^name: (.*)$/m, 'name: "$1'),
  'a key misspelt': pattern(/^name:/m, 'nmae:'),
};
