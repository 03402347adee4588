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

it('sums up what behaves as described, and what does not, by the least and the most of its rows', () => {
  const { summary, pairSummary } = describeCoverageTable();
  const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;
  for (const { asTold, kinds, holds } of summary) {
    const these = rows.filter(({ fault }) => asTold !== (fault === true)).map(({ total }) => total.coverage);
    these.sort((a, b) => a - b);
    expect(kinds).toBe(these.length);
    expect([holds.least, holds.most]).toEqual([percent(these[0] ?? NaN), percent(these.at(-1) ?? NaN)]);
  }
  expect(summary.map(({ asTold }) => asTold)).toEqual([true, false]);
  expect(summary.reduce((sum, { kinds }) => sum + kinds, 0)).toBe(rows.length);
  expect(pairSummary.every(({ kinds }) => kinds > 5)).toBe(true);
});
