import { utils, write } from '@e965/xlsx';
import { expect, it } from 'vitest';
import { readBook } from '../../src/import/read-book.ts';
import { ods, odsText, odsTime } from '../support/workbooks.ts';

const workbook = (rows: number): Uint8Array => {
  const sheet = utils.aoa_to_sheet(Array.from({ length: rows }, (_, row) => [row + 1]));
  const book = utils.book_new();
  utils.book_append_sheet(book, sheet, 'Long');
  return new Uint8Array(write(book, { type: 'buffer', bookType: 'xlsx' }) as Uint8Array);
};

const ROW = [[odsText('1'), odsTime('PT00H00M31.482S', '00:31')]];

it('a sheet that is too long is refused by its name and never cut; one row less is read whole', async () => {
  await expect(readBook(workbook(20_001), {})).rejects.toThrow('Long: has more than 20000 rows');
  const [book] = await readBook(workbook(20_000), {});
  expect(book?.sheets[0]?.rows.at(-1)?.[0]).toMatchObject({ kind: 'number', value: 20_000 });
});

it.each(['first', 'last'] as const)(
  'an OpenDocument spreadsheet is one wherever its type stands in the archive: %s',
  async (type) => {
    const [book] = await readBook(ods('Di', ROW, type), {});
    expect(book?.kind).toBe('OpenDocument spreadsheet');
    // to the millisecond, which a reader of Excel workbooks loses
    expect(book?.sheets[0]?.rows[0]?.[1]).toEqual({ kind: 'duration', text: 'PT00H00M31.482S' });
  },
);

it('one that does not say its type is not taken for something else', async () => {
  await expect(readBook(ods('Di', ROW, 'none'), {})).rejects.toThrow("missing 'mimetype' entry");
});
