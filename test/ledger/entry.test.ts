import { expect, it } from 'vitest';
import { entryName } from '../../src/ledger/entry.ts';

it.each([
  ['One reading of the Orrin was mistyped; mended.', '2026-05-02-one-reading-of-the-orrin-was'],
  ['Zürich, später', '2026-05-02-zurich-spater'],
  ['读数', '2026-05-02-record'],
])('names the entry "%s" by its day and first words', (reason, name) =>
  expect(entryName('2026-05-02', reason)).toBe(name),
);
