import { expect, it } from 'vitest';
import { entryName } from '../../src/ledger/entry.ts';

it.each([
  ['One reading of the Vennick was mistyped; mended.', '2026-05-02-one-reading-of-the-vennick-was-0123ab'],
  ['Zürich, später', '2026-05-02-zurich-spater-0123ab'],
  ['读数', '2026-05-02-record-0123ab'],
])('names the entry "%s" by its day and first words', (reason, name) =>
  expect(entryName('2026-05-02', reason, '0123abcdef')).toBe(name),
);
