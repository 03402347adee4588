import fc from 'fast-check';
import { expect, it } from 'vitest';
import { entryOf } from '../../src/ledger/entry.ts';
import { renderEntry, renderFigures, renderInputs } from '../../src/ingest/render-ledger.ts';
import { digestOf, type Statement } from '../../src/ledger/statements.ts';
import type { Changes } from '../../src/ledger/compare.ts';
import { readChanged } from '../support/bench-folder.ts';

const SUM = 'b'.repeat(64);
const inputs = { analysis: '1', checksums: { 'data/sessions/z.csv': SUM, 'data/bodies/a.md': SUM } };
const base: Statement = {
  id: 'total/a',
  text: '308 ± 54 ms',
  value: 307.5,
  low: 254,
  high: 362,
  files: digestOf(['x']),
  sources: ['x'],
};

it('writes one figure a line, sorted by id, whatever the order of the register', () => {
  expect(renderFigures([base, { id: 'body/z', text: 'Zed (Zed, "Z")', files: '0123abcd', sources: [] }])).toBe(
    `id,text,value,low,high,files\nbody/z,"Zed (Zed, ""Z"")",,,,0123abcd\ntotal/a,308 ± 54 ms,307.5,254,362,${base.files}\n`,
  );
});

it('writes each input once, sorted', () => {
  expect(renderInputs(inputs)).toBe(`input,state\nanalysis,1\ndata/bodies/a.md,${SUM}\ndata/sessions/z.csv,${SUM}\n`);
});

it('names a set of files whatever their order', () => {
  expect(digestOf(['a', 'b'])).toBe(digestOf(['b', 'a']));
  expect(digestOf(['a', 'b'])).not.toBe(digestOf(['a', 'b', 'c']));
});

it('reads back what it writes, whatever the texts and numbers', async () => {
  const special = fc.string({
    unit: fc.constantFrom('"', ',', "'", '\n', ': ', '#', '{', ' ', 'x', '−', '±'),
    minLength: 1,
    maxLength: 6,
  });
  const text = fc
    .oneof(special, fc.string({ unit: 'grapheme', minLength: 1 }))
    .filter((each) => each.trim() !== '' && !/[\0\r]/.test(each) && each.isWellFormed());
  const number = fc
    .double({ noNaN: true })
    .map((value) => Number(value.toPrecision(10)))
    .filter((value) => !Object.is(value, -0));
  const statement = fc.record({ text, value: number, low: number, high: number });
  await fc.assert(
    fc.asyncProperty(fc.array(statement, { minLength: 1, maxLength: 5 }), text, async (list, reason) => {
      const statements = list.map(
        (each, index): Statement => ({ id: `total/${index}`, files: digestOf([String(index)]), sources: [], ...each }),
      );
      const changes: Changes = {
        moved: list.map((each, index) => ({
          id: `total/${index}`,
          from: each.text,
          to: reason,
          line: 2,
          causes: [{ kind: 'changed', file: 'x', own: true }],
        })),
        gone: [{ id: 'total/z', from: reason, line: 3, causes: [{ kind: 'regrouped' }] }],
        added: ['mean/a', 'mean/b', 'total/q'],
        unchanged: 0,
      };
      const entry = entryOf(changes, reason, '2026-05-02', '1');
      const { ledger } = await readChanged({
        'content/ledger/figures.csv': renderFigures(statements),
        'content/ledger/inputs.csv': renderInputs(inputs),
        'content/ledger/entries/2026-05-02-x.yaml': renderEntry(entry),
      });
      expect(ledger?.figures.map(({ line: _, ...figure }) => figure)).toEqual(
        statements.map(({ sources: _, ...figure }) => figure),
      );
      expect(ledger?.checksums).toEqual(inputs.checksums);
      expect(ledger?.entries).toEqual([{ id: '2026-05-02-x', ...entry }]);
      expect(entry.added).toEqual({ mean: 2, total: 1 });
    }),
    { numRuns: 25, seed: 20260502 },
  );
});

it('gives the latest entry first, whatever its name', async () => {
  const { ledger } = await readChanged({
    'content/ledger/figures.csv': renderFigures([base]),
    'content/ledger/inputs.csv': renderInputs(inputs),
    ...Object.fromEntries(
      [
        ['a', '2026-05-02'],
        ['b', '2026-06-01'],
        ['c', '2026-05-09'],
      ].map(([id, date]) => [`content/ledger/entries/${id}.yaml`, `date: ${date}\nreason: why\nanalysis: "1"\n`]),
    ),
  });
  expect(ledger?.entries.map(({ date }) => date)).toEqual(['2026-06-01', '2026-05-09', '2026-05-02']);
});
