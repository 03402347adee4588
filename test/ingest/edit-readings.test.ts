import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editFrontMatter } from '../../src/ingest/edit-front-matter.ts';
import { addRow, replaceCells, replaceRow } from '../../src/ingest/edit-readings.ts';
import { parseCsv } from '../../src/ingest/csv.ts';

const HEADER = 'run,source,shown,exclude,note';

describe('a row more', () => {
  it.each([
    ['in an empty file', `${HEADER}\n`, ['1', '2', '1', '', ''], `${HEADER}\n1,2,1,,\n`],
    ['after the last row', `${HEADER}\n1,2,1,,\n`, ['2', '3', '1', '', ''], `${HEADER}\n1,2,1,,\n2,3,1,,\n`],
    [
      'after the last of its run',
      `${HEADER}\n1,2,1,,\n2,9,8,,\n`,
      ['1', '3', '2', '', ''],
      `${HEADER}\n1,2,1,,\n1,3,2,,\n2,9,8,,\n`,
    ],
    ['where the last line has no end', `${HEADER}\n1,2,1,,`, ['1', '3', '2', '', ''], `${HEADER}\n1,2,1,,\n1,3,2,,\n`],
    [
      'with the line ends of the file',
      `${HEADER}\r\n1,2,1,,\r\n`,
      ['1', '3', '2', '', ''],
      `${HEADER}\r\n1,2,1,,\r\n1,3,2,,\r\n`,
    ],
    ['before blank lines', `${HEADER}\n1,2,1,,\n\n\n`, ['1', '3', '2', '', ''], `${HEADER}\n1,2,1,,\n1,3,2,,\n\n\n`],
    [
      'with quotes where they are needed',
      `${HEADER}\n`,
      ['1', '', '', 'glare, and "blur"', ''],
      `${HEADER}\n1,,,"glare, and ""blur""",\n`,
    ],
  ])('%s', (_where, text, cells, expected) => expect(addRow(text, cells)).toBe(expected));

  it('stands after a row whose cell holds a line break', () => {
    const text = `${HEADER}\n1,2,1,"torn\nframe",\n1,4,3,,\n`;
    expect(addRow(text, ['1', '6', '5', '', ''])).toBe(`${text}1,6,5,,\n`);
  });
});

describe('other cells in a row', () => {
  const text = `${HEADER}\n1,2,1,"torn\nframe",\n1,4,3,,kept as it is\n`;

  it('leave every other row as it is', () => {
    expect(replaceRow(text, 4, ['1', '5', '3', '', ''])).toBe(`${HEADER}\n1,2,1,"torn\nframe",\n1,5,3,,\n`);
    expect(replaceRow(text, 2, ['1', '2', '1', '', ''])).toBe(`${HEADER}\n1,2,1,,\n1,4,3,,kept as it is\n`);
  });

  it('are refused where no row starts', () => {
    for (const line of [1, 3, 5, 99]) expect(replaceRow(text, line, ['1', '5', '3', '', ''])).toBeUndefined();
  });

  it('are put in by their columns, in several rows at once', () => {
    const edits = new Map([
      [2, { exclude: '' }],
      [4, { source: '5', note: 'read again, "closely"' }],
    ]);
    expect(replaceCells(text, edits)).toBe(`${HEADER}\n1,2,1,,\n1,5,3,,"read again, ""closely"""\n`);
    expect(replaceCells(text.replaceAll('\n', '\r\n'), new Map([[4, { shown: '' }]]))).toBe(
      `${HEADER}\r\n1,2,1,"torn\r\nframe",\r\n1,4,,,kept as it is\r\n`,
    );
  });

  it('are read back by the parser of a build, whatever they hold, and so are those of the other rows', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', ',', '"', '\n', ' ', 'é', ';') });
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 6 }), (rows) => {
        const written = rows.reduce((all, [a, b]) => addRow(all, ['1', 'x', 'y', a, b]), `${HEADER}\n`);
        const read: string[][] = [];
        parseCsv(new TextEncoder().encode(written), HEADER.split(','), fail, ({ cells }) => read.push([...cells]));
        expect(read).toEqual(rows.map(([a, b]) => ['1', 'x', 'y', a, b]));
      }),
    );
  });
});

function fail(problem: object): never {
  throw new Error(JSON.stringify(problem));
}

describe('front matter with other values', () => {
  const text =
    '---\n# Plan: three clips.\nplanned: true\nbody: a # the new one\nsettings:\n  rate: 25\n---\n\nA note: date: none.\n';

  it.each([
    [
      'a key more, before the settings',
      { date: '2026-05-02' },
      text.replace('settings:', 'date: 2026-05-02\nsettings:'),
    ],
    ['another value', { body: 'b' }, text.replace('body: a # the new one', 'body: b')],
    ['a key less', { planned: undefined }, text.replace('planned: true\n', '')],
    [
      'what YAML would take for something else, in quotes',
      { room: '21: °C' },
      text.replace('settings:', 'room: "21: °C"\nsettings:'),
    ],
  ])('%s', (_what, values, expected) => expect(editFrontMatter(text, values)).toBe(expected));

  it('keeps the line ends of the file', () => {
    const windows = text.replaceAll('\n', '\r\n');
    expect(editFrontMatter(windows, { planned: undefined })).toBe(windows.replace('planned: true\r\n', ''));
  });
});
