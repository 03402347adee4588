import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { describeCoverageTable } from '../../src/views/coverage.ts';

interface Row {
  readonly total: { readonly coverage: number };
  readonly textbook: { readonly coverage: number };
  readonly fault?: true;
}
const { rows } = JSON.parse(
  readFileSync(new URL('../../src/analysis/coverage-table.json', import.meta.url), 'utf8'),
) as { rows: readonly Row[] };

it('says every row of the table, and singles out the one in which the textbook keeps least', () => {
  const text = describeCoverageTable();
  expect(text.rows).toHaveLength(rows.length);
  expect(text.level).toBe('95 %');
  // of benches that behave as the model says: elsewhere nobody expects the textbook to hold
  const least = Math.min(...rows.filter(({ fault }) => !fault).map(({ textbook }) => textbook.coverage));
  expect(text.worst.textbookCoverage).toBe(`${(least * 100).toFixed(1)} %`);
  const pairs = JSON.parse(
    readFileSync(new URL('../../src/analysis/pair-coverage-table.json', import.meta.url), 'utf8'),
  ) as { rows: readonly { readonly difference: { readonly coverage: number } }[] };
  expect(text.pairs.map(({ coverage }) => coverage)).toEqual(
    pairs.rows.map(({ difference }) => `${(difference.coverage * 100).toFixed(1)} %`),
  );
  expect(text.rows.map(({ coverage }) => coverage)).toEqual(
    rows.map(({ total }) => `${(total.coverage * 100).toFixed(1)} %`),
  );
});
