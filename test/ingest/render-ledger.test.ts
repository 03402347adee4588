import fc from 'fast-check';
import { expect, it } from 'vitest';
import { renderChanges, renderEntry, renderFigures, renderInputs } from '../../src/ingest/render-ledger.ts';
import { chained } from '../../src/ledger/entry.ts';
import { digestOf } from '../../src/ledger/digest.ts';
import { applyEntry } from '../../src/ledger/apply-entry.ts';
import { replay } from '../../src/ledger/replay.ts';
import type { Cause, Change, Published } from '../../src/model/ledger.ts';
import { readChanged } from '../support/bench-folder.ts';

const SUM = 'b'.repeat(64);
const inputs = { analysis: '1', checksums: { 'data/sessions/z.csv': SUM, 'data/bodies/a.md': SUM } };
const base: Published = {
  id: 'total/a',
  text: '308 ± 54 ms',
  value: 307.5,
  low: 254,
  high: 362,
  also: 'u 27; degrees of freedom ∞',
  files: digestOf(['x']),
};

it('writes one figure a line, sorted by id, whatever the order of the register', () => {
  expect(renderFigures([base, { id: 'body/z', text: 'Zed (Zed, "Z")', files: '0123abcd' }])).toBe(
    `id,text,value,low,high,also,files\nbody/z,"Zed (Zed, ""Z"")",,,,,0123abcd\ntotal/a,308 ± 54 ms,307.5,254,362,u 27; degrees of freedom ∞,${base.files}\n`,
  );
});

it('writes each input once, sorted, after what the last entry says', () => {
  expect(renderInputs(inputs, SUM)).toBe(
    `input,state\nanalysis,1\nledger,${SUM}\ndata/bodies/a.md,${SUM}\ndata/sessions/z.csv,${SUM}\n`,
  );
});

it('names a set of files whatever their order', () => {
  expect(digestOf(['a', 'b'])).toBe(digestOf(['b', 'a']));
  expect(digestOf(['a', 'b'])).not.toBe(digestOf(['a', 'b', 'c']));
});

const CAUSES: readonly (readonly Cause[])[] = [
  [
    { kind: 'changed', file: 'x', own: true },
    { kind: 'new', file: 'y: #', own: false },
    { kind: 'gone', file: 'z', own: true },
  ],
  [{ kind: 'renamed', from: 'data/sessions/a', to: 'data/sessions/b' }],
  [{ kind: 'analysis', from: '1', to: '1.10' }],
  [{ kind: 'regrouped' }],
  [{ kind: 'code', analysis: '2' }],
];

it('reads back what it writes, whatever the texts, numbers and names', async () => {
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
  // a level may be named with blanks and slashes, and stands in ids of figures
  const name = fc.constantFrom('a', 'S-Log 3', '1/50', '24000/1001', '4:2:2, "x"');
  const row = fc.record({ text, value: number, low: number, high: number, also: text, name });
  await fc.assert(
    fc.asyncProperty(fc.array(row, { minLength: 1, maxLength: 5 }), text, async (list, reason) => {
      const rows = list.map(
        ({ name: of, ...each }, index): Published => ({ id: `effect/${index}/${of}`, files: digestOf([of]), ...each }),
      );
      const changes: readonly Change[] = [
        ...rows.map((now, index) => ({ line: index + 2, id: now.id, now, cause: (index % CAUSES.length) + 1 })),
        { line: 0, id: 'input/analysis', now: { id: 'input/analysis', text: '1', files: '' } },
      ];
      const words = reason.trim().replace(/\s+/g, ' ');
      const entry = chained(
        { date: '2026-05-02', reason: words, analysis: '1', causes: CAUSES, changes },
        undefined,
        'content/ledger/entries',
      );
      const { ledger } = await readChanged({
        'content/ledger/figures.csv': renderFigures(rows),
        'content/ledger/inputs.csv': renderInputs({ analysis: '1', checksums: {} }, entry.says),
        [entry.path]: renderEntry(entry),
        [entry.path.replace(/yaml$/, 'csv')]: renderChanges(entry.changes),
      });
      if (ledger === undefined) throw new Error('no ledger was read');
      expect(ledger.figures.map(({ line: _, ...figure }) => figure)).toEqual(
        rows.toSorted((x, y) => (x.id < y.id ? -1 : 1)),
      );
      expect(replay(ledger).faults).toEqual([]);
      expect(replay(ledger).entries).toEqual([applyEntry(new Map(), entry).entry]);
    }),
    { numRuns: 25, seed: 20260502 },
  );
});

it('gives the latest entry first, whatever its name', async () => {
  const { ledger } = await readChanged({
    'content/ledger/figures.csv': renderFigures([base]),
    'content/ledger/inputs.csv': 'input,state\nanalysis,1\n',
    ...Object.fromEntries(
      [
        ['a', '2026-05-02'],
        ['b', '2026-06-01'],
        ['c', '2026-05-09'],
      ].map(([id, date]) => [`content/ledger/entries/${id}.yaml`, `date: ${date}\nreason: why\nanalysis: "1"\n`]),
    ),
  });
  expect(ledger && replay(ledger).entries.map(({ date }) => date)).toEqual(['2026-06-01', '2026-05-09', '2026-05-02']);
});
