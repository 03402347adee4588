/** Workbooks as reviewers keep them, and what is understood of them. All of them invented. */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../src/import/columns.ts';
import { describeUnderstood } from '../../src/import/describe-understood.ts';
import { ImportError, describeMistakes } from '../../src/import/mistakes.ts';
import { readBook } from '../../src/import/read-book.ts';
import type { DelimitedOptions } from '../../src/import/read-delimited.ts';
import { understand, type ImportOptions, type Understood } from '../../src/import/understand.ts';
import { ods, odsNumber, odsText, odsTime, xlsx, type XlsxCell } from '../support/workbooks.ts';

type Said = Partial<Omit<ImportOptions, 'said'>> & DelimitedOptions & { said?: Partial<Record<Role, string>> };

async function importing(bytes: Uint8Array, options: Said = {}): Promise<Understood> {
  const { said = {}, ...rest } = options;
  const columns = new Map(Object.entries(said) as [Role, string][]);
  return understand(await readBook(bytes, options), {
    method: 'two-timers',
    headingRow: undefined,
    ...rest,
    said: columns,
  });
}

async function complaint(bytes: Uint8Array, options: Said = {}): Promise<string> {
  try {
    await importing(bytes, options);
  } catch (error) {
    if (error instanceof ImportError)
      return describeMistakes('desk', error.mistakes).replace('\n\nNothing was written.', '');
    throw error;
  }
  return 'understood';
}

const text = (content: string): Uint8Array => new TextEncoder().encode(content);
const sheet = (...rows: readonly (readonly XlsxCell[])[]): Uint8Array => xlsx([{ name: 'Tue', rows }]);
const taken = ({ rows }: Understood): readonly string[] =>
  rows.map(({ run, values, exclude, note }) => [run, ...values.map((value) => value.taken), exclude, note].join(','));

/** A time as a fraction of a day, by which spreadsheets store it: ECMA-376-1, 18.17.4.2. */
const day = (hours: number, minutes: number, seconds: number): number => hours / 24 + minutes / 1440 + seconds / 86_400;
const time = (seconds: number, format = 'mm:ss.000'): XlsxCell => ({ v: day(0, 0, seconds), format });
const HEAD = ['run', 'source', 'shown'];

