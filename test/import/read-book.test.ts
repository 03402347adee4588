import { utils, write } from '@e965/xlsx';
import { expect, it } from 'vitest';
import { readBook } from '../../src/import/read-book.ts';

const workbook = (rows: number): Uint8Array => {
  const sheet = utils.aoa_to_sheet(Array.from({ length: rows }, (_, row) => [row + 1]));
  const book = utils.book_new();
  utils.book_append_sheet(book, sheet, 'Long');
  return new Uint8Array(write(book, { type: 'buffer', bookType: 'xlsx' }) as Uint8Array);
};

it('a sheet that is too long is refused by its name and never cut; one row less is read whole', async () => {
  await expect(readBook(workbook(20_001), {})).rejects.toThrow('Long: has more than 20000 rows');
  const [book] = await readBook(workbook(20_000), {});
  expect(book?.sheets[0]?.rows.at(-1)?.[0]).toMatchObject({ kind: 'number', value: 20_000 });
});