describe('a workbook', () => {
  it('has its table found under titles, beside other columns, and named as reviewers name things', async () => {
    const book = sheet(
      ['Lag of the Fenn 3, an invented body'],
      [],
      ['Clip', 'Lag (ms)', 'Timer (phone)', 'On display', 'Remarks', 'Excluded'],
      [1, 165, time(31.482), time(31.317), null, null],
      [1, 164, time(33.905), time(33.741), 'dim', null],
      [null],
      [2, null, time(72.044), time(71.88), 'two values', 'digits overlap'],
      [null, 164.5, null, null, 'average'],
    );
    const understood = await importing(book);
    expect(taken(understood)).toEqual([
      '1,00:31.482,00:31.317,,',
      '1,00:33.905,00:33.741,,dim',
      '2,01:12.044,01:11.880,digits overlap,two values',
    ]);
    expect(describeUnderstood('desk.xlsx', understood).split('\n').slice(0, 6)).toEqual([
      "desk.xlsx: Excel workbook, sheet 'Tue', headings in row 3",
      "  read: run from A 'Clip', source from C 'Timer (phone)', shown from D 'On display', exclude from F 'Excluded', note from E 'Remarks'",
      "  not read: 'Lag (ms)'",
      '  row 8 not read, it holds no reading: 164.5 | average',
      '  6 cells: times of the spreadsheet, which it stores as fractions of a day',
      '  3 readings in 2 clips',
    ]);
  });

  it('keeps every digit of a stored time, whatever is shown of it', async () => {
    // the built-in format 47 shows one decimal; 18 h are beyond the rounding of a small fraction
    const book = sheet(
      HEAD,
      [1, time(31.482, 'mm:ss.0'), time(31.3, 'mm:ss.0')],
      [1, { v: day(18, 5, 7.25), format: 'hh:mm:ss' }, { v: day(18, 5, 7.125), format: 'hh:mm:ss' }],
    );
    expect(taken(await importing(book))).toEqual(['1,00:31.482,00:31.300,,', '1,18:05:07.250,18:05:07.125,,']);
  });

  it.each([false, true])('drops a day that all times share, and names it (days from 1904: %s)', async (date1904) => {
    // 5 July 2011 in either system, from memory of Microsoft's article on them
    const serial = (seconds: number): XlsxCell => ({
      v: (date1904 ? 39_267 : 40_729) + seconds / 86_400,
      format: 'm/d/yy h:mm:ss.000',
    });
    const book = xlsx([{ name: 'Tue', rows: [HEAD, [1, serial(31.482), serial(31.317)]] }], { date1904 });
    const understood = await importing(book);
    expect(taken(understood)).toEqual(['1,00:31.482,00:31.317,,']);
    expect(understood.conversions).toContain('the day 2011-07-05 left out of every time');
  });

  it('fills clips of merged cells, and numbers clips from 1', async () => {
    const rows = [HEAD, [3, time(9.1), time(9)], [null, time(10.1), time(10)], [5, time(11.1), time(11)]];
    const understood = await importing(xlsx([{ name: 'Tue', rows, merged: ['A2:A3'], hiddenRows: [3] }]));
    expect(understood.rows.map(({ run }) => run)).toEqual([1, 1, 2]);
    expect(understood.conversions).toEqual(
      expect.arrayContaining([
        'hidden rows read too: 3',
        '1 row: clip taken from the row above',
        'clips numbered from 1: 3 is 1, 5 is 2',
      ]),
    );
  });

  it('gives numbers back the zeros that a spreadsheet drops, and counts in the unit that is said', async () => {
    const seconds = sheet(HEAD, [1, 31.48, 31.317], [1, 33.9, 33.741]);
    expect(taken(await importing(seconds, { unit: 's' }))).toEqual(['1,31.480,31.317,,', '1,33.900,33.741,,']);
    const milliseconds = sheet(HEAD, [1, 31480, 31317.5]);
    expect(taken(await importing(milliseconds, { unit: 'ms' }))).toEqual(['1,31.4800,31.3175,,']);
  });

  it('of OpenDocument keeps the digits of times', async () => {
    const book = ods('Di', [
      HEAD.map(odsText),
      [odsNumber(1), odsTime('PT00H00M31.482S', '00:31'), odsTime('PT00H00M31.317S', '00:31')],
      [odsNumber(1), odsTime('PT01H00M33.905S', '1:00:34'), odsTime('PT01H00M33.741S', '1:00:34')],
    ]);
    expect(taken(await importing(book))).toEqual(['1,00:31.482,00:31.317,,', '1,01:00:33.905,01:00:33.741,,']);
  });

  it('holds counted frames and latencies as numbers', async () => {
    const frames = sheet(['clip', 'frames'], [1, 12], [2, 13]);
    expect(taken(await importing(frames, { method: 'frame-count' }))).toEqual(['1,12,,', '2,13,,']);
    const latencies = text('clip;latency\n1;163,4\n1;162,9\n');
    const options = { method: 'instrument', unit: 'ms', decimal: 'comma' } as const;
    expect(taken(await importing(latencies, options))).toEqual(['1,163.4,,', '1,162.9,,']);
  });
});

describe('text in columns', () => {
  it.each([
    ['semicolons and decimal commas', 'Titel\n\nrun;source;shown;note\n1;00:31,482;00:31,317;"a; b"\n'],
    ['tabs', 'run\tsource\tshown\tnote\r\n1\t00:31.482\t00:31.317\ta; b\r\n'],
    ['commas, with a byte order mark', '\ufeffrun,source,shown,note\n1,"00:31,482","00:31,317",a; b\n'],
  ])('is read with %s', async (_what, content) =>
    expect(taken(await importing(text(content)))).toEqual(['1,00:31.482,00:31.317,,a; b']),
  );

  it('is read in the encoding that is said, or that its first bytes say', async () => {
    const latin = new Uint8Array([...text('run;source;shown;note\n1;0:31.482;0:31.317;'), 0xfc, 0x0a]);
    expect(await complaint(latin)).toBe(
      'desk: is no UTF-8 text. Say how its letters are stored, for example --encoding windows-1252, or save it as UTF-8.',
    );
    expect(taken(await importing(latin, { encoding: 'windows-1252' }))).toEqual(['1,0:31.482,0:31.317,,ü']);
    const wide = Buffer.from('\ufeffrun\tsource\tshown\n1\t0:31.482\t0:31.317\n', 'utf16le');
    expect(taken(await importing(new Uint8Array(wide)))).toEqual(['1,0:31.482,0:31.317,,']);
  });
});

describe('what cannot be known is asked for by the option that says it', () => {
  const ROW = [1, time(31.482), time(31.317)];
  it.each<readonly [string, Uint8Array, Said, string]>([
    [
      'no headings that are known',
      sheet(['a', 'b', 'c'], [1, 'x', 'y']),
      {},
      "desk: no row has the headings source and shown. Say what stands where: --column source=HEADING --column shown=HEADING, with a heading or the letter of a column; --heading-row 0 where there are no headings. It holds\n  sheet 'Tue', row 1: a | b | c\n  sheet 'Tue', row 2: 1 | x | y\n.",
    ],
    [
      'a heading that stands twice',
      sheet(['run', 'source', 'shown', 'Shown'], [1, time(2), time(1), time(1)]),
      {},
      "desk, sheet 'Tue': 'shown' stands above several columns. Say which: --column shown=C or --column shown=D.",
    ],
    [
      'readings on several sheets',
      xlsx([
        { name: 'Mon', rows: [HEAD, ROW] },
        { name: 'Tue', rows: [HEAD, ROW] },
      ]),
      {},
      'desk: holds readings on several sheets. Say which: --sheet "Mon" or --sheet "Tue".',
    ],
    ['a sheet that is none', sheet(HEAD, ROW), { sheet: 'Mon' }, "desk: has no sheet 'Mon'; it has 'Tue'."],
    [
      'plain numbers',
      sheet(HEAD, [1, 31.482, 31.317]),
      {},
      "desk, sheet 'Tue', B2; sheet 'Tue', C2: holds a plain number. Say what it counts: --unit s for seconds, --unit ms for milliseconds.",
    ],
    [
      'a comma before three digits',
      text('run;source;shown\n1;31,482;31,317\n'),
      { unit: 's' },
      'desk, B2; C2: holds a number with three digits behind a comma. Say whether its mark stands before decimals: --decimal comma. If it groups thousands, take the groups out of the file.',
    ],
    [
      'plain numbers with commas, of which neither unit nor mark is said: both at once',
      text('run;source;shown\n1;31,482;31,317\n'),
      {},
      'desk, B2; C2: holds a number with three digits behind a comma. Say what it counts: --unit s for seconds, --unit ms for milliseconds; and whether its mark stands before decimals: --decimal comma. If it groups thousands, take the groups out of the file.',
    ],
    [
      'plain numbers with points, of which milliseconds would be asked for more',
      text('run;source;shown\n1;31.482;31.317\n'),
      {},
      'desk, B2; C2: holds a plain number. Say what it counts: --unit s for seconds, --unit ms for milliseconds (then also --decimal point, unless its mark groups thousands).',
    ],
    [
      'no unit said, and zeros dropped: both at once',
      text('run;source;shown\n1;1131.482;1131.31\n'),
      {},
      'desk, B2; C2: holds a plain number. Say what it counts: --unit s for seconds, --unit ms for milliseconds.\ndesk, C2: has 2 decimals where others have 3. If zeros at the end were dropped, say --decimals 3.',
    ],
    [
      'hours and minutes',
      sheet(HEAD, [1, { v: day(0, 31, 12), format: 'h:mm' }, time(31)]),
      {},
      "desk, sheet 'Tue', B2: shows hours and minutes. Say what was typed: --clock mm:ss for minutes and seconds, --clock hh:mm for hours and minutes.",
    ],
    [
      'times of several days',
      sheet(HEAD, [1, { v: 40_729.5, format: 'm/d/yy h:mm:ss' }, { v: 40_730.5, format: 'm/d/yy h:mm:ss' }]),
      {},
      "desk, sheet 'Tue', B2: times stand on several days (2011-07-05, 2011-07-06). A timer shows no day: take it out of the cells.",
    ],
    [
      'a time with more digits than a timer has',
      sheet(HEAD, [1, time(31.482_123_456_7), time(31)]),
      {},
      "desk, sheet 'Tue', B2: holds 31.4821234567 s, more digits than a timer shows. Say how many decimals count: --decimals 3.",
    ],
    [
      'typed times of several decimals',
      text('run;source;shown\n1;0:31.48;0:31.317\n'),
      {},
      'desk, B2: has 2 decimals where others have 3. If zeros at the end were dropped, say --decimals 3.',
    ],
    [
      'no column of clips',
      sheet(HEAD.slice(1), [time(2), time(1)]),
      {},
      "desk, sheet 'Tue': no column says of which clip a reading is. Say which does, with --column run=HEADING; or --clips one if all rows are of one clip, --clips blank-rows if an empty row stands between clips.",
    ],
    [
      'a clip that is not said',
      sheet(HEAD, ROW, [null, time(2), time(1)]),
      {},
      "desk, sheet 'Tue', A3: does not say of which clip the row is. Fill it in; or say --clips fill-down if it is that of the row above.",
    ],
    [
      'an average below the readings',
      sheet(HEAD, ROW, ['Average', { xml: '<c><f>AVERAGE(B2:B2)</f><v>0.0003</v></c>' }, time(1)]),
      {},
      "desk, sheet 'Tue', B3: is computed by a formula, and a reading is typed. Leave such rows out with --rows FROM-TO; or say --computed if it is what was read.\ndesk, sheet 'Tue', A3: 'Average' is no clip number like the others. Leave such rows out with --rows FROM-TO, or say --clips labels.\ndesk, sheet 'Tue', B3: holds a plain number. Say what it counts: --unit s for seconds, --unit ms for milliseconds.",
    ],
    [
      'a mark in place of a reason',
      sheet([...HEAD, 'exclude'], ROW, [1, time(9), time(8), 'x']),
      {},
      "desk, sheet 'Tue', D3: 'x' does not say why the reading is left out. Write the reason there, or say it once for all such marks: --reason \"digits overlap\".",
    ],
    [
      'a value that is an error, and one that is missing',
      sheet(HEAD, [1, { xml: '<c t="e"><v>#REF!</v></c>' }, time(1)]),
      {},
      "desk, sheet 'Tue', B2: holds #REF!, no value. Type what was read.",
    ],
    [
      'half a reading',
      sheet(HEAD, ROW, [1, time(2)]),
      {},
      "desk, sheet 'Tue', C3: is empty, and the row has no reason under exclude. Fill it in, or leave the row out with --rows FROM-TO.",
    ],
    [
      'decimal commas that became separators',
      text('run,source,shown\n1,00:31,482,00:31,317\n'),
      {},
      'desk, row 2: has more cells than the 3 columns that have a heading. Where a decimal comma was taken for a separator, save the file with semicolons.',
    ],
    [
      'a clip that begins again',
      sheet(HEAD, ROW, [2, time(2), time(1)], [1, time(4), time(3)]),
      {},
      "desk, sheet 'Tue', A4: clip '1' begins again after another. Sort the rows by clip, or correct the number.",
    ],
    [
      'a damaged workbook',
      text('PK\u0003\u0004 and nothing more'),
      {},
      expect.stringMatching(/^desk: cannot be read as a workbook \(.+\)\. Open it/) as string,
    ],
    [
      'text without columns',
      text('hello\n'),
      {},
      'desk: has no columns. Save it with semicolons, commas or tabs between them, or say which character stands there with --separator.',
    ],
  ])('%s', async (_what, bytes, options, expected) => expect(await complaint(bytes, options)).toEqual(expected));

  it.each<readonly [string, Uint8Array, Said, readonly string[]]>([
    [
      'no headings',
      sheet([1, time(2), time(1)]),
      { headingRow: 0, said: { run: 'A', source: 'B', shown: 'C' } },
      ['1,00:02.000,00:01.000,,'],
    ],
    ['rows', sheet(HEAD, ROW, [1, 'sum', 'sum']), { rows: [2, 2] }, ['1,00:31.482,00:31.317,,']],
    [
      'minutes and seconds',
      sheet(HEAD, [1, { v: day(31, 12, 0), format: 'h:mm' }, { v: day(31, 11, 0), format: 'h:mm' }]),
      { clock: 'mm:ss' },
      ['1,31:12,31:11,,'],
    ],
    ['decimals', text('run;source;shown\n1;0:31.48;0:31.317\n'), { decimals: 3 }, ['1,0:31.480,0:31.317,,']],
    [
      'rounded decimals',
      sheet(HEAD, [1, time(31.482_123_456_7), time(31)]),
      { decimals: 3 },
      ['1,00:31.482,00:31.000,,'],
    ],
    [
      'a decimal comma',
      text('run;source;shown\n1;31,482;31,317\n'),
      { unit: 's', decimal: 'comma' },
      ['1,31.482,31.317,,'],
    ],
    ['one clip', sheet(HEAD.slice(1), [time(2), time(1)]), { clips: 'one' }, ['1,00:02.000,00:01.000,,']],
    [
      'blank rows between clips',
      sheet(HEAD.slice(1), [time(2), time(1)], [], [time(4), time(3)]),
      { clips: 'blank-rows' },
      ['1,00:02.000,00:01.000,,', '2,00:04.000,00:03.000,,'],
    ],
    [
      'names of clips',
      sheet(HEAD, ['C12', time(2), time(1)], ['C13', time(4), time(3)]),
      { clips: 'labels' },
      ['1,00:02.000,00:01.000,,', '2,00:04.000,00:03.000,,'],
    ],
    [
      'a reason',
      sheet([...HEAD, 'exclude'], [1, time(9), time(8), 'x']),
      { reason: 'digits overlap' },
      ['1,00:09.000,00:08.000,digits overlap,'],
    ],
  ])('and %s can be said', async (_what, bytes, options, expected) => {
    expect(taken(await importing(bytes, options))).toEqual(expected);
  });
});
